using System.Collections.Immutable;
using ShellForge.Board.Profiles;
using ShellForge.Formats.Gcode;
using ShellForge.Planning.Hands;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Sliced;

/// <summary>A file of the maker's slicer beside what it prints.</summary>
public sealed class SlicedJob
{
    private const double CubicMillimetresInCubicCentimetre = 1000;

    /// <summary>A file with its parts.</summary>
    /// <param name="file">The file.</param>
    /// <param name="parts">The parts that it prints, from the floor up.</param>
    /// <param name="printer">The planned printer.</param>
    internal SlicedJob(SlicedFile file, ImmutableArray<MadePart> parts, PrinterProfile printer)
    {
        (File, Parts) = (file, parts);
        Objects = [.. parts.GroupBy(part => part.Plan.PrintedWith ?? part.Name, StringComparer.Ordinal)
            .Select(job => job.OrderBy(part => part.Plan.PrintedWith is not null).ToImmutableArray())];
        Bodies = SlicedBody.Of(file.Code, Objects, printer);
    }

    /// <summary>The file.</summary>
    public SlicedFile File { get; }

    /// <summary>
    /// The parts that it prints, from the floor up: those that its name or the names of its objects say, else those of its size; none where
    /// nothing tells.
    /// </summary>
    public ImmutableArray<MadePart> Parts { get; }

    /// <summary>The parts by the objects that they are printed as: what is printed into another part lies in one object with it.</summary>
    public ImmutableArray<ImmutableArray<MadePart>> Objects { get; }

    /// <summary>The objects in the file that can be held against a part.</summary>
    internal ImmutableArray<SlicedBody> Bodies { get; }

    /// <summary>What the file holds.</summary>
    public GcodeFile Code => File.Code;

    /// <summary>The parts in words: "tub", "cover and diffuser".</summary>
    public string PartsInWords => HandWords.Listed(Parts.Select(part => part.Name));

    /// <summary>
    /// Plastic as the slicer says it, g; where it says lengths alone, those at the density of the planned filament. Null for a file of no
    /// part.
    /// </summary>
    public double? Grams
    {
        get
        {
            if (!Code.FilamentGrams.IsEmpty)
            {
                return Code.FilamentGrams.Sum();
            }

            if (Parts.IsEmpty)
            {
                return null;
            }

            double section = Math.PI * Code.FilamentDiameter * Code.FilamentDiameter / 4;
            return Code.FilamentMillimetres.Sum() * section * Parts[0].Plan.Filament.Density / CubicMillimetresInCubicCentimetre;
        }
    }

    /// <summary>Length of filament of all tools, m.</summary>
    public double Metres => Code.FilamentMillimetres.Sum() / 1000;

    /// <summary>Time as the slicer says it, minutes; null where it says none.</summary>
    public double? Minutes => Code.Seconds / 60;
}
