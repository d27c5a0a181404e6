using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ShellForge.Checks.PrintTime;
using ShellForge.Coupons.Answers;
using ShellForge.Output.Words;

namespace ShellForge.Coupons.Files;

/// <summary>The sheet for the bench: what to print, what to do with it, what is asked.</summary>
public static class BenchSheet
{
    private const int LineLength = 99;

    /// <summary>The sheet as text.</summary>
    public static string Text(ImmutableArray<MadeCoupon> coupons)
    {
        var text = new StringBuilder();
        CouponWish wish = coupons[0].Coupon.Wish;
        string[] filaments = [.. CouponMaker.ByFilament(coupons).Select(same => same[0].Coupon.Wish.Filament.Name)];
        Line(text, $"Coupons for {wish.Printer.Name} with {string.Join(" and ", filaments)}");
        Line(text, "");
        Wrap(text, "",
            "Print with the settings that the housing will be printed with: the same layers, lines, speeds and temperature, no support, "
                + "as the pieces lie. "
            + "Switch off the slicer's own compensation for shrinkage, holes and wide first layers.");
        foreach (MadeCoupon made in coupons)
        {
            Coupon coupon = made.Coupon;
            Line(text, "");
            Line(text, $"{coupon.Name}: {coupon.Kind.Tells}");
            Line(text,
                string.Create(CultureInfo.InvariantCulture,
                    $"  {string.Join(", ", made.Pieces.Select(piece => piece.Piece.Name + ".stl"))}: "
                        + $"{(filaments.Length > 1 ? $"of {coupon.Wish.Filament.Name}, " : "")}"
                        + $"{PrintEstimate.Duration(made.Estimate.Minutes)}, {made.Estimate.Grams:0.0} g"
                        + $"{(made.IsLong ? ", longer than half an hour on this printer" : "")}"));
            foreach (string caution in coupon.Cautions)
            {
                Wrap(text, "  Take care: ", caution);
            }

            for (int i = 0; i < coupon.Hands.Length; i++)
            {
                Wrap(text, string.Create(CultureInfo.InvariantCulture, $"  {i + 1}. "), coupon.Hands[i]);
            }

            foreach (Question question in coupon.Kind.Questions(coupon.Wish))
            {
                Wrap(text, $"  {question.Key}: ", question.Text + ".");
            }
        }

        Line(text, "");
        Wrap(text, "", "Write the answers into answers.yaml, or leave it as it is and be asked: shellforge calibrate answers.yaml");
        return text.ToString();
    }

    /// <summary>Text over several lines, the first with a head, the others set in under it.</summary>
    internal static void Wrap(StringBuilder text, string head, string words)
    {
        foreach (string line in WrappedText.Lines(words, LineLength, head, head.Length))
        {
            Line(text, line.TrimEnd());
        }
    }

    private static void Line(StringBuilder text, string line) => text.Append(line).Append('\n');
}
