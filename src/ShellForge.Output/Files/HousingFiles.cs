using System.Collections.Immutable;
using System.Text;
using ShellForge.Output.Assembly;
using ShellForge.Output.Page;
using ShellForge.Output.Page.Building;
using ShellForge.Output.Prints;
using ShellForge.Output.Report;

namespace ShellForge.Output.Files;

/// <summary>Everything that <c>make</c> writes, as bytes. The report comes last: where it is new, everything else is.</summary>
public static class HousingFiles
{
    /// <summary>Name of the report for machines.</summary>
    public const string ReportFile = "report.json";

    /// <summary>Name of the report for people.</summary>
    public const string PageFile = "report.html";

    /// <summary>All files of a housing.</summary>
    /// <param name="drawn">What shows the housing, whatever the rules say.</param>
    /// <param name="report">What is told about it.</param>
    public static ImmutableArray<OutputFile> Of(DrawnFiles drawn, HousingReport report)
    {
        HousingReport told = Told(drawn, report);
        PrintSheet prints = PrintSheet.Of(drawn.Housing, told);
        PageContent page = PageOf(drawn, told, prints);
        byte[] sheet = [];
        byte[] html = [];
        Parallel.Invoke(
            () => html = Encoding.UTF8.GetBytes(PageHtml.Write(page, PageAssets.Embedded)),
            () => sheet = AssemblySheet.Of(drawn.Housing.Plan, page));
        return
        [
            .. drawn.Asked,
            .. drawn.Drawings.Select(drawing => new OutputFile(drawing.Name, Encoding.UTF8.GetBytes(drawing.Svg))),
            new OutputFile("apart.png", drawn.Apart),
            new OutputFile("assembly.pdf", sheet),
            new OutputFile(PrintText.FileName, PrintText.Bytes(prints, page.PrintAdvice.AddRange(page.PrintNotes))),
            new OutputFile(PrintSheet.JsonFile, PrintSheet.Bytes(prints)),
            new OutputFile(PageFile, html),
            new OutputFile(ReportFile, ReportJson.Bytes(told)),
        ];
    }

    /// <summary>A report as it is told beside files: it names those parts' files only that are written.</summary>
    public static HousingReport Told(DrawnFiles drawn, HousingReport report) =>
        report.Naming(drawn.Asked.Select(file => file.Name).ToHashSet(StringComparer.Ordinal));

    /// <summary>The report for people.</summary>
    public static PageContent PageOf(DrawnFiles drawn, HousingReport report) =>
        PageOf(drawn, report, PrintSheet.Of(drawn.Housing, report));

    private static PageContent PageOf(DrawnFiles drawn, HousingReport report, PrintSheet prints) => PageBuilder.Of(
        drawn.Housing, report, drawn.Looks,
        [.. drawn.Drawings.Select(drawing => new PageDrawing(drawing.Title, drawing.Svg, drawing.Width, drawing.Height))], drawn.Steps,
        prints) with
    {
        Still = drawn.Apart.Length == 0 ? null : drawn.Apart,
    };
}
