using ShellForge.Board.Profiles;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Print;

/// <summary>A part that the bed does not hold.</summary>
public sealed class OffTheBed() : Rule(
    "off-the-bed",
    "Every part must fit the bed less its margin, turned as well as it can be, and the build height.",
    "Found after an hour of slicing otherwise.",
    "smallest rectangle round the part over all turns by whole degrees, against bed - 2 x margin; height against the build height",
    "the printer's profile")
{
    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        PrinterProfile printer = housing.Board.Print.Printer;
        double bedX = printer.BedX - (2 * printer.BedMargin);
        double bedY = printer.BedY - (2 * printer.BedMargin);
        foreach (MadePart part in housing.SoundParts.Where(part => !part.PrintMesh.IsEmpty))
        {
            Box3 bounds = part.PrintMesh.Bounds();
            (double over, int degrees) = BestTurn(part, bedX, bedY);
            if (over > 0)
            {
                yield return Found(
                    Severity.Stop, part.Name,
                    $"it is {over:0.0} mm too large for the bed of {bedX:0} x {bedY:0} mm, even turned by {degrees}\u00b0",
                    over, 0, new Point3(bounds.Max.X, bounds.Max.Y, 0), "name a printer with a larger bed, or plan a smaller board");
            }

            if (bounds.Size.Z > printer.BedZ)
            {
                yield return Found(
                    Severity.Stop, part.Name, $"it is {bounds.Size.Z:0.0} mm tall, the printer builds {printer.BedZ.Value:0} mm",
                    bounds.Size.Z, printer.BedZ,
                    new Point3(0, 0, bounds.Max.Z), "name a taller printer at 'print.printer', or a smaller 'diffuser: {distance: ...}'");
            }
        }
    }

    // The hull decides: turning it is cheap, and a part fits when its hull does.
    private static (double Over, int Degrees) BestTurn(MadePart part, double bedX, double bedY)
    {
        Region hull = Region.HullOf(part.PrintMesh.Mesh.Vertices.Select(v => v.ToMillimetres().XY));
        (double Over, int Degrees) best = (double.PositiveInfinity, 0);
        foreach (int degrees in Enumerable.Range(0, 180))
        {
            Angle turn = Angle.FromDegrees(degrees);
            Point2 size = Box2.Of(hull.Loops[0].Select(p => p.Turned(turn))).Size;
            double over = Math.Max(size.X - bedX, size.Y - bedY);
            if (over < best.Over)
            {
                best = (over, degrees);
            }
        }

        return best;
    }
}
