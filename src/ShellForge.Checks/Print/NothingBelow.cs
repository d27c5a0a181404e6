using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Checks.Print;

/// <summary>Overhangs, bridges and islands, layer by layer.</summary>
public sealed class NothingBelow() : Rule(
    "nothing-below",
    "Every layer must be carried by the one below, up to the overhang and the bridge that the printer manages.",
    "Plastic laid into the air curls, sags or becomes a tangle that takes the print off the bed.",
    "section less (section below grown by layer height x tan of the overhang limit); pieces held at both ends of scan lines are bridges (note, warn, stop by span), others overhangs by their reach, pieces held nowhere are islands",
    "overhang and bridge limits of the printer profile")
{
    /// <summary>Overhangs up to a line's width sag but hold, mm in line widths; from three on they fall.</summary>
    private const double LinesThatFall = 3;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        PrinterProfile printer = housing.Board.Print.Printer;
        Angle limit = Angle.FromDegrees(printer.OverhangDegrees);
        double slope = limit.Sin / limit.Cos;
        foreach (CheckedPart part in housing.SoundParts)
        {
            PartLayers stack = housing.LayersOf(part);
            var told = new PlacesTold(2);
            foreach (PrintedLayer layer in stack.Changes.Where(layer => layer.Index > 0))
            {
                double stepOut = layer.Height * slope;
                foreach (UnsupportedPiece piece in Unsupported.Of(layer.Outline, stack.Layers[layer.Index - 1].Outline, stepOut))
                {
                    Point3 at = part.ToAssembled(new Point3(piece.At.X, piece.At.Y, layer.FromZ));
                    if (Judged(piece, printer, layer, part.Name, at) is { } finding && told.IsNew(piece.At))
                    {
                        yield return finding;
                    }
                }
            }
        }
    }

    private Finding? Judged(UnsupportedPiece piece, PrinterProfile printer, PrintedLayer layer, string part, Point3 at)
    {
        double line = printer.LineWidth;
        switch (piece.Hold)
        {
            case Hold.None:
                return piece.Area < PrintTolerances.Area
                    ? null
                    : Found(Severity.Stop, part, $"an island of {piece.Reach:0.0} mm starts in the air at z = {layer.FromZ:0.0} mm of the print", piece.Reach, 0, at, "put a 45 degree cone or a rib under it, or turn the part");
            case Hold.Bridge:
                Severity? weight = piece.Reach > printer.BridgeStop ? Severity.Stop : piece.Reach > printer.BridgeWarn ? Severity.Warn : piece.Reach > printer.BridgeNote ? Severity.Note : null;
                double broken = weight switch { Severity.Stop => printer.BridgeStop, Severity.Warn => printer.BridgeWarn, _ => printer.BridgeNote };
                return weight is { } severity
                    ? Found(severity, part, $"a bridge of {piece.Reach:0.0} mm at z = {layer.FromZ:0.0} mm of the print", piece.Reach, broken, at, "give it a 45 degree roof, or a rib in its middle")
                    : null;
            default:
                double degrees = Angle.Of(new Point2(layer.Height, piece.Reach)).Degrees;
                return Found(
                    piece.Reach <= line ? Severity.Note : piece.Reach <= LinesThatFall * line ? Severity.Warn : Severity.Stop, part,
                    $"an overhang of {degrees:0} degrees reaches {piece.Reach:0.00} mm into the air at z = {layer.FromZ:0.0} mm of the print",
                    degrees, printer.OverhangDegrees, at, "chamfer it at 45 degrees, or turn the part", "degrees");
        }
    }
}
