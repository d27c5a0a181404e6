using System.Globalization;
using ShellForge.Checks.PrintTime;
using ShellForge.Output.Report;
using ShellForge.Planning.Plan;
using Spectre.Console;

namespace ShellForge.Cli.Telling;

/// <summary>A made housing for people: parts, what to buy.</summary>
internal static class HousingText
{
    public static void WriteParts(IAnsiConsole console, HousingReport report)
    {
        var table = new Table().Border(TableBorder.Minimal);
        table.AddColumn("part").AddColumn("filament");
        table.AddColumn(new TableColumn("size mm").RightAligned()).AddColumn(new TableColumn("cm\u00B3").RightAligned());
        table.AddColumn(new TableColumn("g").RightAligned()).AddColumn(new TableColumn("prints in").RightAligned());
        table.AddColumn("closed");
        foreach (PartReport part in report.Parts)
        {
            table.AddRow(
                Text(part.Name), Text(part.Filament),
                Text(string.Create(CultureInfo.InvariantCulture, $"{part.Size.X:0.0} x {part.Size.Y:0.0} x {part.Size.Z:0.0}")),
                Text(string.Create(CultureInfo.InvariantCulture, $"{part.Volume / 1000:0.0}")),
                Text(string.Create(CultureInfo.InvariantCulture, $"{part.Estimate.Grams:0.0}")),
                Text(PrintEstimate.Duration(part.Estimate.Minutes)),
                Text(part.Closed ? "yes" : "no"));
        }

        console.Write(table);
    }

    public static void WriteShopping(IAnsiConsole console, HousingReport report)
    {
        foreach (ShoppingItem item in report.Shopping)
        {
            console.MarkupLineInterpolated(CultureInfo.InvariantCulture, $"  {item.Count} x {item.Item}");
        }
    }

    private static Text Text(string text) => new(text);
}
