using ShellForge.Geometry.Booleans.Arranging;
using ShellForge.Geometry.Booleans.Classifying;
using ShellForge.Geometry.Booleans.Ingest;
using ShellForge.Geometry.Booleans.Meeting;

namespace ShellForge.Geometry.Booleans.Settling;

/// <summary>
/// Whether every shell of a mesh without meetings has solid behind it and none in front, by one exact ray a shell. Rounding can turn a thin
/// film inside out without making any two triangles meet.
/// </summary>
internal static class ShellSides
{
    public static bool AreRight(Intersections found, int[] partner, CancellationToken ct) => Wrong(found, partner, ct).Count == 0;

    /// <summary>The triangles of every shell of which that is not so.</summary>
    public static List<int> Wrong(Intersections found, int[] partner, CancellationToken ct)
    {
        List<int> wrong = [];
        OperandSet scene = found.OperandSet;
        Operand mesh = scene.Operands[0];
        WindingRay ray = new(scene, found.Points);
        int[] winding = new int[1];
        bool[] seen = new bool[mesh.TriangleCount];
        int[] queue = new int[mesh.TriangleCount];
        for (int start = 0; start < seen.Length; start++)
        {
            if (seen[start])
            {
                continue;
            }

            ct.ThrowIfCancellationRequested();
            ray.Count(Probe.InFrontOf(found, start), winding);
            bool isWrong = winding[0] != 0;
            seen[start] = true;
            queue[0] = start;
            int end = 1;
            for (int i = 0; i < end; i++)
            {
                for (int h = 3 * queue[i]; h < (3 * queue[i]) + 3; h++)
                {
                    int neighbour = partner[h] / 3;
                    if (!seen[neighbour])
                    {
                        seen[neighbour] = true;
                        queue[end++] = neighbour;
                    }
                }
            }

            if (isWrong)
            {
                wrong.AddRange(queue.AsSpan(0, end));
            }
        }

        return wrong;
    }
}
