using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Physics.Light;

/// <summary>How even light is over some places.</summary>
/// <param name="MinimumOverMean">Smallest over mean, 0 to 1 (the trade's U0).</param>
/// <param name="Michelson">(largest - smallest) / (largest + smallest), 0 for even light.</param>
public readonly record struct Evenness(double MinimumOverMean, double Michelson)
{
    // How far along the line each LED's place is looked at for what lies to the sides of it.
    private const double SharesAcross = 0.8;

    private const int PlacesPerPitch = 24;

    // The grid makes alike places differ by less than this, and eyes see no difference of a hundredth.
    private const double AsDim = 1.01;

    /// <summary>Of no light at all, which is as far from even as can be.</summary>
    public static Evenness Dark => new(0, 1);

    /// <summary>Of some values; NaN are places outside the window and don't count.</summary>
    public static Evenness Of(IEnumerable<double> values)
    {
        double[] light = [.. values.Where(double.IsFinite)];
        if (light.Length == 0 || light.Max() <= 0)
        {
            return Dark;
        }

        double least = light.Min();
        double most = light.Max();
        return new Evenness(least / light.Average(), (most - least) / (most + least));
    }

    /// <summary>
    /// Along a pitch line, as the viewer sees it with all LEDs on. Blending light is judged over the whole line, cells each over its
    /// middle: the worst cell counts.
    /// </summary>
    public static Evenness Along(LightMap map, PitchLine line) => AlongWithLeast(map, line).Evenness;

    /// <summary>The same, and where in the grid's coordinates the dimmest judged place is; null where nothing is lit.</summary>
    public static (Evenness Evenness, Point2? Least) AlongWithLeast(LightMap map, PitchLine line)
    {
        (Point2 At, double Light)[][] stretches =
        [
            .. line.Stretches.Select(stretch => Places(stretch, line.CellShare ?? 1)
                .Select(at => (at, map.Face.Sample(map.Seen.All, at.X, at.Y))).Where(place => double.IsFinite(place.Item2)).ToArray())
                .Where(stretch => stretch.Length > 0),
        ];
        if (stretches.Length == 0)
        {
            return (Dark, null);
        }

        if (line.CellShare is null)
        {
            (Point2 At, double Light)[] all = [.. stretches.SelectMany(stretch => stretch)];
            return (Of(all.Select(place => place.Light)), Dimmest(all));
        }

        Evenness[] each = [.. stretches.Select(stretch => Of(stretch.Select(place => place.Light)))];
        double least = each.Min(evenness => evenness.MinimumOverMean);
        int worst = Array.FindIndex(each, evenness => evenness.MinimumOverMean <= least * AsDim);
        return (new Evenness(least, each.Max(evenness => evenness.Michelson)), Dimmest(stretches[worst]));
    }

    // Circles are alike all round but for the grid: of places that are dim alike the first is named, not the one that rounding picks.
    private static Point2 Dimmest((Point2 At, double Light)[] places)
    {
        double least = places.Min(place => place.Light);
        return places.First(place => place.Light <= least * AsDim).At;
    }

    /// <summary>Across the lit window: means over all LEDs of the light so far to the inner or outer side of the pitch line.</summary>
    /// <param name="map">The light.</param>
    /// <param name="line">The pitch line.</param>
    /// <param name="half">How far to each side is judged, mm.</param>
    public static Evenness Across(LightMap map, PitchLine line, double half)
    {
        int steps = Math.Max(1, (int)(half / map.Face.Step));
        return Of(Enumerable.Range(-steps, (2 * steps) + 1).Select(k =>
        {
            double[] at = [.. line.Stretches
                .SelectMany(stretch => Places(stretch, SharesAcross).Select(place => stretch.Beside(place, k * half / steps)))
                .Select(place => map.Face.Sample(map.Seen.All, place.X, place.Y))
                .Where(double.IsFinite)];
            return at.Length == 0 ? double.NaN : at.Average();
        }));
    }

    private static IEnumerable<Point2> Places(PitchStretch stretch, double share) =>
        Enumerable.Range(0, PlacesPerPitch).Select(i => stretch.At(share * (((i + 0.5) / PlacesPerPitch) - 0.5)));
}

/// <summary>The line through the LEDs of one circle, in a grid's coordinates, one stretch for each LED.</summary>
/// <param name="Stretches">One for each LED, from halfway to its neighbour before to halfway to the next.</param>
public sealed record PitchLine(ImmutableArray<PitchStretch> Stretches)
{
    private const int Parts = 2;
    private const double Deviations = 2;

    // A cell's rim lies in its walls' half shadow in any case: so much of the room between them is judged.
    private const double JudgedShare = 0.8;

    /// <summary>
    /// The share of each stretch that is judged, and judged by itself, where LEDs have cells; null where light blends and the whole line is
    /// judged as one.
    /// </summary>
    public double? CellShare { get; private init; }

    // Whether its ways lie anywhere; otherwise they are one circle or one row.
    private bool Anywhere { get; init; }

    /// <summary>The circle of LEDs on a flat face.</summary>
    /// <param name="places">The LEDs, in plan.</param>
    /// <param name="positions">How many LEDs fill the circle.</param>
    public static PitchLine Circle(IEnumerable<Point2> places, int positions) => new(
        [.. places.Select(at => new PitchStretch(at, Point2.Origin, Angle.FromDegrees(360.0 / Math.Max(1, positions))))]);

    /// <summary>The row of LEDs on an unrolled band.</summary>
    /// <param name="places">The LEDs, in the band's coordinates.</param>
    /// <param name="pitch">From one to the next, mm.</param>
    public static PitchLine Row(IEnumerable<Point2> places, double pitch) => new(
        [.. places.Select(at => new PitchStretch(at, new Point2(pitch, 0), null))]);

    /// <summary>Straight ways from place to place, wherever they lie.</summary>
    /// <param name="ways">Their ends, in plan.</param>
    /// <param name="each">Whether each is judged by itself; otherwise all as one.</param>
    public static PitchLine Ways(IEnumerable<(Point2 From, Point2 To)> ways, bool each) => new(
        [.. ways.Select(way => new PitchStretch(0.5 * (way.From + way.To), way.To - way.From, null))])
    {
        CellShare = each ? 1 : null,
        Anywhere = true,
    };

    /// <summary>Some of the ways of this line.</summary>
    public PitchLine Only(Func<IReadOnlyCollection<PitchStretch>, IEnumerable<PitchStretch>> choose) =>
        this with { Stretches = [.. choose(Stretches)] };

    /// <summary>Whether a place in plan lies no farther than a distance in mm from one of the ways.</summary>
    public bool IsNear(Point2 at, double distance) => Stretches.Any(stretch =>
    {
        Point2 off = at - stretch.Middle;
        double squared = Point2.Dot(stretch.Along, stretch.Along);
        double share = squared > 0 ? Math.Clamp(Point2.Dot(off, stretch.Along) / squared, -0.5, 0.5) : 0;
        return Point2.Distance(off, share * stretch.Along) <= distance;
    });

    /// <summary>The same line through cells.</summary>
    /// <param name="pitch">From one LED to the next, mm.</param>
    /// <param name="wall">Thickness of the wall between two cells, mm.</param>
    public PitchLine InCells(double pitch, double wall) => this with { CellShare = JudgedShare * Math.Max(0, 1 - (wall / pitch)) };

    /// <summary>
    /// A grid along the line for light in cells: walls throw sharp shadows near to the places that are judged, which the grid of a whole
    /// face would smear.
    /// </summary>
    /// <param name="face">The face.</param>
    /// <param name="spread">Standard deviation of the sheet's spread, mm: what comes from beside the line counts.</param>
    public ReceiverGrid OnlyOf(ReceiverGrid face, double spread)
    {
        double beside = (Deviations * spread) + face.Step;
        if (Anywhere)
        {
            return face.Finer(Parts, at => IsNear(at, beside));
        }

        PitchStretch first = Stretches[0];
        return face.Finer(Parts, at => Math.Abs(first.Turn is null ? at.Y - first.Middle.Y : at.Length - first.Middle.Length) <= beside);
    }
}

/// <summary>One LED's stretch of a pitch line.</summary>
/// <param name="Middle">The LED.</param>
/// <param name="Along">On a straight row: from one LED to the next, mm.</param>
/// <param name="Turn">On a circle about the origin: from one LED to the next.</param>
public readonly record struct PitchStretch(Point2 Middle, Point2 Along, Angle? Turn)
{
    /// <summary>A place on the stretch, from -0.5 to 0.5.</summary>
    public Point2 At(double share) => Turn is Angle turn ? Middle.Turned(share * turn) : Middle + (share * Along);

    /// <summary>A place beside the line: outward on a circle, upward on a row, to the left of any other way.</summary>
    public Point2 Beside(Point2 place, double distance) =>
        Turn is null ? Aside(place, distance)
        : place.Length == 0 ? new Point2(distance, 0)
        : (1 + (distance / place.Length)) * place;

    private Point2 Aside(Point2 place, double distance) => Along.Y == 0 || Along.Length == 0
        ? place + new Point2(0, distance)
        : place + (distance / Along.Length * new Point2(-Along.Y, Along.X));
}
