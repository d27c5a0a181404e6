using System.Collections.Immutable;
using FsCheck.Xunit;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests.Fit;

public class ScrewStartTests
{
    private static readonly ScrewSpread Spread = new(Boss: 0.1, Insert: 0.1, TiltDegrees: 1.5, Hole: 0.1, HoleDiameter: 0.1);

    [Fact]
    public void Without_any_spread_every_build_goes_together()
    {
        ScrewStartResult result = ScrewStart.Simulate(Square(2.7, 2.5), default, 1000, 1);
        Assert.Equal(1, result.Probability);
        Assert.Equal(-0.2, result.DiameterFor99, 12);
    }

    [Fact]
    public void A_single_screw_always_finds_its_hole_since_the_board_can_be_moved()
    {
        ImmutableArray<ScrewPlace> one = [new("screw 1", new Point2(20, 0), 2.7, 2.5, 1.6)];
        Assert.Equal(1, ScrewStart.Simulate(one, Spread, 20_000, 7).Probability);
    }

    [Fact]
    public void The_same_seed_gives_the_same_answer()
    {
        Assert.Equal(ScrewStart.Simulate(Square(2.7, 2.5), Spread, 20_000, 7), ScrewStart.Simulate(Square(2.7, 2.5), Spread, 20_000, 7));
    }

    [Fact]
    public void The_hole_it_names_does_reach_99_of_100()
    {
        ScrewStartResult tight = ScrewStart.Simulate(Square(2.6, 2.5), Spread, 50_000, 3);
        Assert.InRange(tight.Probability, 0, 0.9);
        double probability = ScrewStart.Simulate(Square(2.6 + tight.DiameterFor99, 2.5), Spread, 50_000, 3).Probability;
        Assert.InRange(probability, 0.989, 0.996);
    }

    [Fact]
    public void The_screw_in_the_narrowest_hole_is_named()
    {
        ImmutableArray<ScrewPlace> places = Square(3.2, 2.5);
        places = places.SetItem(2, places[2] with { HoleDiameter = 2.55 });
        Assert.Equal("screw 3", places[ScrewStart.Simulate(places, Spread, 5_000, 3).WorstScrew].Name);
    }

    [Property(MaxTest = 20, Arbitrary = [typeof(Draws.Rows)])]
    public bool Wider_holes_never_make_it_worse(Draws draws)
    {
        double before = 0;
        ulong seed = (ulong)draws.Next(256);
        double[] holes = [.. Enumerable.Range(0, 4).Select(_ => 2.55 + (draws.Next(60) / 100.0)).Order(), 3.2];
        foreach (double hole in holes)
        {
            double probability = ScrewStart.Simulate(Square(hole, 2.5), Spread, 2_000, seed).Probability;
            if (probability < before)
            {
                return false;
            }

            before = probability;
        }

        return before > 0.99;
    }

    // Two screws can only shift and turn against each other along their line: with errors of the line's length alone, the most
    // room is half the difference, so the share of good builds has a closed form to hold against.
    [Fact]
    public void Two_screws_agree_with_the_distribution_of_their_distance()
    {
        ImmutableArray<ScrewPlace> pair = [new("a", new Point2(-30, 0), 2.8, 2.5, 0), new("b", new Point2(30, 0), 2.8, 2.5, 0)];
        var onlyHoles = new ScrewSpread(0, 0, 0, 0.3, 0);
        ScrewStartResult result = ScrewStart.Simulate(pair, onlyHoles, 100_000, 11);

        // Each error is a sum of three even spreads scaled to +-0.3; their difference must stay within 2 x 0.15.
        var dice = new System.Random(5);
        int good = 0;
        const int Draws = 200_000;
        for (int i = 0; i < Draws; i++)
        {
            double a = 0.3 * (((dice.NextDouble() + dice.NextDouble() + dice.NextDouble()) * 2 / 3) - 1);
            double b = 0.3 * (((dice.NextDouble() + dice.NextDouble() + dice.NextDouble()) * 2 / 3) - 1);
            good += Math.Abs(a - b) <= 0.3 ? 1 : 0;
        }

        Assert.Equal((double)good / Draws, result.Probability, 0.01);
    }

    private static ImmutableArray<ScrewPlace> Square(double hole, double thread) =>
        [.. Enumerable.Range(0, 4)
            .Select(i => new ScrewPlace($"screw {i + 1}", Point2.Polar(42, Angle.FromDegrees(45 + (90 * i))), hole, thread, 1.6))];
}
