using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Print;

/// <summary>A gap that the print closes.</summary>
public sealed class GapCloses() : Rule(
    "gap-closes",
    "Gaps within a part must be wider than what neighbouring lines bridge.",
    "Lines bulge by a tenth either side: a narrower slot is welded shut, and a clip that should move does not.",
    "closing of each layer's section by half a line width; what is filled, longer than 2 mm",
    "half a line width: typical, check with a coupon")
{
    private const double LeastLength = 2;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        double limit = housing.Board.Print.Printer.LineWidth / 2;
        foreach (MadePart part in housing.SoundParts)
        {
            ReportedPlaces told = new ReportedPlaces(LeastLength);
            PartLayers stack = housing.LayersOf(part);
            foreach (PrintedLayer layer in stack.Changes)
            {
                foreach (FineFeature gap in stack.GapsFinerThan(limit, layer)
                    .Where(gap => gap.Length >= LeastLength && told.IsNew(gap.At)))
                {
                    yield return Found(
                        Severity.Warn, part.Name, $"a gap {gap.Width:0.00} mm wide and {gap.Length:0.0} mm long closes while printing",
                        gap.Width, limit,
                        part.ToAssembled(new Point3(gap.At.X, gap.At.Y, layer.FromZ)), "widen the gap, or join the two sides on purpose");
                }
            }
        }
    }
}
