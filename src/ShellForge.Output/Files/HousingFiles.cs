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
        ImmutableArray<OutputFile> meshes = [];
        byte[] apart = [];
        ImmutableArray<DrawingFile> drawings = [];
        ImmutableArray<PicturedStep> steps = [];

        // Side by side, each into its own place: the order is the same whoever is through first.
        Parallel.Invoke(
            () => meshes = MeshFiles(housing, report.Name, looks, formats),
            () => drawings = HousingDrawings.Of(housing, looks.Board),
            () => steps = StepPictures.Of(housing.Plan, looks),
            () => apart = HousingPictures.Apart(looks));
        PageContent page = PageOf(housing, report, looks, drawings, steps);
        byte[] sheet = [];
        byte[] html = [];
        Parallel.Invoke(
            () => html = Encoding.UTF8.GetBytes(PageHtml.Write(page, PageAssets.Embedded)),
            () => sheet = AssemblySheet.Of(housing.Plan, page));
        return
        [
            .. meshes,
            .. LightFiles(housing, looks, formats),
            .. drawings.Select(drawing => new OutputFile(drawing.Name, Encoding.UTF8.GetBytes(drawing.Svg))),
            new OutputFile("apart.png", apart),
            new OutputFile("assembly.pdf", sheet),
            new OutputFile(PageFile, html),
            new OutputFile(ReportFile, ReportJson.Bytes(report)),
        ];
    }

    /// <summary>The report for people.</summary>
    public static PageContent PageOf(HousingUnderCheck housing, HousingReport report)
    {
        HousingLooks looks = HousingLooks.Of(housing);
        ImmutableArray<DrawingFile> drawings = [];
        ImmutableArray<PicturedStep> steps = [];
        Parallel.Invoke(
            () => drawings = HousingDrawings.Of(housing, looks.Board),
            () => steps = StepPictures.Of(housing.Plan, looks));
        return PageOf(housing, report, looks, drawings, steps);
    }

    private static PageContent PageOf(
        HousingUnderCheck housing, HousingReport report, HousingLooks looks, ImmutableArray<DrawingFile> drawings, ImmutableArray<PicturedStep> steps) =>
        PageBuilder.Of(housing, report, looks, [.. drawings.Select(drawing => new PageDrawing(drawing.Title, drawing.Svg, drawing.Width, drawing.Height))], steps);

    private static ImmutableArray<OutputFile> MeshFiles(HousingUnderCheck housing, string name, HousingLooks looks, FileFormats formats)
    {
        CheckedPart[] parts = [.. housing.SoundParts.Where(part => !part.PrintMesh.IsEmpty)];
        var files = new List<(string Name, Action<Stream> Write)>();
        if (formats.HasFlag(FileFormats.Stl))
        {
            files.AddRange(parts.Select(part => (
                HousingReport.FileOf(part.Name),
                (Action<Stream>)(stream => StlWriter.Write(stream, part.PrintMesh.Mesh, $"ShellForge {part.Name} mm")))));
        }

        if (formats.HasFlag(FileFormats.ThreeMf))
        {
            ImmutableArray<PlacedJob> placed = PlateLayout.Place(Jobs(parts), housing.Board.Print.Printer.BedX, PlateSpacing);
            files.Add(("housing.3mf", stream => ThreeMfWriter.Write(stream, name, placed, HousingPictures.Thumbnail(looks))));
        }

        if (formats.HasFlag(FileFormats.Glb))
        {
            files.Add(("assembly.glb", stream => GlbWriter.Write(stream, name, AssemblyScene.Of(housing, looks.Board))));
        }

        var written = new OutputFile[files.Count];
        Parallel.For(0, written.Length, i => written[i] = new OutputFile(files[i].Name, Written(files[i].Write)));
        return [.. written];
    }

    private static IEnumerable<OutputFile> LightFiles(HousingUnderCheck housing, HousingLooks looks, FileFormats formats)
    {
        if (housing.Light is { } light)
        {
            yield return new OutputFile(LightFile, looks.LightSheet!);
            if (formats.HasFlag(FileFormats.Csv))
            {
                yield return new OutputFile("light.csv", LightTable.Csv(light));
            }
        }
    }

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
