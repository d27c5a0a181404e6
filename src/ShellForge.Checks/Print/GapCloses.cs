using System.Globalization;
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
            var gaps = new List<(FineFeature Gap, Point3 At)>();
            foreach (PrintedLayer layer in stack.Changes)
            {
                foreach (FineFeature gap in stack.GapsFinerThan(limit, layer)
                    .Where(gap => gap.Length >= LeastLength && told.IsNew(gap.At)))
                {
                    gaps.Add((gap, part.ToAssembled(new Point3(gap.At.X, gap.At.Y, layer.FromZ))));
                }
            }

            // The same gap stands beside every boss of a circle: it is told once, with its places.
            foreach (var alike in gaps.GroupBy(each => Size(each.Gap), StringComparer.Ordinal))
            {
                (FineFeature narrowest, Point3 at) = alike.MinBy(each => each.Gap.Width);
                int count = alike.Count();
                yield return Found(
                    Severity.Warn, part.Name,
                    count == 1 ? $"a gap {alike.Key} closes while printing"
                        : $"{count} gaps {alike.Key} close while printing, at {AlikeFeatures.PlacesOf([.. alike.Select(each => each.At)])}",
                    narrowest.Width, limit, at, Remedy(housing, part, limit - narrowest.Width));
            }
        }
    }

    // In the tub the wall is one of the two sides wherever a boss or a rest stands near it, and the wall can be moved.
    private static string Remedy(HousingUnderCheck housing, MadePart part, double lacking)
    {
        const string leave = "where nothing has to move there, leave it: the two sides print as one";
        double gap = Math.Ceiling(10 * (housing.Plan.Shell.BoardEdgeGap + lacking)) / 10;
        return part.Name != PartNames.Tub ? leave : string.Create(
            CultureInfo.InvariantCulture, $"{leave}; 'clearance: {{board-edge: {gap:0.0}}}' moves the wall away from a boss or a rest");
    }

    private static string Size(FineFeature gap) =>
        string.Create(CultureInfo.InvariantCulture, $"{gap.Width:0.00} mm wide and {gap.Length:0.0} mm long");
}
