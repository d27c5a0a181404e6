using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;

namespace ShellForge.Import.Merging;

/// <summary>Finds points evenly spread on circles round a given middle.</summary>
internal static class PitchCircles
{
    private const int MostPlaces = 1000;

    /// <summary>All circles with at least so many members. Points keep their order: the first numbered point begins its circle.</summary>
    public static List<PitchCircle> Of(IReadOnlyList<Point2> points, Point2 centre, int fewest)
    {
        var circles = new List<PitchCircle>();
        foreach (List<int> ring in Rings(points, centre))
        {
            if (ring.Count >= fewest && Spread(points, centre, ring) is { } circle)
            {
                circles.Add(circle);
            }
        }

        return circles;
    }

    // Points sorted by radius fall into rings wherever the radius jumps.
    private static List<List<int>> Rings(IReadOnlyList<Point2> points, Point2 centre)
    {
        List<(double Radius, int Index)> sorted = [.. points.Select((p, i) => (Point2.Distance(p, centre), i)).OrderBy(p => p)];
        var rings = new List<List<int>>();
        double last = double.NegativeInfinity;
        foreach ((double radius, int index) in sorted)
        {
            if (radius <= EcadTolerances.SameOpening)
            {
                continue;
            }

            if (radius - last > EcadTolerances.PitchCircle)
            {
                rings.Add([]);
            }

            rings[^1].Add(index);
            last = radius;
        }

        rings.ForEach(r => r.Sort());
        return rings;
    }

    private static PitchCircle? Spread(IReadOnlyList<Point2> points, Point2 centre, List<int> ring)
    {
        double radius = ring.Average(i => Point2.Distance(points[i], centre));
        double tolerance = EcadTolerances.PitchStep / radius * (180 / Math.PI);
        double first = Direction(points[ring[0]], centre);
        List<(double Turn, int Index)> turns =
            [.. ring.Select(i => (Turn: Positive(Direction(points[i], centre) - first, tolerance), Index: i)).OrderBy(t => t)];

        // The smallest step between neighbours is the pitch, or a part of it is: places may be empty.
        double smallest = 360 - turns[^1].Turn;
        for (int i = 1; i < turns.Count; i++)
        {
            smallest = Math.Min(smallest, turns[i].Turn - turns[i - 1].Turn);
        }

        if (smallest <= tolerance)
        {
            return null;
        }

        int count = (int)Math.Round(360 / smallest);
        if (count is < 2 or > MostPlaces || count > (2 * turns.Count) + 1)
        {
            return null;
        }

        double pitch = 360.0 / count;
        var places = new SortedDictionary<int, int>();
        double drift = 0;
        foreach ((double turn, int index) in turns)
        {
            int place = (int)Math.Round(turn / pitch);
            double off = turn - (place * pitch);
            if (Math.Abs(off) > tolerance || !places.TryAdd(place % count, index))
            {
                return null;
            }

            drift += off;
        }

        // Numbered round the clock: the second of the list lies one place on, or one place back.
        bool clockwise = ring.Count > 1 && places.First(p => p.Value == ring[1]).Key > count / 2;
        double start = first + (drift / turns.Count);
        var members = new List<int>();
        var skip = new List<int>();
        for (int i = 0; i < count; i++)
        {
            int place = clockwise ? (count - i) % count : i;
            if (places.TryGetValue(place, out int index))
            {
                members.Add(index);
            }
            else
            {
                skip.Add(i + 1);
            }
        }

        return new PitchCircle(2 * radius, count, Tidy(start), clockwise, [.. skip], [.. members]);
    }

    private static double Direction(Point2 p, Point2 centre) => Trigonometry.Atan2Degrees(p.Y - centre.Y, p.X - centre.X);

    private static double Positive(double turn, double tolerance)
    {
        double positive = ((turn % 360) + 360) % 360;
        return positive > 360 - tolerance ? positive - 360 : positive;
    }

    // 89.99998 is 90: layouts place on whole or half degrees, files round the coordinates.
    private static double Tidy(double degrees)
    {
        double positive = ((degrees % 360) + 360) % 360;
        double half = Math.Round(positive * 2, MidpointRounding.AwayFromZero) / 2;
        double tidy = Math.Abs(half - positive) < EcadTolerances.PitchCircle ? half : Math.Round(positive, 3);
        return tidy >= 360 ? 0 : tidy;
    }
}
