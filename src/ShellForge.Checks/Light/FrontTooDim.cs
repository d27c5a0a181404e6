using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Light;

/// <summary>A diffuser that swallows the light.</summary>
public sealed class FrontTooDim() : Rule(
    "front-too-dim",
    "The diffuser must let enough light through.",
    "White filament looks thin in the hand and is nearly opaque as a thick sheet; a dim front is found when the lamp is switched on.",
    "T = 1 / (1 + t / t0) of the diffuser's thickness, exp(-t / t0) of a dark pigment; a note for a cut sheet, for which a filament "
        + "stands in",
    "typical: 20 to 32 % is what makers settle on, below 12 % the lamp looks weak by daylight; t0 spreads by two between spools: print a "
        + "coupon")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Light is { } light && light.Map.Diffuser.Transmission < DiffuserWords.Weak)
        {
            DiffuserPlan diffuser = housing.Plan.Diffuser;
            bool sheet = diffuser.Fit == DiffuserFit.CutSheet;
            string stuff = string.Create(CultureInfo.InvariantCulture, $"{diffuser.Thickness:0.##} mm");
            string share = string.Create(CultureInfo.InvariantCulture,
                $"let about {100 * light.Map.Diffuser.Transmission:0} % of the light through");
            yield return Found(
                sheet ? Severity.Note : Severity.Warn, PartNames.Diffuser,
                sheet ? $"a sheet of {stuff} that scatters as {diffuser.Filament.Name} does would {share}"
                    : $"{stuff} of {diffuser.Filament.Name} {share}",
                light.Map.Diffuser.Transmission, DiffuserWords.Weak, Places.OfDiffuser(housing),
                sheet ? "see what the sheet's data say, and name the filament nearest to it as 'print: {diffuser: ...}'"
                    : DiffuserWords.Brighter(housing), "");
        }
    }
}
