using System.Collections.Immutable;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Checks.Tests.Fit;

/// <summary>
/// The share of builds that go together, against a Monte Carlo of its own: other dice, and another way to tell whether a place exists in
/// which every screw starts. The rule walks towards the tightest screw; here an ellipsoid that must hold every such place is cut down until
/// a place is found or its volume shows that there is none.
/// </summary>
public class ScrewStartOracleTests
{
    private const int Builds = 6_000;

    // Four cases, each at the spread that the rule has for the board, with a scale that lies within 0, 0.10 and 0.15 %.
    public static TheoryData<string, double, int, double, double, double, double> Cases => new()
    {
        { "tide: M2.5 in 2.7 on 54", 54, 4, 2.7, 2.5, 0, 0.999 },
        { "tide: M2.5 in 2.7 on 54", 54, 4, 2.7, 2.5, 0.0010, 0.999 },
        { "tide: M2.5 in 2.7 on 54", 54, 4, 2.7, 2.5, 0.0015, 0.997 },
        { "dome: M3 in 3.2 on 107", 107, 6, 3.2, 3, 0, 0.997 },
        { "dome: M3 in 3.2 on 107", 107, 6, 3.2, 3, 0.0010, 0.981 },
        { "dome: M3 in 3.2 on 107", 107, 6, 3.2, 3, 0.0015, 0.940 },
        { "mooring: M2 in 2.2 on 52", 52, 4, 2.2, 2, 0.0010, 0.998 },
        { "mooring: M2 in 2.2 on 52", 52, 4, 2.2, 2, 0.0015, 0.996 },
        { "a ring of 160: M2.5 in 2.7 on 126", 126, 6, 2.7, 2.5, 0.0010, 0.967 },
        { "a ring of 160: M2.5 in 2.7 on 126", 126, 6, 2.7, 2.5, 0.0015, 0.883 },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_share_of_builds_is_that_of_other_dice_and_another_search(
        string name, double circle, int count, double hole, double thread, double scale, double reference)
    {
        ImmutableArray<ScrewPlace> screws =
        [
            .. Enumerable.Range(0, count).Select(i => new ScrewPlace(
                $"screw {i + 1}", Point2.Polar(circle / 2, Angle.FromDegrees((360.0 * i / count) + 45)), hole, thread - 0.07, 1.6)),
        ];
        double told = ScrewStart.Simulate(screws, new ScrewSpread(0.08, 0.08, 1.5, 0.08, 0.08, scale), 40_000, 17).Probability;
        double own = Own(screws, scale);

        // Three standard errors of the smaller sample, and half a per cent for a walk that stops short of the best.
        double noise = 3 * Math.Sqrt(own * (1 - own) / Builds);
        Assert.True(Math.Abs(told - own) < noise + 0.005, $"{name} at {scale}: {told:0.0000}, by another search {own:0.0000}");
        Assert.True(Math.Abs(told - reference) < 0.012, $"{name} at {scale}: {told:0.0000}, reference {reference:0.000}");
    }

    private static double Own(ImmutableArray<ScrewPlace> screws, double scale)
    {
        var dice = new System.Random(90210);
        double Bell(double tolerance) => tolerance * (dice.NextDouble() + dice.NextDouble() + dice.NextDouble() - 1.5) / 1.5;
        double lean = 1.6 * Math.Sin(1.5 * Math.PI / 180);
        int good = 0;
        for (int build = 0; build < Builds; build++)
        {
            double grown = scale * ((2 * dice.NextDouble()) - 1);
            (double X, double Y, double LeverX, double LeverY, double Room)[] all =
            [
                .. screws.Select(screw => (
                    (grown * screw.At.X) + Bell(0.08) + Bell(0.08) + Bell(lean) + Bell(0.08),
                    (grown * screw.At.Y) + Bell(0.08) + Bell(0.08) + Bell(lean) + Bell(0.08),
                    -screw.At.Y / 50, screw.At.X / 50,
                    ((screw.HoleDiameter - screw.ThreadDiameter) / 2) + Bell(0.04))),
            ];
            good += Exists(all) ? 1 : 0;
        }

        return (double)good / Builds;
    }

    // Deep cuts of an ellipsoid in shift and turn; each cut keeps the half where the tightest screw can still get room.
    private static bool Exists((double X, double Y, double LeverX, double LeverY, double Room)[] screws)
    {
        double[] at = new double[3];
        double[,] p = { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } };
        for (int cut = 0; cut < 400; cut++)
        {
            double most = double.NegativeInfinity;
            double[] slope = new double[3];
            foreach ((double x, double y, double leverX, double leverY, double room) in screws)
            {
                double dx = x - at[0] - (at[2] * leverX);
                double dy = y - at[1] - (at[2] * leverY);
                double away = Math.Sqrt((dx * dx) + (dy * dy));
                if (away - room > most)
                {
                    most = away - room;
                    slope = [-dx / away, -dy / away, -((dx * leverX) + (dy * leverY)) / away];
                }
            }

            if (most <= 0)
            {
                return true;
            }

            double[] q = [.. Enumerable.Range(0, 3).Select(i => Enumerable.Range(0, 3).Sum(j => p[i, j] * slope[j]))];
            double reach = Math.Sqrt(Enumerable.Range(0, 3).Sum(i => slope[i] * q[i]));
            double deep = most / reach;
            if (deep >= 1)
            {
                return false;
            }

            const double n = 3;
            double step = (1 + (n * deep)) / (n + 1);
            double shrink = 2 * (1 + (n * deep)) / ((n + 1) * (1 + deep));
            double grow = n * n * (1 - (deep * deep)) / ((n * n) - 1);
            for (int i = 0; i < 3; i++)
            {
                at[i] -= step * q[i] / reach;
            }

            for (int i = 0; i < 3; i++)
            {
                for (int j = 0; j < 3; j++)
                {
                    p[i, j] = grow * (p[i, j] - (shrink * q[i] * q[j] / (reach * reach)));
                }
            }
        }

        return false;
    }
}
