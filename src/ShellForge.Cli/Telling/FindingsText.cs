using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Output.Report;
using Spectre.Console;

namespace ShellForge.Cli.Telling;

/// <summary>Findings for people: one paragraph each, worst first, then the verdict.</summary>
internal static class FindingsText
{
    public static void Write(IAnsiConsole console, ImmutableArray<Finding> findings)
    {
        foreach (Finding finding in findings)
        {
            string colour = finding.Severity switch
            {
                Severity.Stop => "red",
                Severity.Warn => "yellow",
                _ => "grey",
            };
            console.MarkupLineInterpolated(
                CultureInfo.InvariantCulture,
                $"[{colour}]{ReportJson.Word(finding.Severity)}[/] [bold]{finding.Rule}[/] {finding.Subject}: {finding.Message}{Numbers(finding)}{Place(finding)}");
            console.MarkupLineInterpolated(CultureInfo.InvariantCulture, $"     {Advice(finding)}");
        }
    }

    /// <summary>The last line: what to do with the housing.</summary>
    /// <param name="console">Where to.</param>
    /// <param name="report">The report.</param>
    /// <param name="strict">Whether warnings are reasons not to print.</param>
    public static void WriteVerdict(IAnsiConsole console, HousingReport report, bool strict)
    {
        int stops = report.Findings.Count(finding => finding.Severity == Severity.Stop);
        int warnings = report.Findings.Count(finding => finding.Severity == Severity.Warn);
        string line = report.Verdict switch
        {
            Verdict.Print => "[green]Print it.[/]",
            Verdict.MindWarnings when strict => $"[red]Do not print: {Counted(warnings, "warning")} to clear first, since you asked for --strict.[/]",
            Verdict.MindWarnings => $"[yellow]Print it, and mind {Counted(warnings, "warning")}.[/]",
            _ => $"[red]Do not print: {Counted(stops, "finding")} to clear first.[/]",
        };
        console.MarkupLine(line);
    }

    /// <summary>A count with its noun.</summary>
    public static string Counted(int count, string noun) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {noun}{(count == 1 ? "" : "s")}");

    private static string Advice(Finding finding) =>
        finding.Accepted is null ? finding.Remedy : $"accepted: {finding.Accepted}";

    private static string Numbers(Finding finding)
    {
        if (finding.Measured is not { } measured)
        {
            return "";
        }

        string unit = finding.Unit.Length == 0 ? "" : " " + finding.Unit;
        string limit = finding.Limit is { } value ? string.Create(CultureInfo.InvariantCulture, $", limit {value:0.###}{unit}") : "";
        return string.Create(CultureInfo.InvariantCulture, $" ({measured:0.###}{unit}{limit})");
    }

    private static string Place(Finding finding) => finding switch
    {
        { At: { } at } => string.Create(CultureInfo.InvariantCulture, $" at ({at.X:0.#;-0.#;0}, {at.Y:0.#;-0.#;0}, {at.Z:0.#;-0.#;0})"),
        { InFile: { } line } => string.Create(CultureInfo.InvariantCulture, $" at {line.File}:{line.Line}:{line.Column}"),
        _ => "",
    };
}
