using System.Globalization;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Print;

/// <summary>Something finer than a line of plastic.</summary>
public sealed class FeatureVanishes() : Rule(
    "feature-vanishes",
    "Nothing in a layer may be narrower than a line of plastic.",
    "The slicer leaves it out without a word: a wall, a rib or a letter is missing on the print.",
    "opening of each layer's section by one line width; what is lost, longer than 3 widths or an island of its own, is reported once per "
        + "run of layers",
    "the printer profile's line width; slicers drop or stretch what is narrower")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        double line = housing.Board.Print.Printer.ThinnestWall;
        string what = housing.Board.Print.Printer.ThinnestWall.IsMeasured
            ? "any wall that came out whole on your coupon" : "a printed line";
        foreach (MadePart part in housing.SoundParts)
        {
            ReportedPlaces told = new ReportedPlaces(line * 4);
            PartLayers stack = housing.LayersOf(part);
            IEnumerable<(FineFeature, Point3)> found = stack.Changes.SelectMany(layer =>
                stack.FinerThan(line - PrintTolerances.Width, layer).Where(fine => told.IsNew(fine.At))
                    .Select(fine => (fine, part.ToAssembled(new Point3(fine.At.X, fine.At.Y, layer.FromZ)))));
            foreach (AlikeFeatures alike in AlikeFeatures.Of(found))
            {
                yield return Found(
                    Severity.Warn, part.Name,
                    alike.Count == 1
                        ? string.Create(
                            CultureInfo.InvariantCulture,
                            $"a feature {alike.Widths} wide and {alike.Narrowest.Length:0.0} mm long is narrower than {what}: "
                                + $"it will be missing")
                        : $"{alike.Count} features {alike.Widths} wide are narrower than {what} and will be missing, at {alike.Places}",
                    alike.Narrowest.Width, line, alike.At,
                    "a finer nozzle draws it; lettering, a window or an opening of yours can be made larger");
            }
        }
    }
}
