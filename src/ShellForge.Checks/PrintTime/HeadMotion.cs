using System.Runtime.InteropServices;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Checks.PrintTime;

/// <summary>A straight move of the head.</summary>
/// <param name="Dx">Along x, mm.</param>
/// <param name="Dy">Along y, mm.</param>
/// <param name="Speed">Largest speed, mm/s.</param>
/// <param name="Acceleration">In mm/s2.</param>
internal readonly record struct HeadMove(double Dx, double Dy, double Speed, double Acceleration);

/// <summary>
/// How long a head takes for moves without a stop between them: each speeds up and slows down evenly, and where two meet, the speed along x
/// and along y may jump by no more than the corner step. The head starts and ends at rest, but for one such step.
/// </summary>
/// <param name="cornerStep">Jump of speed along x or y that is made at once, mm/s.</param>
internal sealed class HeadMotion(double cornerStep)
{
    private readonly List<HeadMove> _moves = [];

    /// <summary>Adds a move from one point to another; none where they are one.</summary>
    public void Add(Point2 from, Point2 to, double speed, double acceleration)
    {
        if (from != to)
        {
            _moves.Add(new HeadMove(to.X - from.X, to.Y - from.Y, speed, acceleration));
        }
    }

    /// <summary>Comes to rest: the seconds of all moves added since the last rest.</summary>
    public double Rest()
    {
        double seconds = Seconds(CollectionsMarshal.AsSpan(_moves));
        _moves.Clear();
        return seconds;
    }

    private double Seconds(ReadOnlySpan<HeadMove> path)
    {
        // Squares of the speeds at the ends of moves: what corners allow, then what can be slowed down to in time, then what can be
        // reached.
        double[] ends = new double[path.Length + 1];
        double[] lengths = new double[path.Length];
        for (int i = 0; i < path.Length; i++)
        {
            lengths[i] = Math.Sqrt((path[i].Dx * path[i].Dx) + (path[i].Dy * path[i].Dy));
        }

        for (int i = 0; i <= path.Length; i++)
        {
            (double X, double Y) before = i > 0 ? (path[i - 1].Dx / lengths[i - 1], path[i - 1].Dy / lengths[i - 1]) : (0, 0);
            (double X, double Y) after = i < path.Length ? (path[i].Dx / lengths[i], path[i].Dy / lengths[i]) : (0, 0);
            double turn = Math.Max(Math.Abs(after.X - before.X), Math.Abs(after.Y - before.Y));
            double most = Math.Min(i > 0 ? path[i - 1].Speed : double.MaxValue, i < path.Length ? path[i].Speed : double.MaxValue);
            double speed = turn * most > cornerStep ? cornerStep / turn : path.IsEmpty ? 0 : most;
            ends[i] = speed * speed;
        }

        for (int i = path.Length - 1; i >= 0; i--)
        {
            ends[i] = Math.Min(ends[i], ends[i + 1] + (2 * path[i].Acceleration * lengths[i]));
        }

        double seconds = 0;
        for (int i = 0; i < path.Length; i++)
        {
            double gain = 2 * path[i].Acceleration * lengths[i];
            ends[i + 1] = Math.Min(ends[i + 1], ends[i] + gain);
            double top = Math.Min(path[i].Speed, Math.Sqrt((ends[i] + ends[i + 1] + gain) / 2));
            double changing = ((2 * top * top) - ends[i] - ends[i + 1]) / (2 * path[i].Acceleration);
            seconds += (((2 * top) - Math.Sqrt(ends[i]) - Math.Sqrt(ends[i + 1])) / path[i].Acceleration)
                + (Math.Max(0, lengths[i] - changing) / top);
        }

        return seconds;
    }
}
