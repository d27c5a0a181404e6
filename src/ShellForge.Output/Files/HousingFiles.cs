using System.Collections.Immutable;
using System.Text;
using ShellForge.Checks;
using ShellForge.Formats.Glb;
using ShellForge.Formats.Stl;
using ShellForge.Formats.ThreeMf;
using ShellForge.Output.Assembly;
using ShellForge.Output.Drawings;
using ShellForge.Output.Light;
using ShellForge.Output.Page;
using ShellForge.Output.Page.Building;
using ShellForge.Output.Report;

namespace ShellForge.Output.Files;

/// <summary>Files that can be asked for.</summary>
[Flags]
public enum FileFormats
{
    /// <summary>None: drawings and report only.</summary>
    None = 0,

    /// <summary>One binary STL a part, in print orientation.</summary>
    Stl = 1,

    /// <summary>One 3MF with all parts, named, side by side.</summary>
    ThreeMf = 2,

    /// <summary>The assembly with the board in it, in colours, for looking at.</summary>
    Glb = 4,

    /// <summary>The light on the diffuser as a table of numbers.</summary>
    Csv = 8,
}

/// <summary>Everything that <c>make</c> writes, as bytes. The report comes last: where it is new, everything else is.</summary>
public static class HousingFiles
{
    /// <summary>Name of the report for machines.</summary>
    public const string ReportFile = "report.json";

    /// <summary>Name of the report for people.</summary>
    public const string PageFile = "report.html";

    /// <summary>Name of the picture of the light.</summary>
    public const string LightFile = "light.png";

    // Room for a brim round each job.
    private const double PlateSpacing = 10;

    /// <summary>All files of a housing.</summary>
    /// <param name="housing">What was made.</param>
    /// <param name="report">What is told about it.</param>
    /// <param name="formats">Files wanted beside drawings, pictures and reports.</param>
    public static ImmutableArray<OutputFile> Of(HousingUnderCheck housing, HousingReport report, FileFormats formats)
    {
        HousingLooks looks = HousingLooks.Of(housing);
        CheckedPart[] parts = [.. housing.SoundParts.Where(part => !part.PrintMesh.IsEmpty)];
        var files = ImmutableArray.CreateBuilder<OutputFile>();
        if (formats.HasFlag(FileFormats.Stl))
        {
            files.AddRange(parts.Select(part => new OutputFile(
                HousingReport.FileOf(part.Name),
                Written(stream => StlWriter.Write(stream, part.PrintMesh.Mesh, $"ShellForge {part.Name} mm")))));
        }

        if (formats.HasFlag(FileFormats.ThreeMf))
        {
            ImmutableArray<PlacedJob> placed = PlateLayout.Place(
                Jobs(parts), housing.Board.Print.Printer.BedX, PlateSpacing);
            files.Add(new OutputFile("housing.3mf", Written(stream => ThreeMfWriter.Write(stream, report.Name, placed, HousingPictures.Thumbnail(looks)))));
        }

        if (formats.HasFlag(FileFormats.Glb))
        {
            files.Add(new OutputFile(
                "assembly.glb", Written(stream => GlbWriter.Write(stream, report.Name, AssemblyScene.Of(housing)))));
        }

        if (housing.Light is { } light)
        {
            files.Add(new OutputFile(LightFile, looks.LightSheet!));
            if (formats.HasFlag(FileFormats.Csv))
            {
                files.Add(new OutputFile("light.csv", LightTable.Csv(light)));
            }
        }

        ImmutableArray<DrawingFile> drawings = HousingDrawings.Of(housing);
        files.AddRange(drawings.Select(drawing => new OutputFile(drawing.Name, Encoding.UTF8.GetBytes(drawing.Svg))));
        files.Add(new OutputFile("apart.png", HousingPictures.Apart(looks)));
        PageContent page = PageOf(housing, report, looks, drawings);
        files.Add(new OutputFile("assembly.pdf", AssemblySheet.Of(housing.Plan, page)));
        files.Add(new OutputFile(PageFile, Encoding.UTF8.GetBytes(PageHtml.Write(page, PageAssets.Embedded))));
        files.Add(new OutputFile(ReportFile, ReportJson.Bytes(report)));
        return files.ToImmutable();
    }

    /// <summary>The report for people.</summary>
    public static PageContent PageOf(HousingUnderCheck housing, HousingReport report) =>
        PageOf(housing, report, HousingLooks.Of(housing), HousingDrawings.Of(housing));

    private static PageContent PageOf(HousingUnderCheck housing, HousingReport report, HousingLooks looks, ImmutableArray<DrawingFile> drawings) =>
        PageBuilder.Of(
            housing, report, looks, [.. drawings.Select(drawing => new PageDrawing(drawing.Title, drawing.Svg))], StepPictures.Of(housing.Plan, looks));

    // Parts that fuse are one job: they must lie in each other as they are printed.
    private static ImmutableArray<PrintJob> Jobs(CheckedPart[] parts) =>
        [.. parts.GroupBy(part => part.Plan.PrintedWith ?? part.Name, StringComparer.Ordinal)
            .Select(job => new PrintJob(job.Key, [.. job.Select(Body)]))];

    private static PrintBody Body(CheckedPart part) =>
        new(part.Name, part.PrintMesh.Mesh, part.Plan.Filament.Name, part.Plan.Filament.Screen);

    private static byte[] Written(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return stream.ToArray();
    }
}
