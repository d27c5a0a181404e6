using System.Globalization;

namespace ShellForge.Checks.Light;

/// <summary>A diffuser that swallows the light.</summary>
public sealed class FrontTooDim() : Rule(
    "front-too-dim",
    "The diffuser must let enough light through.",
    "White filament looks thin in the hand and is nearly opaque as a thick sheet; a dim front is found when the lamp is switched on.",
    "T = 1 / (1 + t / t0) of the diffuser's thickness",
    "typical: 20 to 32 % is what makers settle on, below 12 % the lamp looks weak by daylight; t0 spreads by two between spools: print a coupon")
{
    private const double Weak = 0.12;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Light is { } light && light.Map.Diffuser.Transmission < Weak)
        {
            double thickness = housing.Plan.Diffuser.Thickness;
            yield return Found(
                Severity.Warn, "diffuser",
                string.Create(CultureInfo.InvariantCulture, $"{thickness:0.##} mm of {housing.Plan.Diffuser.Filament.Name} let about {100 * light.Map.Diffuser.Transmission:0} % of the light through"),
                light.Map.Diffuser.Transmission, Weak, Places.OfDiffuser(housing), "a thinner diffuser, 0.8 of white, or natural filament", "");
        }
    }
}
