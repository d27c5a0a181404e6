using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Light;

/// <summary>Light through a wall that should be dark.</summary>
public sealed class WallGlows() : Rule(
    "wall-glows",
    "Walls outside of the window must look dark beside it.",
    "A housing of white or thin plastic glows all over and its window loses its edge.",
    "direct light on a wall's inner face times T = exp(-sum of t / t0 of dark pigments) / (1 + sum of t / t0 of what scatters) of "
        + "everything that stands between it and the outside, baffle, lip and the diffuser's rim too, over the mean of the lit window by "
        + "its direct light",
    "limit typical: a tenth of the window's light is seen in a dim room, as the trade says of less than 2.4 mm of white; t0 from the "
        + "filament's profile")
{
    private const double Seen = 0.10;
    private const double Bright = 0.25;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Light is { } light && light.Leaks.WallGlow > Seen)
        {
            bool bright = light.Leaks.WallGlow > Bright;

            // The baffle is no wall of the outside: what is seen of it is seen through a port or a slot.
            bool baffle = LightOfHousing.PartOf(housing, light.Leaks.WallMaterial) == PartNames.Baffle;
            // Beside a window that is darker still, a share of its light is no figure that anyone can picture.
            string much = light.Leaks.WallGlow > 1 ? "more light than through the window" : string.Create(
                CultureInfo.InvariantCulture, $"up to {100 * light.Leaks.WallGlow:0} % of the window's light");
            string share = string.Create(CultureInfo.InvariantCulture,
                $"{light.Leaks.WallThickness:0.##} mm of {(baffle ? "it" : "wall")} comes {much}");
            yield return Found(
                bright ? Severity.Warn : Severity.Note, baffle ? PartNames.Baffle : "wall",
                baffle ? $"it is seen to glow through an opening of the wall: through {share}" : $"through {share}",
                light.Leaks.WallGlow, bright ? Bright : Seen, light.Leaks.WallAt,
                baffle ? $"a black baffle ('print: {{baffle: {Black(housing)}}}'), or a plug that fills the opening"
                    : "a darker shell filament, more lines of wall, or paint or foil inside", "");
        }
    }

    /// <summary>The nearest dark filament for a baffle: the shell's where it is dark, else one of the baffle's plastic.</summary>
    internal static string Black(HousingUnderCheck housing)
    {
        PrintSpec print = housing.Board.Print;
        return print.Shell.Absorbs ? print.Shell.Name
            : print.Known.FirstOrDefault(
                filament => filament.Absorbs && filament.Family == housing.Plan.Baffle!.Filament.Family)?.Name ?? "...";
    }
}
