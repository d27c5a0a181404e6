using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;

namespace ShellForge.Import.Patterns;

/// <summary>Finds circles and arcs round a centre among things that are counted one after the other.</summary>
/// <param name="things">In the order of counting.</param>
/// <param name="centre">The board's centre.</param>
internal sealed class CircleFinder(IReadOnlyList<PlacedThing> things, Point2 centre)
{
    // What the board file takes.
    private const double SmallestDiameter = 0.5;
    private const double LargestDiameter = 360;
    private const double SmallestStep = 0.1;
    private const double LargestStep = 180;
    private const int MostPlaces = 1000;

    // An arc ends short of its beginning by this share of a degree.
    private const double Least = 0.05;

    // Three places and a gap say nothing about a step.
    private const int FewestWithGaps = 4;

    private readonly double[] _radii = [.. things.Select(thing => Point2.Distance(thing.At, centre))];
    private readonly double[] _directions = [.. things.Select(thing => Angle.Of(thing.At - centre).Degrees)];

    /// <summary>The longest one that begins with a thing; null where none of the fewest that are asked for does.</summary>
    /// <param name="first">The thing.</param>
    /// <param name="end">The one behind the last that may be on it.</param>
    /// <param name="fewest">How many it has at least.</param>
    public CirclePattern? Longest(int first, int end, int fewest)
    {
        double radius = Radius(first);
        if (!(2 * radius >= SmallestDiameter && 2 * radius <= LargestDiameter))
        {
            return null;
        }

        var turned = new List<double> { 0 };
        int way = 0;
        for (int i = first + 1; i < end && Math.Abs(Radius(i) - radius) <= 2 * EcadTolerances.PatternPlace; i++)
        {
            double gap = Turns.Reduced(Direction(i) - Direction(i - 1));
            way = way == 0 ? (gap < 0 ? -1 : 1) : way;
            double whole = turned[^1] + Turns.Positive(way * gap);
            if (whole >= 360 - Least || !IsTurnedAlike(first, i))
            {
                break;
            }

            turned.Add(whole);
        }

        CirclePattern? all = turned.Count < fewest ? null : Through(first, turned, way);
        int longest = all is not null ? 0
            : Beginnings.Longest(fewest, turned.Count - 1, count => Through(first, turned[..count], way) is not null);
        return longest > 0 ? Through(first, turned[..longest], way) : all;
    }

    private double Radius(int thing) => _radii[thing];

    private double Direction(int thing) => _directions[thing];

    // Either with its place or not at all: else no pattern goes as far.
    private bool IsTurnedAlike(int first, int other)
    {
        double off = Turns.Reduced((things[other].Turn - things[first].Turn) ?? 0);
        double turned = Turns.Reduced(Direction(other) - Direction(first));
        return things[first].Turn is null
            || Math.Min(Math.Abs(off), Math.Abs(Turns.Reduced(off - turned))) <= 2 * EcadTolerances.PatternTurn;
    }

    private CirclePattern? Through(int first, List<double> turned, int way)
    {
        // The smallest step between neighbours is the pitch: places may be empty.
        double[] gaps = [.. turned.Zip(turned.Skip(1), (a, b) => b - a)];
        double smallest = gaps.Min();
        if (smallest < SmallestStep)
        {
            return null;
        }

        int[] places = new int[turned.Count];
        for (int i = 1; i < places.Length; i++)
        {
            places[i] = places[i - 1] + (int)Math.Round(gaps[i - 1] / smallest);
        }

        int count = places[^1] + 1;
        if (count > MostPlaces || !IsDense(count, turned.Count))
        {
            return null;
        }

        double meanPlace = places.Average();
        double meanTurn = turned.Average();
        double step = places.Zip(turned, (p, t) => (p - meanPlace) * (t - meanTurn)).Sum()
            / places.Sum(p => (p - meanPlace) * (p - meanPlace));
        double radius = Enumerable.Range(first, turned.Count).Average(Radius);
        Spread With(double apart) => new(radius, Direction(first) + (way * (meanTurn - (meanPlace * apart))), way * apart);
        int round = (int)Math.Round(360 / step);
        bool whole = IsWhole(round, count, turned.Count)
            && Farthest(first, places, With(360.0 / round)) <= EcadTolerances.PatternPlace;
        return Written(first, places, With(whole ? 360.0 / round : step), whole ? round : count, whole);
    }

    // One place in six behind the last is still a circle with a gap; more is an arc.
    private static bool IsWhole(int round, int count, int taken) =>
        round >= count && round <= MostPlaces && 6 * (round - count) <= round && IsDense(round, taken);

    private static bool IsDense(int count, int taken) =>
        count == taken || (taken >= FewestWithGaps && 3 * (count - taken) <= count);

    private double Farthest(int first, int[] places, Spread spread)
    {
        double farthest = 0;
        for (int i = 0; i < places.Length; i++)
        {
            Point2 place = centre + Point2.Polar(spread.Radius, Angle.FromDegrees(spread.From + (spread.Step * places[i])));
            farthest = Math.Max(farthest, Point2.Distance(place, things[first + i].At));
        }

        return farthest;
    }

    // One number after the other is made round as far as the places allow; null where the board file can't say it.
    private CirclePattern? Written(int first, int[] places, Spread best, int count, bool whole)
    {
        double off = Farthest(first, places, best);
        bool Fits(double share, Spread tried) => Farthest(first, places, tried) <= EcadTolerances.RoomToRound(off, share);
        if (off > EcadTolerances.PatternPlace
            || RoundNumber.Of(2 * best.Radius, d => Fits(0.6, best with { Radius = d / 2 })) is not { } diameter
            || RoundNumber.Of(best.From, f => Fits(0.8, new Spread(diameter / 2, f, best.Step))) is not { } from
            || (whole ? best.Step : RoundNumber.Of(best.Step, s => Fits(1, new Spread(diameter / 2, from, s)))) is not { } step)
        {
            return null;
        }

        double apart = Math.Abs(step);
        if (diameter is < SmallestDiameter or > LargestDiameter
            || (!whole && !(apart is >= SmallestStep and <= LargestStep && (count - 1) * apart < 360 - Least)))
        {
            return null;
        }

        var taken = new HashSet<int>(places);
        return new CirclePattern(
            centre, diameter, count, Turns.Positive(from), whole ? null : apart, step < 0, [.. Enumerable.Range(first, places.Length)],
            [.. Enumerable.Range(0, count).Where(place => !taken.Contains(place)).Select(place => place + 1)]).Of(things);
    }

    /// <summary>Places on a circle, in degrees; a step below 0 runs clockwise.</summary>
    private readonly record struct Spread(double Radius, double From, double Step);
}
