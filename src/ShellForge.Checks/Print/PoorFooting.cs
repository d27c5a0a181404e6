using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Print;

/// <summary>A part that stands badly on the bed.</summary>
public sealed class PoorFooting() : Rule(
    "poor-footing",
    "A part must lie on enough bed, with its weight well inside its footing, and its lowest edges drawn in.",
    "It comes loose, or its first layers spread over the size that the lip was planned for.",
    "first layer's area against 60 mm2; centre of mass inside the first layer's hull; height over the hull's least width against 4; "
        + "growth of the first layer less its chamfer against a loose fit",
    "typical of heated beds: use a brim where it is reported")
{
    private const double LeastArea = 60;
    private const double MostSlender = 4;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        foreach (MadePart part in housing.SoundParts)
        {
            PartLayers stack = housing.LayersOf(part);
            if (stack.Layers.IsEmpty || stack.Layers[0].Outline.IsEmpty)
            {
                continue;
            }

            Region first = stack.Layers[0].Outline;
            Point2 inside = ThinFeatures.InnerPoint(first);
            Point3 at = part.ToAssembled(new Point3(inside.X, inside.Y, 0));
            if (first.Area < LeastArea)
            {
                yield return Found(Severity.Warn, part.Name, $"only {first.Area:0} mm\u00b2 of it touch the bed", first.Area, LeastArea, at,
                    "print it with a brim", "mm2");
            }

            Region hull = first.Hull();
            Point3 centre = Measure.Centroid(part.PrintMesh.Mesh);
            if (!hull.Contains(centre.XY))
            {
                yield return Found(Severity.Stop, part.Name, "its centre of mass lies outside its footing: it tips over",
                    hull.Distance(centre.XY), 0, at, "turn the part, or give it a foot");
            }

            double width = Math.Min(hull.Bounds.Size.X, hull.Bounds.Size.Y);
            double slender = stack.Layers[^1].ToZ / width;
            if (slender > MostSlender)
            {
                yield return Found(Severity.Warn, part.Name, "it is tall over a narrow footing and sways under the nozzle", slender,
                    MostSlender, at, "print it lying, or with a brim", "");
            }

            // Where the first layers may grow into a gap that moves or slides, the edge must be drawn in.
            double foot = housing.Board.Print.Printer.ElephantFoot;
            double room = housing.Board.Print.Printer.LooseFit;
            PrintedLayer above = stack.Layers.FirstOrDefault(layer => layer.FromZ >= foot + stack.Layers[0].Height) ?? stack.Layers[^1];
            double drawnIn = (above.Outline.Filled().Area - first.Filled().Area) / first.Filled().Perimeter;
            if (part.Plan.PrintedWith is null && foot - drawnIn > room && above.Outline.Filled().Area >= first.Filled().Area * 0.98)
            {
                yield return Found(Severity.Note, part.Name,
                    $"its lower edge grows by {foot - drawnIn:0.00} mm, more than the {room:0.00} mm of a loose fit", foot - drawnIn, room,
                    at, "chamfer the lower edge, or let the slicer draw the first layer in");
            }
        }
    }
}
