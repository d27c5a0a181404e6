using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;

namespace ShellForge.Planning.Holding;

/// <summary>What supports have to do together.</summary>
/// <param name="Given">Where what is there already carries: corners of its faces.</param>
/// <param name="GivenCount">How many supports that is.</param>
/// <param name="Wanted">How many there shall be.</param>
/// <param name="Centre">What they have to stand round.</param>
/// <param name="Apart">Least distance between two, mm.</param>
internal sealed record SupportWish(
    ImmutableArray<Point2> Given, int GivenCount, int Wanted, Point2 Centre, double Apart);

/// <summary>
/// Chooses supports among free places: as far from each other as can be, and round the centre of mass. Where the first choice leaves it at
/// the side of their polygon (two places across from each other and a third between them), they move or become more.
/// </summary>
internal static class SupportChoice
{
    /// <summary>Two supports stand at least so far apart, as a share of the board's diameter.</summary>
    public const double Apart = 0.17;

    // More than this are no use, whatever stands in the way of better places.
    private const int Most = 8;

    // So much of what all free places together would give is enough. Three places a third of a turn apart give half of it.
    private const double Enough = 0.45;

    /// <summary>Indices of the places taken, in the order in which they were found.</summary>
    /// <param name="wish">What they have to do.</param>
    /// <param name="free">Where one may stand: the middle of what it carries.</param>
    public static ImmutableArray<int> Choose(SupportWish wish, ImmutableArray<Point2> free)
    {
        var chosen = new List<int>();
        while (wish.GivenCount + chosen.Count < wish.Wanted && Next(wish, free, chosen, i => Alone(wish, free, chosen, i)) is int next)
        {
            chosen.Add(next);
        }

        double enough = Enough * SupportPolygon.Of([.. wish.Given, .. free]).Inside(wish.Centre);
        while (Margin(wish, free, chosen) < enough - Layers.Slack && Moved(wish, free, chosen) is { } moved)
        {
            chosen = moved;
        }

        while (Margin(wish, free, chosen) is var margin && margin < enough - Layers.Slack && wish.GivenCount + chosen.Count < Most
            && Next(wish, free, chosen, i => Margin(wish, free, [.. chosen, i])) is int more
            && Margin(wish, free, [.. chosen, more]) > margin + Layers.Slack)
        {
            chosen.Add(more);
        }

        return [.. chosen];
    }

    /// <summary>One more, which brings a place where something pushes farthest inside; null where none does.</summary>
    /// <param name="wish">What supports have to do.</param>
    /// <param name="free">Where one may stand.</param>
    /// <param name="chosen">Those taken.</param>
    /// <param name="pushed">Where something pushes.</param>
    public static int? Toward(SupportWish wish, ImmutableArray<Point2> free, ImmutableArray<int> chosen, Point2 pushed)
    {
        double now = Polygon(wish, free, chosen).Inside(pushed);
        return now < 0 && chosen.Length + wish.GivenCount < Most
            && Next(wish, free, chosen, i => Polygon(wish, free, [.. chosen, i]).Inside(pushed)) is int next
            && Polygon(wish, free, [.. chosen, next]).Inside(pushed) > now + Layers.Slack ? next : null;
    }

    /// <summary>What given and chosen supports stand on.</summary>
    public static SupportPolygon Polygon(SupportWish wish, ImmutableArray<Point2> free, IEnumerable<int> chosen) =>
        SupportPolygon.Of([.. wish.Given, .. chosen.Select(i => free[i])]);

    private static double Margin(SupportWish wish, ImmutableArray<Point2> free, IEnumerable<int> chosen) =>
        Polygon(wish, free, chosen).Inside(wish.Centre);

    // The best of the places that stand apart from all others, the first of equals; null where none does.
    private static int? Next(SupportWish wish, ImmutableArray<Point2> free, IReadOnlyList<int> chosen, Func<int, double> worth)
    {
        int[] places = [.. Enumerable.Range(0, free.Length).Where(i => Alone(wish, free, chosen, i) >= wish.Apart)];
        return places.Length == 0 ? null : places.MaxBy(i => Math.Round(worth(i), 6));
    }

    private static double Alone(SupportWish wish, ImmutableArray<Point2> free, IEnumerable<int> chosen, int place) =>
        wish.Given.Concat(chosen.Select(i => free[i])).Select(other => Point2.Distance(other, free[place]))
            .DefaultIfEmpty(double.PositiveInfinity).Min();

    // One of the chosen at another place, where that helps most; null where none helps.
    private static List<int>? Moved(SupportWish wish, ImmutableArray<Point2> free, List<int> chosen)
    {
        List<int>? best = null;
        double most = Margin(wish, free, chosen) + Layers.Slack;
        for (int k = 0; k < chosen.Count; k++)
        {
            int[] others = [.. chosen.Where((_, i) => i != k)];
            if (Next(wish, free, others, i => Margin(wish, free, [.. others, i])) is int to
                && Margin(wish, free, [.. others, to]) is var margin && margin > most)
            {
                most = margin;
                best = [.. chosen.Select((i, at) => at == k ? to : i)];
            }
        }

        return best;
    }
}
