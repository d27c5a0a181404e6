using System.Globalization;
using ShellForge.Board.Profiles;
using ShellForge.Coupons.Answers;
using ShellForge.Planning.Closures;

namespace ShellForge.Coupons.Tests.Calibrating;

/// <summary>
/// A printer whose faults are known, and a person who measures and tries its prints with a steady but not perfect hand. What sizes come out
/// to is worked out here from the faults, not by the project's own rules.
/// </summary>
/// <param name="Outer">What outer sizes gain, mm.</param>
/// <param name="Hole">What holes gain on the diameter, mm.</param>
/// <param name="Slot">What slots gain in width, mm.</param>
/// <param name="Shrinkage">Linear shrinkage.</param>
/// <param name="Density">How many times denser the diffuser's spool is than the profile says.</param>
internal sealed record SimulatedPrinter(double Outer, double Hole, double Slot, double Shrinkage, double Density = 1)
{
    // A gap of a tenth per side is what a thumb likes; half of it jams, nearly twice of it drops out.
    public const double WantedGap = 0.1;
    public const double TightGap = 0.05;
    public const double LooseGap = 0.19;
    public const double TurningGap = 0.25;

    // What an insert likes: two tenths less than its chart draws, since the chart is for printers that close holes by so much.
    public const double ChartCloses = 0.2;
    public const double InsertReach = 0.09;

    // A tile drops into a seat where there is as much air per side.
    public const double InlayTight = 0.06;
    public const double InlayWanted = 0.12;
    public const double InlayLoose = 0.22;

    // A magnet is pressed in, on the diameter; a plug's grip goes in with the air that its package has beside it, on the width.
    public const double MagnetTight = -0.06;
    public const double MagnetWanted = 0.02;
    public const double MagnetLoose = 0.12;
    public const double PlugTight = -0.28;
    public const double PlugWanted = -0.08;
    public const double PlugLoose = 0.12;

    // A cell of this diameter drops between walls that stand so much farther apart in the hand, and does not knock.
    public const double Cell = 14.25;
    public const double CellTight = 0.08;
    public const double CellWanted = 0.3;
    public const double CellLoose = 0.55;

    // What a bar needs under a roof to slide, and from where it tips.
    public const double UnderRoof = 0.05;
    public const double Tips = 0.45;

    /// <summary>What share of a window's light the meter sees, which glows to all sides: 1 for one with a white dome.</summary>
    public double Sideways { get; init; } = 1;

    private readonly Random _noise = new(7);

    /// <summary>How far a roof sags, mm.</summary>
    public double Sag { get; init; } = 0.1;

    /// <summary>Thinnest wall that it lays whole, mm.</summary>
    public double ThinnestWall { get; init; } = 0.42;

    /// <summary>Longest bridge that is clean, level and closed, mm.</summary>
    public (double Clean, double Level, double Closed) Bridge { get; init; } = (11, 21, 38);

    /// <summary>Flattest lean that is smooth, degrees from the vertical.</summary>
    public double Lean { get; init; } = 47;

    /// <summary>How many times stiffer and rougher its plastic is than the data sheet's.</summary>
    public double Stiffness { get; init; } = 1;

    public int Seed { init => _noise = new Random(value); }

    /// <summary>Calipers are read to 0.02; hands judge to 0.01.</summary>
    private double Noise(double spread) => spread * ((2 * _noise.NextDouble()) - 1);

    public double InsertHoleInHand(double drawn, double writtenScale) => (drawn * writtenScale * (1 - Shrinkage)) + Hole;

    public static double BestInsertHole(InsertProfile insert) => insert.HoleDiameter - ChartCloses;

    /// <summary>Gap per side between two round walls drawn with a gap at a radius.</summary>
    public double GapInHand(double gap, double opening) => gap + ((opening - Outer) / 2);

    public string Answer(Coupon coupon, Question question) => question switch
    {
        SizeQuestion size => (size.Key switch
        {
            "x" or "y" or "width-x" or "width-y" => (size.Drawn * (1 - Shrinkage)) + Outer,
            "cell-diameter" => Cell,
            "four-lines" => size.Drawn + Outer,
            "slot" => (size.Drawn * (1 - Shrinkage)) + Slot,
            _ => (size.Drawn * (1 - Shrinkage)) + Hole,
        } + Noise(0.015)).ToString("0.00", CultureInfo.InvariantCulture),
        ReadingQuestion reading => (1000 * Through(coupon, reading.Key) * (1 + Noise(0.02))).ToString("0.#", CultureInfo.InvariantCulture),
        WeightQuestion weight => Kilograms(coupon, weight).ToString("0.0", CultureInfo.InvariantCulture),
        StepQuestion step => coupon.Kind.Name is "bridges" or "overhangs" or "thin-walls" ? Seen(coupon, step) : Chosen(coupon, step),
        _ => throw new InvalidOperationException(),
    };

    public double Through(double thickness, FilamentProfile typical) => 1 / (1 + (thickness / (typical.TransmissionLength / Density)));

    private double Through(Coupon coupon, string key) => key == "open" ? 1
        : Sideways * Through(double.Parse(key["window-".Length..], CultureInfo.InvariantCulture), coupon.Wish.Filament);

    // The middle of three readings. The stiffness of ring and lid is the plan's own: what is looked for is by how much this plastic differs
    // from it.
    private double Kilograms(Coupon coupon, WeightQuestion weight)
    {
        const double radius = 14;
        const double share = 6 * 12 / 360.0;
        double drawn = double.Parse(weight.Key["push-".Length..], CultureInfo.InvariantCulture);
        double overlap = Math.Max(0, drawn + ((Outer - Hole) / 2));
        double each = SnapForce.RoundPerOverlap(radius, coupon.Wish.Basis.Wall(2), coupon.Wish.Filament.ModulusMegapascals,
            1 + (0.3 * Math.Sqrt(3)));
        return Math.Max(0, (Stiffness * each * share * overlap / 9.81 * (1 + Noise(0.01))) + Noise(0.1));
    }

    private string Seen(Coupon coupon, StepQuestion question)
    {
        double[] steps = [.. question.Steps];
        int at = (coupon.Kind.Name, question.Key) switch
        {
            ("thin-walls", "broken") => Array.FindLastIndex(steps, step => step < ThinnestWall),
            ("thin-walls", _) => Array.FindIndex(steps, step => step >= ThinnestWall),
            ("overhangs", "clean") => Array.FindLastIndex(steps, step => step <= Lean),
            ("overhangs", _) => Array.FindIndex(steps, step => step > Lean),
            (_, "clean") => Array.FindLastIndex(steps, step => step <= Bridge.Clean),
            (_, "level") => Array.FindLastIndex(steps, step => step <= Bridge.Level),
            _ => Array.FindLastIndex(steps, step => step <= Bridge.Closed),
        };
        return at < 0 ? Question.None : steps[at].ToString("0.###", CultureInfo.InvariantCulture);
    }

    private string Chosen(Coupon coupon, StepQuestion question)
    {
        (double Tight, double Best, double Loose) wanted = coupon.Kind.Name switch
        {
            "insert-holes" => (BestInsertHole(coupon.Wish.Insert!) - InsertReach, BestInsertHole(coupon.Wish.Insert!),
                BestInsertHole(coupon.Wish.Insert!) + InsertReach),
            "inlay-fit" => (InlayTight, InlayWanted, InlayLoose),
            "magnet-pockets" => (MagnetTight, MagnetWanted, MagnetLoose),
            "battery-bays" => (CellTight, CellWanted, CellLoose),
            "plug-openings" => (PlugTight, PlugWanted, PlugLoose),
            "layer-fit" => (UnderRoof, UnderRoof + 0.1, Tips),
            _ => (TightGap, WantedGap, LooseGap),
        };
        double InHand(double step) => coupon.Kind.Name switch
        {
            "insert-holes" => InsertHoleInHand(step, coupon.WrittenScale),
            "lid-fit" => GapInHand(step, Hole),
            "slot-fit" or "inlay-fit" => GapInHand(step, Slot),
            "magnet-pockets" => step + Hole,
            "battery-bays" => step + 14 - Cell + Slot,
            "plug-openings" => step + Slot,
            "layer-fit" => step - Sag,
            _ => throw new InvalidOperationException(coupon.Kind.Name),
        };

        double[] inHand = [.. question.Steps.Select(step => InHand(step) + Noise(0.005))];
        int at = question.Key switch
        {
            "tight" => Array.FindLastIndex(inHand, size => size < wanted.Tight),
            "loose" => Array.FindIndex(inHand, size => size > wanted.Loose),
            "turns" => Array.FindIndex(inHand, size => size > TurningGap),
            _ => Array.FindIndex(inHand, size => size >= wanted.Tight && size <= wanted.Loose
                && Math.Abs(size - wanted.Best) == inHand.Min(other => Math.Abs(other - wanted.Best))),
        };
        return at < 0 ? Question.None : question.Steps[at].ToString("0.###", CultureInfo.InvariantCulture);
    }
}
