using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;

namespace ShellForge.Checks.Power;

/// <summary>More current than a connector's contacts carry.</summary>
public sealed class ContactsOverloaded() : Rule(
    "contacts-overloaded",
    "The connector that takes the cable must carry the board's current.",
    "Contacts that carry too much get hot inside the plastic that holds them.",
    "largest current that the firmware allows, strongest dies, against the contacts' rating",
    "rating of the connector's package profile")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        BoardPower power = housing.Power;
        if (power.Connector is { } connector && power.LargestAmps > power.Input.ContactAmps)
        {
            yield return Found(
                Severity.Stop, connector,
                string.Create(CultureInfo.InvariantCulture,
                    $"it would carry up to {power.LargestAmps:0.00} A (worst LEDs): its contacts are good for "
                        + $"{power.Input.ContactAmps:0.##} A."),
                power.LargestAmps, power.Input.ContactAmps, Places.OfFeed(housing),
                PowerWords.Within(housing, power.Input.ContactAmps, "take a connector that carries more"), "A");
        }
    }
}
