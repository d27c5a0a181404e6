using System.Collections.Immutable;
using ShellForge.Checks.Gauges;
using ShellForge.Formats.Glb;
using ShellForge.Formats.Stl;
using ShellForge.Formats.ThreeMf;
using ShellForge.Output.Assembly;
using ShellForge.Output.Drawings;
using ShellForge.Output.Light;
using ShellForge.Output.Looks;
using ShellForge.Output.Plates;
using ShellForge.Output.Report;
using ShellForge.Planning.Plan;

namespace ShellForge.Output.Files;

/// <summary>What shows a housing, whatever the rules say of it; so it can be made while they run.</summary>
/// <param name="Housing">What was made.</param>
/// <param name="Looks">Its bodies for looking at.</param>
/// <param name="Meshes">Files of the parts, and of the light as asked for.</param>
/// <param name="Drawings">Drawings with dimensions.</param>
/// <param name="Steps">Steps of assembly with their pictures.</param>
/// <param name="Apart">Picture of the housing pulled apart; empty where it was not asked for.</param>
public sealed record DrawnFiles(
    HousingUnderCheck Housing,
    HousingLooks Looks,
    ImmutableArray<OutputFile> Meshes,
    ImmutableArray<DrawingFile> Drawings,
    ImmutableArray<PicturedStep> Steps,
    byte[] Apart)
{
    /// <summary>Everything that <c>make</c> writes, but what tells findings.</summary>
    /// <param name="housing">What was made.</param>
    /// <param name="formats">Files wanted beside drawings and pictures.</param>
    public static DrawnFiles Of(HousingUnderCheck housing, FileFormats formats)
    {
        HousingLooks looks = HousingLooks.Of(housing);
        DrawnFiles page = null!;
        ImmutableArray<OutputFile> meshes = [];
        byte[] apart = [];

        // Side by side, each into its own place: the order is the same whoever is through first.
        Parallel.Invoke(
            () => meshes = MeshFiles(housing, looks, formats),
            () => page = OfPage(housing, looks),
            () => apart = HousingPictures.Apart(looks));
        return page with { Meshes = [.. meshes, .. LightFiles(housing, looks, formats)], Apart = apart };
    }

    /// <summary>What the page shows, and no files.</summary>
    public static DrawnFiles OfPage(HousingUnderCheck housing) => OfPage(housing, HousingLooks.Of(housing));

    private static DrawnFiles OfPage(HousingUnderCheck housing, HousingLooks looks)
    {
        ImmutableArray<DrawingFile> drawings = [];
        ImmutableArray<PicturedStep> steps = [];
        Parallel.Invoke(
            () => drawings = HousingDrawings.Of(housing, looks.Board),
            () => steps = StepPictures.Of(housing.Plan, looks));
        return new DrawnFiles(housing, looks, [], drawings, steps, []);
    }

    private static ImmutableArray<OutputFile> MeshFiles(HousingUnderCheck housing, HousingLooks looks, FileFormats formats)
    {
        string name = housing.Board.Name;
        MadePart[] parts = [.. housing.SoundParts.Where(part => !part.PrintMesh.IsEmpty)];
        var files = new List<(string Name, Action<Stream> Write)>();
        if (formats.HasFlag(FileFormats.Stl))
        {
            files.AddRange(parts.Select(part => (
                HousingReport.FileOf(housing, part.Name),
                (Action<Stream>)(stream => StlWriter.Write(stream, part.PrintMesh.Mesh, $"ShellForge {housing.Board.NameOf(part.Name)} mm")))));
        }

        if (formats.HasFlag(FileFormats.ThreeMf))
        {
            byte[] thumbnail = HousingPictures.Thumbnail(looks);
            files.AddRange(HousingPlates.Of(housing).Select(plate => (
                plate.File,
                (Action<Stream>)(stream => ThreeMfWriter.Write(stream, name, plate.Plate, thumbnail)))));
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
            yield return new OutputFile(LightPictures.FileName, looks.LightSheet!);
            if (formats.HasFlag(FileFormats.Csv))
            {
                yield return new OutputFile("light.csv", LightTable.Csv(light));
            }
        }
    }

    private static byte[] Written(Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return stream.ToArray();
    }
}
