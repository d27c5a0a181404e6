using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Checks.Fit;

/// <summary>A connector whose contacts carry more than they are made for.</summary>
public sealed class ContactOverloaded() : Rule(
    "contact-overloaded",
    "The connector that brings power must carry the planned current.",
    "Overloaded contacts get hot enough to soften plastic, slowly and out of sight.",
    "sum of the LEDs' current at the planned brightness (at full white without a cap), their idle current and the parts' heat over the voltage, no more than the supply gives; against the contact's rating",
    "contact rating of the package profile: check your datasheet")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        PowerSpec power = housing.Board.Power;
        if (housing.Board.Housing.Cable is not ConnectorCable cable
            || housing.Board.Board.Parts.FirstOrDefault(part => part.Ref == cable.PartRef) is not { Mouth: { } mouth } part)
        {
            yield break;
        }

        double share = power.Capped ? power.Brightness : 1;
        double amps = housing.Board.Board.PixelCircles.Sum(circle =>
            circle.Pixels.Length * ((share * circle.Led.WiringMilliamps) + circle.Led.IdleMilliamps) / 1000)
            + (housing.Board.Board.Parts.Sum(each => each.Watts) / power.Volts);
        double carried = Math.Min(amps, power.Amps);
        if (carried > mouth.Profile.ContactAmps)
        {
            yield return Found(
                Severity.Stop, part.Ref, $"its contacts carry {carried:0.0} A, they are made for {mouth.Profile.ContactAmps.Value:0.0}", carried, mouth.Profile.ContactAmps,
                new Point3(mouth.Face.X, mouth.Face.Y, housing.Plan.Stack.BoardBottom),
                "cap the brightness ('power: {brightness: ..., capped: true}'), feed the board at two connectors, or take one with a higher rating", "A");
        }
    }
}
