using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;

namespace ShellForge.Geometry.Measuring;

/// <summary>
/// Level sections of closed meshes. A section lies half a lattice step above the height asked for, where no vertex is, so faces at
/// that height count as below: the section is that of the material that stands on it. Each triangle crossed gives one stroke
/// between two of its edges; strokes close into loops by the mesh's own neighbourhoods, and a corner between two triangles of one
/// plane is left out, so equal walls give equal sections at every height.
/// </summary>
public static class Slicing
{
    /// <summary>The section at a height.</summary>
    /// <param name="mesh">A closed, oriented mesh.</param>
    /// <param name="z">Height, mm.</param>
    public static Region At(Mesh mesh, double z) => Layers(mesh, [z])[0];

    /// <summary>The sections at rising heights, in one sweep.</summary>
    /// <param name="mesh">A closed, oriented mesh.</param>
    /// <param name="heights">Heights, mm, rising.</param>
    public static ImmutableArray<Region> Layers(Mesh mesh, IReadOnlyList<double> heights)
    {
        var section = new SectionSweep(mesh);
        ImmutableArray<Region>.Builder regions = ImmutableArray.CreateBuilder<Region>(heights.Count);
        List<ImmutableArray<Point2>>? before = null;
        foreach (double z in heights)
        {
            List<ImmutableArray<Point2>> loops = section.LoopsAt((int)Math.Floor(z * Lattice.StepsPerMillimetre));
            regions.Add(before is not null && Same(loops, before) ? regions[^1] : Region.OfSection(loops));
            before = loops;
        }

        return regions.MoveToImmutable();
    }

    private static bool Same(List<ImmutableArray<Point2>> a, List<ImmutableArray<Point2>> b) =>
        a.Count == b.Count && a.Zip(b).All(pair => pair.First.AsSpan().SequenceEqual(pair.Second.AsSpan()));
}
