using System.Collections.Immutable;
using NetTopologySuite.Algorithm.Locate;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Geometry.Tests.Planar;

/// <summary>Overlays against the library's own snap rounding, which works in floating point and by other means.</summary>
public sealed class OverlayOracleTests
{
    private static readonly PrecisionModel Model = new(Lattice.StepsPerMillimetre);
    private static readonly GeometryFactory Factory = new(Model);

    // Figures a few steps wide are all rounding: corners within half a step of sides, sides that become one, parts that vanish.
    [Theory]
    [InlineData(4, 1200)]
    [InlineData(9, 1200)]
    [InlineData(40, 1000)]
    [InlineData(3000, 600)]
    [InlineData(6_000_000, 600)]
    public void Overlays_are_those_of_the_library(int reach, int count)
    {
        var random = new Random(reach);
        int real = 0;
        for (int i = 0; i < count; i++)
        {
            if (Star(random, reach) is not { } a || Star(random, reach) is not { } b)
            {
                continue;
            }

            real++;
            // Sides of a few steps often pass just between two squares, and floating point puts them into either. In wide figures unions
            // are the same to the last step; for the others the library first cuts outlines off a little way beyond the figures, and rounds
            // there.
            double step = (a.Perimeter + b.Perimeter) * Lattice.Step;
            Assert.True(Apart(a.And(b), a, b, OverlayNG.UNION) <= (reach < 3000 ? step : 0), $"union {reach} {i}");
            Assert.True(Apart(a.Less(b), a, b, OverlayNG.DIFFERENCE) < step, $"difference {reach} {i}");
            Assert.True(Apart(a.Intersect(b), a, b, OverlayNG.INTERSECTION) < step, $"intersection {reach} {i}");
        }

        Assert.True(real > count / 2, $"{real}");
    }

    [Theory]
    [InlineData(6)]
    [InlineData(3000)]
    public void Points_are_inside_on_and_outside_as_the_library_has_it(int reach)
    {
        var random = new Random(reach);
        for (int i = 0; i < 200; i++)
        {
            if (Star(random, reach) is not { } a || Star(random, reach) is not { } b || a.Less(b) is not { IsEmpty: false } region)
            {
                continue;
            }

            var locator = new IndexedPointInAreaLocator(Drawn(region));
            Point2[] corners = [.. region.Loops.SelectMany(loop => loop)];
            for (int j = 0; j < 300; j++)
            {
                // Corners, middles of sides, places level with corners, and any.
                Point2 p = corners[random.Next(corners.Length)];
                Point2 q = corners[random.Next(corners.Length)];
                Point2 at = (j % 4) switch
                {
                    0 => p,
                    1 => 0.5 * (p + q),
                    2 => new Point2(q.X, p.Y),
                    _ => p + ((random.NextDouble() - 0.5) * q)
                };
                Assert.Equal(locator.Locate(new Coordinate(at.X, at.Y)) != Location.Exterior, region.Contains(at));
            }
        }
    }

    // The area, in mm2, that one of the two has and the other has not.
    private static double Apart(Region ours, Region a, Region b, SpatialFunction what)
    {
        MultiPolygon drawn = Drawn(ours);
        Assert.True(drawn.IsValid);
        NetTopologySuite.Geometries.Geometry theirs = OverlayNG.Overlay(Drawn(a), Drawn(b), what, Model);
        Polygon[] areas = [.. Enumerable.Range(0, theirs.NumGeometries).Select(theirs.GetGeometryN).OfType<Polygon>()];
        return OverlayNG.Overlay(drawn, Factory.CreateMultiPolygon(areas), OverlayNG.SYMDIFFERENCE, Model).Area;
    }

    private static MultiPolygon Drawn(Region region) => Factory.CreateMultiPolygon([.. region.Parts.Select(part => Factory.CreatePolygon(
        Drawn(part.Loops[0]), [.. part.Loops.Skip(1).Select(Drawn)]))]);

    private static LinearRing Drawn(ImmutableArray<Point2> loop) =>
        Factory.CreateLinearRing([.. loop.Append(loop[0]).Select(p => new Coordinate(p.X, p.Y))]);

    // Corners round a point in the order of their directions; null where they are too few or the outline touches itself.
    private static Region? Star(Random random, int reach)
    {
        Point2[] corners = [.. Enumerable.Range(0, random.Next(3, random.Next(6) == 0 ? 150 : 14))
            .Select(_ => new Point2(random.Next(-reach, reach + 1) * Lattice.Step, random.Next(-reach, reach + 1) * Lattice.Step))
            .OrderBy(p => Math.Atan2(p.Y, p.X)).DistinctBy(p => Math.Atan2(p.Y, p.X))];
        try
        {
            return Region.Polygon(corners);
        }
        catch (ArgumentException)
        {
            return null;
        }
    }
}
