using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Output.Report;
using ShellForge.Output.Words;
using Spectre.Console;

namespace ShellForge.Cli.Printing;

/// <summary>Findings for people: one paragraph each, worst first.</summary>
internal static class FindingsText
{
    // "stop", "warn" and "note" and two blanks.
    private const int Indent = 6;

    /// <summary>Writes findings: what is the matter, then what to do and the rule's name.</summary>
    /// <param name="console">Where to.</param>
    /// <param name="findings">The findings, worst first.</param>
    /// <param name="details">Whether measured value, limit and place are told too.</param>
    public static void Write(IAnsiConsole console, ImmutableArray<Finding> findings, bool details)
    {
        foreach (Finding finding in findings)
        {
            string colour = finding.Severity switch
            {
                Severity.Stop => "red",
                Severity.Warn => "yellow",
                _ => "blue",
            };
            console.WriteLine();
            string word = ReportJson.Word(finding.Severity);
            string[] matter = [.. Lines(console, $"{finding.Subject}: {finding.Message}", word.PadRight(Indent))];
            console.MarkupLineInterpolated(
                CultureInfo.InvariantCulture, $"[{colour}]{matter[0][..word.Length]}[/]{matter[0][word.Length..]}");
            Plain(console, matter[1..]);
            Plain(console, [.. Lines(console, $"{Advice(finding)} [{finding.Rule}]", new string(' ', Indent))]);
            if (details && string.Join("; ", FindingWords.Figures(finding).Concat(Place(finding))) is { Length: > 0 } facts)
            {
                Plain(console, [.. Lines(console, facts, new string(' ', Indent))]);
            }
        }
    }

    /// <summary>A count with its noun.</summary>
    public static string Counted(int count, string noun) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {noun}{(count == 1 ? "" : "s")}");

    private static IEnumerable<string> Lines(IAnsiConsole console, string text, string first) =>
        WrappedText.Lines(text, console.Profile.Width, first, Indent);

    private static void Plain(IAnsiConsole console, string[] lines)
    {
        foreach (string line in lines)
        {
            console.WriteLine(line);
        }
    }

    private static string Advice(Finding finding) =>
        finding.Accepted is null ? FindingWords.Sentence(finding.Remedy) : $"Accepted: {finding.Accepted}";

    private static IEnumerable<string> Place(Finding finding)
    {
        if (finding.At is { } at)
        {
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"at x {at.X:0.#;-0.#;0}, y {at.Y:0.#;-0.#;0}, {at.Z:0.#;-0.#;0} mm above the housing's underside");
        }

        if (finding.InFile is { } line)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"{line.File}:{line.Line}:{line.Column}");
        }
    }
}
