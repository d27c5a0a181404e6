using System.Collections.Immutable;
using ShellForge.Formats.Gcode;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Sliced;

/// <summary>A file of the maker's slicer beside what it prints.</summary>
/// <param name="File">The file.</param>
/// <param name="Parts">
/// The parts that it prints, from the floor up: those that its name or the names of its objects say, else those of its size; none where
/// nothing tells.
/// </param>
public sealed record SlicedJob(SlicedFile File, ImmutableArray<MadePart> Parts)
{
    private const double CubicMillimetresInCubicCentimetre = 1000;

    /// <summary>What the file holds.</summary>
    public GcodeFile Code => File.Code;

    /// <summary>The parts in words: "tub", "cover and diffuser".</summary>
    public string PartsInWords => Parts.Length switch
    {
        0 => "no part",
        1 => Parts[0].Name,
        _ => $"{string.Join(", ", Parts.Take(Parts.Length - 1).Select(part => part.Name))} and {Parts[^1].Name}",
    };

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

    /// <summary>The parts by the objects that they are printed as: what is printed into another part lies in one object with it.</summary>
    public ImmutableArray<ImmutableArray<MadePart>> Objects =>
        [.. Parts.GroupBy(part => part.Plan.PrintedWith ?? part.Name, StringComparer.Ordinal)
            .Select(job => job.OrderBy(part => part.Plan.PrintedWith is not null).ToImmutableArray())];
}
