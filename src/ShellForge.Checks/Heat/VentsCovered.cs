using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Checks.Heat;

/// <summary>Vents that nothing flows through.</summary>
public sealed class VentsCovered() : Rule(
    "vents-covered",
    "Vents in the floor need free air behind the floor.",
    "Slots against a wall or a table carry no air: the housing gets as warm as a closed one.",
    "the floor's side of use: it lies on the table or hangs flat on the wall",
    "chimney formula: no height, no flow")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Heat.VentsCovered)
        {
            yield return Found(
                Severity.Note, "vents", "the floor's vents lie against the wall or the table and are not counted on", 0,
                housing.Plan.Vents.Length, Middle(housing),
                "hold the housing off by 5 mm or more, 'mount: stand', or 'vents: none'", "");
        }
    }

    private static Point3 Middle(HousingUnderCheck housing)
    {
        Point2 at = housing.Plan.Vents[0].Outline.Bounds.Centre;
        return new Point3(at.X, at.Y, 0);
    }
}
