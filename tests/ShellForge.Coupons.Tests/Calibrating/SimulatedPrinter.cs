using System.Globalization;
using ShellForge.Board.Profiles;
using ShellForge.Coupons.Answers;

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

    private readonly Random _noise = new(7);

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
            "slot" => (size.Drawn * (1 - Shrinkage)) + Slot,
            _ => (size.Drawn * (1 - Shrinkage)) + Hole,
        } + Noise(0.015)).ToString("0.00", CultureInfo.InvariantCulture),
        ReadingQuestion reading => (1000 * Through(coupon, reading.Key) * (1 + Noise(0.02))).ToString("0.#", CultureInfo.InvariantCulture),
        StepQuestion step => Chosen(coupon, step),
        _ => throw new InvalidOperationException(),
    };

    public double Through(double thickness, FilamentProfile typical) => 1 / (1 + (thickness / (typical.TransmissionLength / Density)));

    private double Through(Coupon coupon, string key) => key == "open" ? 1
        : Through(double.Parse(key["window-".Length..], CultureInfo.InvariantCulture), coupon.Wish.Filament);

    private string Chosen(Coupon coupon, StepQuestion question)
    {
        (double Tight, double Best, double Loose) wanted = coupon.Kind.Name == "insert-holes"
            ? (BestInsertHole(coupon.Wish.Insert!) - InsertReach, BestInsertHole(coupon.Wish.Insert!),
                BestInsertHole(coupon.Wish.Insert!) + InsertReach)
            : (TightGap, WantedGap, LooseGap);
        double InHand(double step) => coupon.Kind.Name switch
        {
            "insert-holes" => InsertHoleInHand(step, coupon.WrittenScale),
            "lid-fit" => GapInHand(step, Hole),
            "slot-fit" => GapInHand(step, Slot),
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
