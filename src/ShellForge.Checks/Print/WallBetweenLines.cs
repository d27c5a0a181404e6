using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Print;

/// <summary>A wall between one and two lines.</summary>
public sealed class WallBetweenLines() : Rule(
    "wall-between-lines",
    "A wall is best one line or at least two; between, the slicer stretches a line or strews dots.",
    "Such walls are weak, and uneven when light falls through them.",
    "opening of each layer's section by the thickness of two lines, less what is already narrower than 1.2 lines; longer than 5 mm and "
        + "higher than 1 mm",
    "the printer profile's line width and layer height")
{
    private const double LeastLength = 5;
    private const double LeastHeight = 1;
    private const double OneLineStretched = 1.2;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        PrintBasis basis = PrintBasis.Of(housing.Board.Print);
        double two = basis.Wall(2);
        foreach (MadePart part in housing.SoundParts)
        {
            PartLayers stack = housing.LayersOf(part);
            PrintedLayer[] changes = [.. stack.Changes];
            FineFeature[][] found =
                [.. changes.Select(layer => stack.FinerThan(two - PrintTolerances.Width, layer)
                .Where(fine => fine.Length >= LeastLength && fine.Width > OneLineStretched * basis.LineWidth).ToArray())];
            ReportedPlaces told = new ReportedPlaces(LeastLength);
            IEnumerable<(FineFeature, Point3)> walls = changes.SelectMany((layer, i) => found[i]
                .Where(fine => HeightOf(fine, i, changes, found, stack) >= LeastHeight && told.IsNew(fine.At))
                .Select(fine => (fine, part.ToAssembled(new Point3(fine.At.X, fine.At.Y, layer.FromZ)))));
            foreach (AlikeFeatures alike in AlikeFeatures.Of(walls))
            {
                string too = string.Create(CultureInfo.InvariantCulture, $"too wide for one line and too narrow for two ({two:0.00} mm)");
                yield return Found(
                    Severity.Note, part.Name,
                    alike.Count == 1 ? $"a wall of {alike.Widths} is {too}"
                        : $"{alike.Count} walls of {alike.Widths} are {too}, at {alike.Places}",
                    alike.Narrowest.Width, two, alike.At,
                    "slice it with lines of varying width; an opening of yours ('openings:') that leaves the wall so thin can be moved");
            }
        }
    }

    // As high as the layers above have something as thin in that place.
    private static double HeightOf(FineFeature fine, int from, PrintedLayer[] changes, FineFeature[][] found, PartLayers stack)
    {
        for (int i = from + 1; i < changes.Length; i++)
        {
            if (!found[i].Any(other => Point2.Distance(other.At, fine.At) < LeastLength))
            {
                return changes[i].FromZ - changes[from].FromZ;
            }
        }

        return stack.Layers[^1].ToZ - changes[from].FromZ;
    }
}
