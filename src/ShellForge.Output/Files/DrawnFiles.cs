using System.Collections.Immutable;
using ShellForge.Checks.Gauges;
using ShellForge.Output.Assembly;
using ShellForge.Output.Drawings;
using ShellForge.Output.Light;
using ShellForge.Output.Looks;

namespace ShellForge.Output.Files;

/// <summary>What shows a housing, whatever the rules say of it; so it can be made while they run.</summary>
/// <param name="Housing">What was made.</param>
/// <param name="Looks">Its bodies for looking at.</param>
/// <param name="Asked">Files of the formats that were asked for, and the picture of the light.</param>
/// <param name="Drawings">Drawings with dimensions.</param>
/// <param name="Steps">Steps of assembly with their pictures.</param>
/// <param name="Apart">Picture of the housing pulled apart; empty where it was not asked for.</param>
public sealed record DrawnFiles(
    HousingUnderCheck Housing,
    HousingLooks Looks,
    ImmutableArray<OutputFile> Asked,
    ImmutableArray<DrawingFile> Drawings,
    ImmutableArray<PicturedStep> Steps,
    byte[] Apart)
{
    /// <summary>Everything that <c>make</c> writes, but what tells findings.</summary>
    /// <param name="housing">What was made.</param>
    /// <param name="formats">Files wanted beside drawings and pictures.</param>
    public static DrawnFiles Of(HousingUnderCheck housing, ImmutableArray<OutputFormat> formats)
    {
        HousingLooks looks = HousingLooks.Of(housing);
        DrawnFiles page = null!;
        ImmutableArray<OutputFile> asked = [];
        byte[] apart = [];

        // Side by side, each into its own place: the order is the same whoever is through first.
        Parallel.Invoke(
            () => asked = AskedFiles(housing, looks, formats),
            () => page = OfPage(housing, looks),
            () => apart = HousingPictures.Apart(looks));
        return page with { Asked = asked, Apart = apart };
    }

    /// <summary>The files of formats, and nothing else that shows the housing.</summary>
    /// <param name="housing">What was made.</param>
    /// <param name="formats">Files wanted.</param>
    public static DrawnFiles OfFormats(HousingUnderCheck housing, ImmutableArray<OutputFormat> formats)
    {
        HousingLooks looks = HousingLooks.Of(housing);
        return new DrawnFiles(housing, looks, AskedFiles(housing, looks, formats), [], [], []);
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

    // Side by side: meshes take long to write. The picture of the light is there whatever is asked for.
    private static ImmutableArray<OutputFile> AskedFiles(HousingUnderCheck housing, HousingLooks looks,
        ImmutableArray<OutputFormat> formats)
    {
        (string Name, Action<Stream> Write)[] files =
            [.. OutputFormat.All.Where(formats.Contains).SelectMany(format => format.Files(housing, looks))];
        var written = new OutputFile[files.Length];
        Parallel.For(0, written.Length, i => written[i] = OutputFile.Written(files[i].Name, files[i].Write));
        return looks.LightSheet is { } light ? [.. written, new OutputFile(LightPictures.FileName, light)] : [.. written];
    }
}
