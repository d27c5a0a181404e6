using System.Globalization;
using ShellForge.Board.Profiles;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Hands;
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
    // A turn that gains less is none: a round part is as wide whichever way it lies, mm.
    private const double TurnTold = 0.5;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        PrinterProfile printer = housing.Board.Print.Printer;
        double bedX = printer.BedX - (2 * printer.BedMargin);
        double bedY = printer.BedY - (2 * printer.BedMargin);
        MadePart[] parts = [.. housing.SoundParts.Where(part => !part.PrintMesh.IsEmpty)];
        Turned[] wide = [.. parts.Select(part => BestTurn(part, bedX, bedY)).Where(turned => turned.Over > 0)];
        MadePart[] tall = [.. parts.Where(part => part.PrintMesh.Bounds().Size.Z > printer.BedZ)];
        if (wide.Length > 0)
        {
            // One board too large makes every part too large: that is one thing to know.
            Turned worst = wide.MaxBy(turned => turned.Over)!;
            Box3 bounds = worst.Part.PrintMesh.Bounds();
            string turned = worst.Helps ? string.Create(CultureInfo.InvariantCulture, $", even turned by {worst.Degrees}\u00b0") : "";
            yield return Found(
                Severity.Stop, HandWords.Listed(wide.Select(each => each.Part.Name)),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{(wide.Length == 1 ? "it is" : "they are up to")} {worst.Over:0.0} mm too large for the bed of "
                        + $"{bedX:0} x {bedY:0} mm{turned}"),
                worst.Over, 0, new Point3(bounds.Max.X, bounds.Max.Y, 0),
                "a printer with a larger bed at 'print: {printer: ...}', or a smaller board");
        }

        if (tall.Length > 0)
        {
            Box3 bounds = tall.Select(part => part.PrintMesh.Bounds()).MaxBy(each => each.Size.Z);
            yield return Found(
                Severity.Stop, HandWords.Listed(tall.Select(part => part.Name)),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{(tall.Length == 1 ? "it is" : "they are up to")} {bounds.Size.Z:0.0} mm tall, the printer builds "
                        + $"{printer.BedZ.Value:0} mm"),
                bounds.Size.Z, printer.BedZ, new Point3(0, 0, bounds.Max.Z),
                "a taller printer at 'print: {printer: ...}', or a smaller 'diffuser: {distance: ...}'");
        }
    }

    // The hull decides: turning it is cheap, and a part fits when its hull does.
    private static Turned BestTurn(MadePart part, double bedX, double bedY)
    {
        Region hull = Region.HullOf(part.PrintMesh.Mesh.Vertices.Select(v => v.ToMillimetres().XY));
        double straight = Over(hull, 0, bedX, bedY);
        var best = new Turned(part, straight, 0, false);
        foreach (int degrees in Enumerable.Range(1, 179))
        {
            double over = Over(hull, degrees, bedX, bedY);
            if (over < best.Over)
            {
                best = new Turned(part, over, degrees, straight - over > TurnTold);
            }
        }

        return best;
    }

    private static double Over(Region hull, int degrees, double bedX, double bedY)
    {
        Angle turn = Angle.FromDegrees(degrees);
        Point2 size = Box2.Of(hull.Loops[0].Select(p => p.Turned(turn))).Size;
        return Math.Max(size.X - bedX, size.Y - bedY);
    }

    // How far a part stands over, turned as well as it can be, and whether the turn helps.
    private sealed record Turned(MadePart Part, double Over, int Degrees, bool Helps);
}
