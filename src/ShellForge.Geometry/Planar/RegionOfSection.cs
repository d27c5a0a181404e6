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

        // A hole belongs to the smallest outer loop round it. Where no loop meets another one of its corners tells; where rounding has put
        // corners of it on an outer loop, any that lies inside. Its box lies inside too, but for as much.
        bool areApart = ApartLoops.Are(loops.Select(loop => (IReadOnlyList<Point2>)loop));
        List<IReadOnlyList<Point2>>[] holesOf = [.. outers.Select(_ => new List<IReadOnlyList<Point2>>())];
        Box2[] boxes = [.. outers.Select(loop => Box2.Of(loop).Grown(RoundingReach))];
        foreach (ImmutableArray<Point2> hole in holes)
        {
            Box2 box = Box2.Of(hole);
            int owner = Enumerable.Range(0, outers.Count).FirstOrDefault(
                i => boxes[i].Contains(box) && (areApart ? hole.Take(1) : hole).Any(corner => Loop.Encloses(outers[i], corner)), -1);
            if (owner >= 0)
            {
                holesOf[owner].Add(hole);
            }
        }

        return areApart && !outers.Where((outer, i) => IsInside(outer, i)).Any()
            ? new Region(Overlay.Ordered(outers.Select((outer, i) => ((IReadOnlyList<Point2>)outer, holesOf[i].AsEnumerable())),
                ImmutableHashSet<Point2>.Empty))
            : new Region(Overlay.Union([.. outers.Select((outer, i) => Overlaid(outer, holesOf[i]))]));

        // Whether it lies in what a larger one bounds, as where two solids overlap.
        bool IsInside(ImmutableArray<Point2> outer, int index) => Enumerable.Range(index + 1, outers.Count - index - 1).Any(
            i => boxes[i].Contains(boxes[index].Grown(-RoundingReach)) && Loop.Encloses(outers[i], outer[0])
                && !holesOf[i].Any(hole => Loop.Encloses(hole, outer[0])));
    }

    private static NetTopologySuite.Geometries.Geometry Overlaid(IReadOnlyList<Point2> outer, List<IReadOnlyList<Point2>> holes)
    {
        NetTopologySuite.Geometries.Geometry body = GeometryFixer.Fix(Overlay.RawPolygon(outer, []));
        return holes.Aggregate(body, (rest, hole) => Overlay.Difference(rest, GeometryFixer.Fix(Overlay.RawPolygon([.. hole], []))));
    }
}
