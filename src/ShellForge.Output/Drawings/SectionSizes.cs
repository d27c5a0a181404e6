using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Output.Drawings;

/// <summary>Sizes that can be read off a section by running a ruler across it: outer size, bore, outer wall, floor.</summary>
internal sealed class SectionSizes
{
    // A run of material that is longer than this share of the section is no wall, and one higher than this share of the height no floor.
    private const double WallShare = 0.2;
    private const double FloorShare = 0.6;

    // Where a wall is looked for, as shares of the height, the best first.
    private static readonly double[] WallHeights = [0.37, 0.5, 0.63, 0.76, 0.88];

    // A rim may be thinner than its wall by a groove; what is thicker than the thinnest by more than this has something standing at it.
    private const double Alike = 1.6;

    private readonly ImmutableArray<ImmutableArray<Point2>> _section;

    /// <summary>Measures a section.</summary>
    /// <param name="section">Its loops; at least one.</param>
    /// <param name="edge">Height of the rounded edge that it lies on, mm, over which the wall is upright; 0 for none.</param>
    public SectionSizes(ImmutableArray<ImmutableArray<Point2>> section, double edge = 0)
    {
        _section = section;
        Point2[] corners = [.. section.SelectMany(loop => loop)];
        (Left, Right) = (corners.Min(p => p.X), corners.Max(p => p.X));
        (Bottom, Top) = (corners.Min(p => p.Y), corners.Max(p => p.Y));

        // A third of the height lies over the floor and under what the other part reaches into; where a boss stands against the wall there,
        // the wall is free higher up.
        (double At, double From, double To)[] walls =
        [
            .. WallHeights.Select(share => Bottom + (share * (Top - Bottom))).Where(at => at > Bottom + edge)
                .SelectMany(at => Runs(at, vertical: false).TakeLast(1).Select(run => (at, run.From, run.To)))
                .Where(run => run.To - run.From < WallShare * (Right - Left)),
        ];
        if (walls.Length > 0)
        {
            double thinnest = walls.Min(run => run.To - run.From);
            (WallAt, double from, double to) = walls.First(run => run.To - run.From <= Alike * thinnest);
            Wall = (from, to);
        }

        // The bore: the free run over the axis at the bed.
        double middle = (Left + Right) / 2;
        (double From, double To)[] low = [.. Runs(Bottom + (0.5 * (Top - Bottom)), vertical: false)];
        for (int i = 1; i < low.Length; i++)
        {
            bool isBore = low[i - 1].To < middle && low[i].From > middle && !Runs(middle, vertical: true).Any();
            Inner = isBore ? (low[i - 1].To, low[i].From) : Inner;
        }

        FloorAt = Inner is { } bore ? (bore.To + Right) / 2 : middle + (0.3 * (Right - middle));
        (double From, double To)[] up = [.. Runs(FloorAt, vertical: true)];
        if (up.Length > 0 && up[0].From < Bottom + DrawingSheet.Invisible && up[0].To - Bottom < FloorShare * (Top - Bottom))
        {
            Floor = up[0].To;
        }
    }

    /// <summary>Left end, mm.</summary>
    public double Left { get; }

    /// <summary>Right end, mm.</summary>
    public double Right { get; }

    /// <summary>Lower end, mm.</summary>
    public double Bottom { get; }

    /// <summary>Upper end, mm.</summary>
    public double Top { get; }

    /// <summary>The free run over the axis; null where the axis passes through material.</summary>
    public (double From, double To)? Inner { get; }

    /// <summary>The outermost run on the right at <see cref="WallAt"/>; null where it is no wall.</summary>
    public (double From, double To)? Wall { get; }

    /// <summary>Height at which the wall was measured.</summary>
    public double WallAt { get; }

    /// <summary>Upper face of the floor at <see cref="FloorAt"/>; null where there is none.</summary>
    public double? Floor { get; }

    /// <summary>Where the floor was measured.</summary>
    public double FloorAt { get; }

    // Runs of material along a line, in order.
    private IEnumerable<(double From, double To)> Runs(double place, bool vertical)
    {
        var crossings = new List<double>();
        foreach (ImmutableArray<Point2> loop in _section)
        {
            for (int i = 0; i < loop.Length; i++)
            {
                (double a, double alongA) = Split(loop[i], vertical);
                (double b, double alongB) = Split(loop[(i + 1) % loop.Length], vertical);
                if (a <= place != b <= place)
                {
                    crossings.Add(alongA + ((alongB - alongA) * (place - a) / (b - a)));
                }
            }
        }

        crossings.Sort();
        for (int i = 0; i + 1 < crossings.Count; i += 2)
        {
            yield return (crossings[i], crossings[i + 1]);
        }
    }

    private static (double Across, double Along) Split(Point2 point, bool vertical) =>
        vertical ? (point.X, point.Y) : (point.Y, point.X);
}
