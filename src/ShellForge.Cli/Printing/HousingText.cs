using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Checks.PrintTime;
using ShellForge.Output.Prints;
using ShellForge.Output.Report;
using ShellForge.Output.Words;
using ShellForge.Planning.Plan;
using Spectre.Console;

namespace ShellForge.Cli.Printing;

/// <summary>A made housing for people: what to do with it, its parts, what to buy.</summary>
internal static class HousingText
{
    /// <summary>The first lines: the verdict, and what the housing is: size, plastic, time, what to buy.</summary>
    /// <param name="console">Where to.</param>
    /// <param name="report">The report.</param>
    /// <param name="strict">Whether warnings are reasons not to print.</param>
    public static void WriteSummary(IAnsiConsole console, HousingReport report, bool strict)
    {
        int stops = report.Count(Severity.Stop);
        int warnings = report.Count(Severity.Warn);
        console.MarkupLine(report.Verdict switch
        {
            Verdict.Print => "[green]Print it.[/]",
            Verdict.MindWarnings when strict =>
                $"[red]Do not print: {FindingsText.Counted(warnings, "warning")} to clear first, since you asked for --strict.[/]",
            Verdict.MindWarnings => $"[yellow]Print it, and mind {FindingsText.Counted(warnings, "warning")}.[/]",
            _ => $"[red]Do not print: {FindingsText.Counted(stops, "finding")} to clear first.[/]",
        });
        if (report.OverallSize is { } size)
        {
            Wrapped(console, string.Create(
                CultureInfo.InvariantCulture,
                $"{report.Name}: {size.X:0.0} x {size.Y:0.0} mm, {size.Z:0.0} mm high; "
                    + $"{FindingsText.Counted(report.Parts.Length, "part")}, "
                + $"{report.Grams:0} g, {PrintEstimate.Duration(report.Minutes)} to print."));
        }

        Wrapped(console, report.Shopping.IsEmpty
            ? "To buy: nothing but filament."
            : $"To buy: {string.Join(", ", report.Shopping.Select(Spelled))}.");
    }

    /// <summary>A line a part.</summary>
    public static void WriteParts(IAnsiConsole console, HousingReport report)
    {
        var table = new Table().NoBorder();
        table.AddColumn("part").AddColumn("filament");
        table.AddColumn(new TableColumn("size mm").RightAligned().NoWrap());
        table.AddColumn(new TableColumn("g").RightAligned()).AddColumn(new TableColumn("prints in").RightAligned().NoWrap());
        foreach (PartReport part in report.Parts)
        {
            table.AddRow(
                Text(part.Closed ? part.Name : $"{part.Name} (not closed)"), Text(part.Filament),
                Text(string.Create(CultureInfo.InvariantCulture, $"{part.Size.X:0.0} x {part.Size.Y:0.0} x {part.Size.Z:0.0}")),
                Text(string.Create(CultureInfo.InvariantCulture, $"{part.Estimate.Grams:0.0}")),
                Text(PrintEstimate.Duration(part.Minutes)));
        }

        console.Write(table);
    }

    /// <summary>Two lines a file of the maker's slicer; nothing where none was given.</summary>
    public static void WriteSliced(IAnsiConsole console, HousingReport report)
    {
        foreach ((string file, string time, string plastic) in SlicedText.Of(report))
        {
            Wrapped(console, $"{file}: {time}; {plastic}.");
        }
    }

    private static string Spelled(ShoppingItem item) => string.Create(CultureInfo.InvariantCulture, $"{item.Count} x {item.Item}");

    private static void Wrapped(IAnsiConsole console, string text)
    {
        const int indent = 2;
        foreach (string line in WrappedText.Lines(text, console.Profile.Width, indent: indent))
        {
            console.WriteLine(line);
        }
    }

    private static Text Text(string text) => new(text);
}
