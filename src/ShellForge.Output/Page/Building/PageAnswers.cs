using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.PrintTime;
using ShellForge.Geometry.Numerics;
using ShellForge.Output.Report;
using ShellForge.Planning.Hands;
using ShellForge.Planning.Plan;

namespace ShellForge.Output.Page.Building;

/// <summary>The first questions of whoever opens the page, answered in a sentence each.</summary>
internal static class PageAnswers
{
    public static PageVerdict VerdictOf(HousingReport report)
    {
        int stops = report.Count(Severity.Stop);
        int warnings = report.Count(Severity.Warn);
        return report.Verdict switch
        {
            Verdict.DoNotPrint => new PageVerdict("stop", $"Do not print: {Counted(stops, "finding")} in the way"),
            Verdict.MindWarnings => new PageVerdict("warn", $"Print it, and mind {Counted(warnings, "warning")}"),
            _ => new PageVerdict("good", "Print it"),
        };
    }

    public static ImmutableArray<PageAnswer> Of(HousingUnderCheck housing, HousingReport report)
    {
        var answers = ImmutableArray.CreateBuilder<PageAnswer>();
        answers.Add(new PageAnswer("Does it print?", Prints(housing, report)));
        if (report.OverallSize is { } size)
        {
            answers.Add(new PageAnswer("How large, how long?", string.Create(
                CultureInfo.InvariantCulture,
                $"{size.X:0.0} \u00d7 {size.Y:0.0} mm, {size.Z:0.0} mm high. {report.Grams:0} g of plastic, "
                    + $"{PrintEstimate.Duration(report.Minutes)} on the printer.")));
        }

        answers.Add(new PageAnswer("What do I buy?", Bought(housing, report)));
        answers.Add(new PageAnswer("Which way does the cover go?", CoverWay(housing.Plan), CoverKey(housing.Plan)));
        answers.Add(Tightest(housing));
        return answers.ToImmutable();
    }

    /// <summary>The few figures to keep in sight while numbers are tried.</summary>
    public static ImmutableArray<(string What, string Value)> FactsOf(HousingUnderCheck housing, HousingReport report)
    {
        var facts = ImmutableArray.CreateBuilder<(string, string)>();
        facts.Add(("verdict", VerdictOf(report).Words));
        if (report.OverallSize is { } size)
        {
            facts.Add(("height", string.Create(CultureInfo.InvariantCulture, $"{size.Z:0.0} mm")));
        }

        facts.Add(("plastic", string.Create(CultureInfo.InvariantCulture, $"{report.Grams:0.0} g")));
        facts.Add(("print", PrintEstimate.Duration(report.Minutes)));
        if (housing.Light?.MinimumOverMean is double even)
        {
            facts.Add(("evenness", even.ToString("0.00", CultureInfo.InvariantCulture)));
        }

        double warmest = housing.Heat.Planned.Nodes.Max(node => node.Celsius);
        facts.Add(("warmest", string.Create(CultureInfo.InvariantCulture, $"{warmest:0} \u00b0C")));
        return facts.ToImmutable();
    }

    private static string Prints(HousingUnderCheck housing, HousingReport report)
    {
        string parts = Counted(report.Parts.Length, "part");
        string verdict = report.Verdict switch
        {
            Verdict.DoNotPrint => "No. What stands in the way is listed under Findings.",
            Verdict.MindWarnings => $"Yes, {parts} without support, once the warnings are read.",
            _ => $"Yes, {parts} without support.",
        };
        return $"{verdict} Printer {housing.Board.Print.Printer.Name}, "
            + $"{HandWords.Listed(report.Parts.Select(part => part.Filament).Distinct(StringComparer.Ordinal))}.";
    }

    private static string Bought(HousingUnderCheck housing, HousingReport report)
    {
        if (report.Shopping.IsEmpty)
        {
            return "Nothing but filament.";
        }

        // The profile names behind the words are for the list below.
        IEnumerable<string> items = report.Shopping.Select(item =>
            string.Create(CultureInfo.InvariantCulture, $"{item.Count} \u00d7 {Short(item.Item)}"));
        return $"{HandWords.Listed(items)}; filament "
            + $"{HandWords.Listed(housing.Plan.Parts.Select(part => part.Filament.Name).Distinct(StringComparer.Ordinal))}.";
    }

    private static string Short(string item)
    {
        int bracket = item.LastIndexOf(" (", StringComparison.Ordinal);
        return bracket < 0 ? item : item[..bracket];
    }

    private static string CoverWay(HousingPlan plan)
    {
        string key = plan.Closure.WayOn(plan);
        PlacedTongue? tongue = plan.Tongues.Select(each => each.Tongue).FirstOrDefault();
        return tongue is null ? key : $"{key} Its tongue closes {tongue.Closes} at {HandWords.Clock(tongue.At, plan.Source.Up)}.";
    }

    private static Point3? CoverKey(HousingPlan plan)
    {
        double radius = (plan.Shell.Round?.Inner ?? plan.Source.Board.Outline.OuterRadius) + ((plan.Key.Rib?.Depth ?? 0) / 2);
        Point2 at = Point2.Polar(radius, plan.Key.At);
        return new Point3(at.X, at.Y, plan.Key.Top);
    }

    // What moves past each other while the hands put it together is planned to the printer's fits; what the board brings is measured on the
    // solids as made.
    private static PageAnswer Tightest(HousingUnderCheck housing)
    {
        HousingPlan plan = housing.Plan;
        string planned = $"Between parts, {Mm(plan.Cover.LipGap)} a side from the cover's lip to the tub's wall.";
        MeasuredGap? least = housing.SoundParts.Where(part => part.Plan.IsOfHousing)
            .SelectMany(part => housing.GapsOf(part)).MinBy(gap => gap.Distance);
        if (least is null)
        {
            return new PageAnswer(
                "Where is it tightest?",
                $"On the board nothing comes nearer to plastic than {Mm(MeasuredGap.ReachOf(housing))}. {planned}");
        }

        string where = least.Distance <= 0
            ? $"{least.Body} meets the {least.Part}."
            : $"{least.Body} is {Mm(least.Distance)} from the {least.Part}, measured.";
        return new PageAnswer("Where is it tightest?", $"{where} {planned}", least.At);
    }

    private static string Mm(double value) => value.ToString("0.00", CultureInfo.InvariantCulture) + " mm";

    private static string Counted(int count, string what) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {what}{(count == 1 ? "" : "s")}");
}
