using System.Collections.Immutable;
using ShellForge.Formats.Svg;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Output.Drawings;

/// <summary>A body seen from above, cut level or whole: what is cut is hatched, what lies below is outlined.</summary>
internal static class LevelView
{
    /// <summary>Draws a body.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="mesh">The body.</param>
    /// <param name="cutHeight">z of the cut; infinite: whole.</param>
    public static void Draw(DrawingSheet sheet, Mesh mesh, double cutHeight = double.PositiveInfinity)
    {
        // From below upward each level covers the one under it: what is left to see is what the eye sees.
        ImmutableArray<ImmutableArray<Point2>> last = [];
        foreach (double z in LevelsBelow(mesh, cutHeight))
        {
            ImmutableArray<ImmutableArray<Point2>> loops = Level(mesh, z);
            if (!SameLoops(last, loops))
            {
                sheet.Svg.Area(sheet.At(loops), Stroke.Outline, Fill.Blank);
                last = loops;
            }
        }

        if (double.IsFinite(cutHeight))
        {
            sheet.Svg.Area(sheet.At(Level(mesh, cutHeight)), Stroke.Outline, Fill.Blank);
            sheet.Svg.Area(sheet.At(Level(mesh, cutHeight)), Stroke.Outline, Fill.HatchRising);
        }
    }

    private static ImmutableArray<ImmutableArray<Point2>> Level(Mesh mesh, double z) =>
        PlaneCut.Loops(mesh, new Point3(0, 0, z), new Point3(1, 0, 0), new Point3(0, 1, 0));

    /// <summary>Just under every level face that looks up, from below.</summary>
    private static IEnumerable<double> LevelsBelow(Mesh mesh, double cutHeight)
    {
        var levels = new SortedSet<int>();
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            LatticePoint3 a = mesh.Vertices[mesh.Triangles[3 * t]];
            LatticePoint3 b = mesh.Vertices[mesh.Triangles[(3 * t) + 1]];
            LatticePoint3 c = mesh.Vertices[mesh.Triangles[(3 * t) + 2]];
            bool looksUp = Point2.Cross((b.ToMillimetres() - a.ToMillimetres()).XY, (c.ToMillimetres() - a.ToMillimetres()).XY) > 0;
            if (a.Z == b.Z && b.Z == c.Z && looksUp)
            {
                levels.Add(a.Z);
            }
        }

        return levels.Select(z => (z * Lattice.Step) - DrawingSheet.Invisible).Where(z => z > 0 && z < cutHeight);
    }

    private static bool SameLoops(ImmutableArray<ImmutableArray<Point2>> a, ImmutableArray<ImmutableArray<Point2>> b) =>
        a.Length == b.Length && a.Zip(b).All(pair => pair.First.SequenceEqual(pair.Second));
}
