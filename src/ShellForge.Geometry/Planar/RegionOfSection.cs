using System.Collections.Immutable;
using NetTopologySuite.Geometries.Utilities;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Planar;

public sealed partial class Region
{
    // Corners of sections are rounded, and left out where an outline is straight to two steps.
    private const double RoundingReach = 4 * Lattice.Step;

    /// <summary>
    /// The region that loops of a section bound: solid on the left of each. Loops that rounding to the lattice made touch or cross
    /// by a step are overlaid instead of being taken as they are, which changes the region by less than a step along its outline.
    /// </summary>
    internal static Region OfSection(IReadOnlyList<ImmutableArray<Point2>> loops)
    {
        List<ImmutableArray<Point2>> outers = [.. loops.Where(loop => Loop.SignedArea(loop) > 0).OrderBy(loop => Loop.SignedArea(loop))];
        List<ImmutableArray<Point2>> holes = [.. loops.Where(loop => Loop.SignedArea(loop) < 0)];
        if (outers.Count == 0)
        {
            return Empty;
        }

        // A hole belongs to the smallest outer loop round it; it lies wholly inside, so one of its corners tells, but for corners
        // that rounding put on the outer loop. Its box lies inside too, but for as much.
        List<IReadOnlyList<Point2>>[] holesOf = [.. outers.Select(_ => new List<IReadOnlyList<Point2>>())];
        Box2[] boxes = [.. outers.Select(loop => Box2.Of(loop).Grown(RoundingReach))];
        foreach (ImmutableArray<Point2> hole in holes)
        {
            Box2 box = Box2.Of(hole);
            int owner = Enumerable.Range(0, outers.Count).FirstOrDefault(
                i => boxes[i].Contains(box) && hole.Any(corner => IsWithin(outers[i], corner)), -1);
            if (owner >= 0)
            {
                holesOf[owner].Add(hole);
            }
        }

        return new Region(
            Overlay.TryPolygons([.. outers.Select((outer, i) => ((IReadOnlyList<Point2>)outer, (IReadOnlyList<IReadOnlyList<Point2>>)holesOf[i]))])
            ?? Overlay.Union([.. outers.Select((outer, i) => Overlaid(outer, holesOf[i]))]));
    }

    private static NetTopologySuite.Geometries.Geometry Overlaid(IReadOnlyList<Point2> outer, List<IReadOnlyList<Point2>> holes)
    {
        NetTopologySuite.Geometries.Geometry body = GeometryFixer.Fix(Overlay.RawPolygon(outer, []));
        return holes.Aggregate(body, (rest, hole) => Overlay.Difference(rest, GeometryFixer.Fix(Overlay.RawPolygon([.. hole], []))));
    }

    private static bool IsWithin(ImmutableArray<Point2> loop, Point2 p)
    {
        bool within = false;
        for (int i = 0; i < loop.Length; i++)
        {
            Point2 a = loop[i];
            Point2 b = loop[(i + 1) % loop.Length];
            if ((a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X + ((b.X - a.X) * (p.Y - a.Y) / (b.Y - a.Y)))
            {
                within = !within;
            }
        }

        return within;
    }
}
