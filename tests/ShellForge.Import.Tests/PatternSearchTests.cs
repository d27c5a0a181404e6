using System.Diagnostics;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Patterns;

namespace ShellForge.Import.Tests;

public class PatternSearchTests
{
    private const int Many = 1000;
    private const int Few = 250;

    // Coordinates beyond all boards: no number overflows, nothing is found, and nobody waits.
    [Theory]
    [InlineData(70_000, 70_000)]
    [InlineData(1e9, 1e9)]
    [InlineData(1e300, 1e300)]
    [InlineData(1e300, 4)]
    public void Places_far_apart_are_no_grid(double far, double high)
    {
        PlacedThing[] things = [.. new Point2[] { new(0, 0), new(1, 1), new(far, high), new(far, 0), new(0, high) }
            .Select(at => new PlacedThing(at, 0))];
        Assert.Empty(PatternSearch.Counted(things, default(Point2), 3));
        Assert.Empty(PatternSearch.Uncounted(things, default(Point2), 3));
    }

    public static TheoryData<string> Clouds => ["spiral", "ring", "turned ring", "grid", "turned grid", "one place", "row"];

    // Four times the places take sixteen times the time at the most, and what other programs take of the clock: nothing grows by its cube.
    [Theory]
    [MemberData(nameof(Clouds))]
    public void A_thousand_places_that_are_nearly_in_a_pattern_are_soon_sought_through(string cloud)
    {
        Soonest(Cloud(cloud, Few));
        TimeSpan few = Soonest(Cloud(cloud, Few));
        TimeSpan many = Soonest(Cloud(cloud, Many));
        Assert.True(many < (40 * few) + TimeSpan.FromMilliseconds(100), $"{cloud}: {few} for {Few}, {many} for {Many}");
    }

    private static TimeSpan Soonest(PlacedThing[] things)
    {
        TimeSpan best = TimeSpan.MaxValue;
        for (int i = 0; i < 4; i++)
        {
            var clock = Stopwatch.StartNew();
            PatternSearch.Counted(things, new Point2(0, 0), 3);
            PatternSearch.Uncounted(things, new Point2(0, 0), 3);
            best = clock.Elapsed < best ? clock.Elapsed : best;
        }

        return best;
    }

    private static PlacedThing[] Cloud(string cloud, int count)
    {
        var dice = new Random(5);
        double angle = 0;
        return [.. Enumerable.Range(0, count).Select(i => cloud switch
        {
            "spiral" => new PlacedThing(Point2.Polar(5 + (0.1 * i), Angle.FromDegrees(37.7 * i)), 0),
            "ring" => new PlacedThing(Point2.Polar(150, Angle.FromDegrees(angle += 0.2 + (0.09 * dice.NextDouble()))), 0),
            "turned ring" => new PlacedThing(Point2.Polar(150, Angle.FromDegrees(0.36 * i)), dice.Next(360)),
            "grid" => new PlacedThing(
                new Point2(5 * (i % 32), -5 * (i / 32)) + Point2.Polar(0.05 * dice.NextDouble(), Angle.FromDegrees(7 * i)), 0),
            "turned grid" => new PlacedThing(new Point2(5 * (i % 32), -5 * (i / 32)), 90 * dice.Next(4)),
            "one place" => new PlacedThing(new Point2(3, 4), 0),
            _ => new PlacedThing(new Point2(i + (dice.Next(9) == 0 ? 0.04 : 0), 0), 0),
        })];
    }
}
