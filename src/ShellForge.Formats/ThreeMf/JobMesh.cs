using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.ThreeMf;

/// <summary>
/// The bodies of a job as one mesh, one after the other. Each keeps its own vertices, also where two bodies touch: joined there, their
/// surfaces would no longer be told apart.
/// </summary>
/// <param name="Vertices">Vertices of all bodies.</param>
/// <param name="Bodies">The triangles of each body, in the order of the job; numbers count through all vertices.</param>
internal sealed record JobMesh(ImmutableArray<LatticePoint3> Vertices, ImmutableArray<ImmutableArray<(int A, int B, int C)>> Bodies)
{
    public static JobMesh Of(PrintJob job)
    {
        var all = ImmutableArray.CreateBuilder<LatticePoint3>();
        var bodies = ImmutableArray.CreateBuilder<ImmutableArray<(int, int, int)>>();
        foreach (PrintBody body in job.Bodies)
        {
            CanonicalTriangle[] triangles = CanonicalTriangle.InOrder(body.Mesh);
            LatticePoint3[] vertices = [.. triangles.SelectMany(t => new[] { t.A, t.B, t.C }).Distinct().Order()];
            var numbers = new Dictionary<LatticePoint3, int>(vertices.Length);
            foreach (LatticePoint3 vertex in vertices)
            {
                numbers.Add(vertex, all.Count);
                all.Add(vertex);
            }

            bodies.Add([.. triangles.Select(t => (numbers[t.A], numbers[t.B], numbers[t.C]))]);
        }

        return new JobMesh(all.ToImmutable(), bodies.ToImmutable());
    }
}
