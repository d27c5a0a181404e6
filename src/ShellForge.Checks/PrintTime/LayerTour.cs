using System.Collections.Immutable;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Checks.PrintTime;

/// <summary>The way of the head through the lines of one layer, and the time that it takes.</summary>
internal sealed class LayerTour
{
    // Starts looked at round a loop: the nearest of them is as near as a slicer's seam comes.
    private const int StartsOfLoop = 12;

    private readonly ImmutableArray<LaidLine> _lines;
    private readonly double[] _travels;

    private LayerTour(ImmutableArray<LaidLine> lines, double[] travels) => (_lines, _travels) = (lines, travels);

    /// <summary>Orders lines: groups one after another, within each the nearest line next.</summary>
    /// <param name="groups">The lines that are laid before those of the next group.</param>
    public static LayerTour Of(IEnumerable<IReadOnlyList<LaidLine>> groups)
    {
        var ordered = ImmutableArray.CreateBuilder<LaidLine>();
        var travels = new List<double>();
        Point2? at = null;
        foreach (IReadOnlyList<LaidLine> group in groups)
        {
            var left = new List<LaidLine>(group);
            while (left.Count > 0)
            {
                (int Line, int Start, double Distance) next = (0, 0, double.MaxValue);
                for (int i = 0; i < left.Count && at is not null; i++)
                {
                    (int start, double distance) = Nearest(left[i], at.Value);
                    if (distance < next.Distance)
                    {
                        next = (i, start, distance);
                    }
                }

                LaidLine line = From(left[next.Line], next.Start);
                left.RemoveAt(next.Line);
                travels.Add(at is null ? 0 : next.Distance);
                ordered.Add(line);
                at = line.Points[^1];
            }
        }

        return new LayerTour(ordered.ToImmutable(), [.. travels]);
    }

    /// <summary>Seconds of the layer.</summary>
    public double Seconds(PrinterProfile printer, PrintedSpeeds speeds)
    {
        PrinterMotion motion = printer.Motion;
        double slower = Slower(motion, speeds);
        var head = new HeadMotion(motion.CornerStep);
        double seconds = 0;
        Point2 at = _lines.IsEmpty ? default : _lines[0].Points[0];
        for (int i = 0; i < _lines.Length; i++)
        {
            LaidLine line = _lines[i];
            if (_travels[i] > motion.RetractionFrom)
            {
                seconds += head.Rest();
                head.Add(at, line.Points[0], motion.SpeedTravel, motion.TravelAcceleration);
                seconds += head.Rest() + (2 * motion.Retraction / motion.RetractionSpeed);
            }
            else
            {
                head.Add(at, line.Points[0], motion.SpeedTravel, motion.TravelAcceleration);
            }

            double speed = Slowed(line, speeds.Of(line), slower, motion);
            for (int k = 1; k < line.Points.Length; k++)
            {
                head.Add(line.Points[k - 1], line.Points[k], speed, motion.Acceleration);
            }

            at = line.Points[^1];
        }

        return seconds + head.Rest();
    }

    private static double Slowed(LaidLine line, double speed, double slower, PrinterMotion motion) =>
        line.Kind == LineKind.Bridge ? speed : Math.Min(speed, Math.Max(motion.SpeedLeast, speed * slower));

    // The factor of speed at which the layer lasts as long as it must; slicers count without accelerations here.
    private double Slower(PrinterMotion motion, PrintedSpeeds speeds)
    {
        double still = _travels.Sum() / motion.SpeedTravel;
        double At(double slower) => still + _lines.Sum(line => line.Length / Slowed(line, speeds.Of(line), slower, motion));
        if (At(1) >= motion.LayerTime)
        {
            return 1;
        }

        // Halved until it is exact enough for a time of seconds.
        (double low, double high) = (0, 1);
        for (int i = 0; i < 20; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = At(middle) < motion.LayerTime ? (low, middle) : (middle, high);
        }

        return high;
    }

    private static (int Start, double Distance) Nearest(LaidLine line, Point2 at)
    {
        (int Start, double Distance) nearest = (0, Point2.Distance(line.Points[0], at));
        int step = line.IsLoop ? Math.Max(1, (line.Points.Length - 1) / StartsOfLoop) : line.Points.Length - 1;
        for (int i = step; i < line.Points.Length; i += step)
        {
            double distance = Point2.Distance(line.Points[i], at);
            if (distance < nearest.Distance)
            {
                nearest = (i, distance);
            }
        }

        return nearest;
    }

    private static LaidLine From(LaidLine line, int start) =>
        start == 0 ? line
        : line.IsLoop ? line with { Points = [.. line.Points[start..], .. line.Points[1..(start + 1)]] }
        : line with { Points = [.. line.Points.Reverse()] };
}
