using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Print;

/// <summary>A skin of a part that is thinner than two layers.</summary>
public sealed class SkinTooThin() : Rule(
    "skin-too-thin",
    "Along z a part must be at least two layers thick; what is thin across is told by the layers' own rules.",
    "A skin of one layer tears when the part comes off the bed, and a slicer may round it away.",
    "rays straight inward from a net of places 2 mm apart on every face of the printed mesh, to the face opposite within 20 degrees of "
        + "parallel; the thinnest place that goes on for 0.7 mm either way, against two layers; the thinnest of the part is in the report",
    "the printer profile's layer height")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        double least = 2 * PrintBasis.Of(housing.Board.Print).Layer;
        foreach (MadePart part in housing.SoundParts)
        {
            if (ThinnestPlace.OfSkin(housing.PrintTreeOf(part), least) is { } skin)
            {
                yield return Found(
                    Severity.Warn, part.Name, $"its thinnest skin is {skin.Thickness:0.00} mm, less than two layers", skin.Thickness, least,
                    part.ToAssembled(skin.At), part.Name == PartNames.Diffuser
                        ? string.Create(CultureInfo.InvariantCulture, $"'diffuser: {{thickness: {least:0.##}}}' or more")
                        : "a thicker 'floor', a shallower opening or lettering there, or thinner layers");
            }
        }
    }
}
