using System.Collections.Immutable;
using ShellForge.Checks.Gauges;
using ShellForge.Output.Looks;

namespace ShellForge.Output.Files;

/// <summary>Files that <c>make</c> writes when they are asked for: a row of this table and a writer behind it.</summary>
/// <param name="Word">As <c>--formats</c> takes it.</param>
/// <param name="About">What is written, for people.</param>
/// <param name="Files">The files of a housing, each with what writes it.</param>
public sealed record OutputFormat(
    string Word, string About, Func<HousingUnderCheck, HousingLooks, IEnumerable<(string Name, Action<Stream> Write)>> Files)
{
    /// <summary>Ending of the file that each part gets; null where parts get none.</summary>
    public string? PerPart { get; init; }

    /// <summary>Names that its other files have in every housing; plates are named by the report.</summary>
    public ImmutableArray<string> OfHousing { get; init; } = [];

    /// <summary>One binary STL a part, in print orientation.</summary>
    public static OutputFormat Stl { get; } = new("stl", "a mesh a part", MeshFiles.Stl) { PerPart = ".stl" };

    /// <summary>One 3MF a plate, with named parts in their filaments.</summary>
    public static OutputFormat ThreeMf { get; } = new("3mf", "a file a plate, with filaments", MeshFiles.ThreeMf);

    /// <summary>The assembly with the board in it, in colours, for looking at.</summary>
    public static OutputFormat Glb { get; } = new("glb", "the assembly in colours", MeshFiles.Glb)
    {
        OfHousing = [MeshFiles.Assembly],
    };

    /// <summary>The light on the diffuser as a table of numbers.</summary>
    public static OutputFormat Csv { get; } = new("csv", "the light as numbers", LightFiles.Csv) { OfHousing = [LightFiles.Table] };

    /// <summary>Places and limits of the LEDs, for firmware.</summary>
    public static OutputFormat Leds { get; } = new("leds", "the LEDs for firmware", LedFiles.Of)
    {
        OfHousing = [LedFiles.Header, LedFiles.Document],
    };

    /// <summary>One STEP file a part, for CAD.</summary>
    public static OutputFormat Step { get; } = new("step", "a part a file, for CAD", StepFiles.Of) { PerPart = ".step" };

    /// <summary>Templates on paper: the board from both sides, what to drill, the label.</summary>
    public static OutputFormat Paper { get; } = new("paper", "templates at true size, SVG and PDF", PaperFiles.Of)
    {
        OfHousing = PaperFiles.Names,
    };

    /// <summary>All of them, in the order in which their files are written.</summary>
    public static ImmutableArray<OutputFormat> All { get; } = [Stl, ThreeMf, Glb, Csv, Leds, Step, Paper];

    /// <summary>What is written when nothing is asked for.</summary>
    public static ImmutableArray<OutputFormat> Usual { get; } = [Stl, ThreeMf];
}
