using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ShellForge.Checks.PrintTime;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Checks.Tests.PrintTime;

public sealed class HeadMotionTests
{
    private const double Acceleration = 1000;
    private const double CornerStep = 8;

    [Fact]
    public void A_long_move_speeds_up_runs_and_slows_down()
    {
        // From 8 to 50 mm/s and back at 1000 mm/s2 takes 42 ms each and 1.218 mm; the rest runs at 50.
        Assert.Equal((2 * 0.042) + ((100 - (2 * 1.218)) / 50), Seconds([new(0, 0), new(100, 0)], 50), 1e-9);
    }

    [Fact]
    public void A_short_move_never_gets_to_its_speed()
    {
        // 1 mm: the top speed is the root of 8 x 8 + 1000.
        Assert.Equal(2 * (Math.Sqrt(1064) - 8) / 1000, Seconds([new(0, 0), new(0, 1)], 50), 1e-9);
    }

    [Fact]
    public void Corners_of_a_circle_of_short_sides_set_its_speed()
    {
        // 24 sides: a corner of 15 degrees turns at most sin 15 of the speed along one axis, so that 8 mm/s are reached at 30.9 mm/s or
        // more.
        Point2[] circle = [.. Enumerable.Range(0, 25).Select(i => Point2.Polar(3, Angle.FromDegrees(15 * i)))];
        double length = 24 * Point2.Distance(circle[0], circle[1]);
        Assert.InRange(Seconds(circle, 300), length / 60, length / 30.9);
        Assert.InRange(Seconds(circle, 25), length / 25, (length / 25) + 0.04);
    }

    [Fact]
    public void A_reversal_slows_down_to_half_the_corner_step()
    {
        double there = Seconds([new(0, 0), new(50, 0)], 40);
        double andBack = Seconds([new(0, 0), new(50, 0), new(0, 0)], 40);

        // At the far end 4 instead of 8 mm/s: slowing from 8 to 4 and back costs more time than the two ends at 8.
        double slower = ((40 - 4) / Acceleration) - ((40 - 8) / Acceleration) - (((8 * 8) - (4 * 4)) / (2 * Acceleration * 40));
        Assert.Equal((2 * there) + (2 * slower), andBack, 1e-9);
    }

    [Property]
    public Property A_straight_move_takes_as_long_in_pieces() => Prop.ForAll(
        Gen.Choose(1, 400).Select(n => n / 4.0).ArrayOf(5).ToArbitrary(),
        pieces =>
        {
            double at = 0;
            Point2[] path = [new(0, 0), .. pieces.Select(piece => new Point2(at += piece, 0))];
            return Math.Abs(Seconds(path, 80) - Seconds([path[0], path[^1]], 80)) < 1e-9;
        });

    [Property]
    public Property Time_is_that_of_the_fastest_run_that_keeps_the_limits() => Prop.ForAll(
        Gen.Choose(-40, 40).Select(n => n / 8.0).ArrayOf(8).ToArbitrary(),
        numbers =>
        {
            Point2[] path = [new(0, 0), .. Enumerable.Range(0, 4).Select(i => new Point2(numbers[2 * i], numbers[(2 * i) + 1]))];
            path = [.. path.Where((p, i) => i == 0 || p != path[i - 1])];
            double seconds = Seconds(path, 60);
            return path.Length < 2 || Math.Abs(seconds - StepByStep(path, 60)) < 0.002 + (0.01 * seconds);
        });

    private static double Seconds(Point2[] path, double speed)
    {
        var head = new HeadMotion(CornerStep);
        for (int i = 1; i < path.Length; i++)
        {
            head.Add(path[i - 1], path[i], speed, Acceleration);
        }

        return head.Rest();
    }

    // The oracle: the path in steps of a hundredth of a millimetre, each as fast as the steps before and behind let it be.
    private static double StepByStep(Point2[] path, double speed)
    {
        const double step = 0.01;
        var most = new List<double> { CornerStep / Slant(Unit(path[1] - path[0])) };
        for (int i = 1; i < path.Length; i++)
        {
            int steps = Math.Max(1, (int)(Point2.Distance(path[i - 1], path[i]) / step));
            most.AddRange(Enumerable.Repeat(speed, steps - 1));
            most.Add(i + 1 < path.Length ? Math.Min(speed, CornerStep / Slant(Unit(path[i + 1] - path[i]) - Unit(path[i] - path[i - 1])))
                : CornerStep / Slant(Unit(path[i] - path[i - 1])));
        }

        for (int i = 1; i < most.Count; i++)
        {
            most[i] = Math.Min(most[i], Math.Sqrt((most[i - 1] * most[i - 1]) + (2 * Acceleration * step)));
        }

        for (int i = most.Count - 2; i >= 0; i--)
        {
            most[i] = Math.Min(most[i], Math.Sqrt((most[i + 1] * most[i + 1]) + (2 * Acceleration * step)));
        }

        return Enumerable.Range(1, most.Count - 1).Sum(i => 2 * step / (most[i - 1] + most[i]));
    }

    private static Point2 Unit(Point2 move) => 1 / Point2.Distance(new Point2(0, 0), move) * move;

    private static double Slant(Point2 move) => Math.Max(1e-9, Math.Max(Math.Abs(move.X), Math.Abs(move.Y)));
}
