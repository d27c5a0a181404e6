using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ShellForge.Coupons.Answers;

namespace ShellForge.Coupons.Files;

/// <summary>The file that the answers go into: what was printed, and each question over its empty answer.</summary>
public static class AnswerForm
{
    /// <summary>The file as text.</summary>
    public static string Text(ImmutableArray<MadeCoupon> coupons) => Text(coupons, (_, _) => "");

    /// <summary>The file with answers in it.</summary>
    /// <param name="coupons">The coupons.</param>
    /// <param name="answer">The answer to a question of a coupon; empty for none.</param>
    public static string Text(ImmutableArray<MadeCoupon> coupons, Func<Coupon, Question, string> answer)
    {
        CouponWish wish = coupons[0].Coupon.Wish;
        var text = new StringBuilder();
        Line(text, "# Answers to coupons. Fill in what stands behind each colon, then: shellforge calibrate answers.yaml");
        Line(text, "# What stays empty is asked; a coupon that you did not try is left out by 'skip' then, or by deleting its lines here.");
        Line(text, "format: shellforge-answers/1");
        Line(text, $"printer: {wish.Printer.Name}");
        Line(text, $"filament: {wish.Filament.Name}");
        Line(text, "coupons:");
        foreach (Coupon coupon in coupons.Select(made => made.Coupon))
        {
            Line(text, $"  - kind: {coupon.Kind.Name}");
            if (coupon.Wish.Filament.Name != wish.Filament.Name)
            {
                Line(text, $"    filament: {coupon.Wish.Filament.Name}");
            }

            if (coupon.Kind.NeedsInsert && coupon.Wish.Insert is { } insert)
            {
                Line(text, $"    insert: {insert.Name}");
            }

            if (coupon.Kind.NeedsPlug && coupon.Wish.Plug is { } plug)
            {
                Line(text, $"    plug: {plug.Name}");
            }

            if (coupon.Wish.Around is { } around)
            {
                Line(text, string.Create(CultureInfo.InvariantCulture, $"    around: {around:0.###}"));
            }

            Line(text, "    answers:");
            foreach (Question question in coupon.Kind.Questions(coupon.Wish))
            {
                BenchSheet.Wrap(text, "      # ", $"{question.Text}: {question.Expected}".Replace("\n", " ", StringComparison.Ordinal));
                Line(text, $"      {question.Key}: {answer(coupon, question)}".TrimEnd());
            }
        }

        return Commented(text.ToString());
    }

    // Lines that wrapping has set in under a remark are remarks too.
    private static string Commented(string text)
    {
        string[] lines = text.Split('\n');
        for (int i = 1; i < lines.Length; i++)
        {
            if (lines[i].StartsWith("        ", StringComparison.Ordinal) && lines[i - 1].TrimStart().StartsWith('#'))
            {
                lines[i] = "      # " + lines[i].TrimStart();
            }
        }

        return string.Join('\n', lines);
    }

    private static void Line(StringBuilder text, string line) => text.Append(line).Append('\n');
}
