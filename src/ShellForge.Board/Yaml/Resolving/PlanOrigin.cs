using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>Finds a place well inside an outline, for outlines whose centre is none: half discs, arcs, C shapes.</summary>
internal static class PlanOrigin
{
    // A centre this deep inside an outline is a middle to look round from, mm; so is one that lies at least so deep as a share of the
    // deepest.
    private const double Deep = 8;
    private const double Share = 0.5;

    // Places that are tried along the longer side of the outline's rectangle.
    private const int Tries = 48;

    // Places nearly as deep as the deepest, as a share, are as good: of them the one nearest to the middle of the area counts.
    private const double AsDeep = 0.9;

    /// <summary>The origin itself where it lies deep inside, else a place that does, on whole tenths of a mm.</summary>
    /// <param name="outline">The outline.</param>
    /// <param name="inner">What of it lies well inside; not empty.</param>
    public static Point2 In(Region outline, Region inner)
    {
        Region whole = outline.Filled();
        double here = Depth(whole, Point2.Origin);
        if (here >= Deep)
        {
            return Point2.Origin;
        }

        Box2 box = whole.Bounds;
        double step = Math.Max(box.Size.X, box.Size.Y) / Tries;
        (Point2 At, double Depth)[] places =
        [
            .. Enumerable.Range(0, Tries * Tries)
                .Select(i => new Point2(Tenth(box.Min.X + (((i % Tries) + 0.5) * step)), Tenth(box.Min.Y + (((i / Tries) + 0.5) * step))))
                .Where(place => place.X < box.Max.X && place.Y < box.Max.Y)
                .Select(place => (place, Depth(whole, place)))
                .Where(place => place.Item2 > 0),
        ];
        if (places.Length == 0)
        {
            // A long strip of board that bends round passes between all of them.
            places = [.. inner.Loops.SelectMany(loop => Along(loop, step)).Select(at => new Point2(Tenth(at.X), Tenth(at.Y)))
                .Select(place => (place, Depth(whole, place)))];
        }

        double deepest = places.Max(place => place.Depth);
        if (deepest <= here || here >= Share * deepest)
        {
            return Point2.Origin;
        }

        var middle = new Point2(places.Average(place => place.At.X), places.Average(place => place.At.Y));
        return places.Where(place => place.Depth >= AsDeep * deepest).MinBy(place => Point2.Distance(place.At, middle)).At;
    }

    private static IEnumerable<Point2> Along(ImmutableArray<Point2> loop, double step)
    {
        for (int i = 0; i < loop.Length; i++)
        {
            (Point2 from, Point2 to) = (loop[i], loop[(i + 1) % loop.Length]);
            int pieces = (int)Math.Ceiling(Point2.Distance(from, to) / step);
            for (int k = 0; k < pieces; k++)
            {
                yield return from + ((double)k / pieces * (to - from));
            }
        }
    }

    private static double Depth(Region outline, Point2 at) =>
        outline.Contains(at) ? outline.DistanceToOutline(at) : -outline.DistanceToOutline(at);

    private static double Tenth(double length) => Math.Round(length, 1);
}
