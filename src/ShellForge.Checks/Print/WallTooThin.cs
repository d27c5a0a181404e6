using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Planning;

namespace ShellForge.Checks.Print;

/// <summary>A place of a part that is thinner than a line or than two layers.</summary>
public sealed class WallTooThin() : Rule(
    "wall-too-thin",
    "Everywhere on its surface a part must be at least a line of plastic across, and two layers along z.",
    "A wall of half a line is left out; a skin of one layer tears when the part comes off the bed.",
    "rays straight inward from a net of places 2 mm apart on every face of the printed mesh, to the face opposite within 20 degrees of parallel; the thinnest across against one line, the thinnest along z against two layers",
    "the printer profile's line width and layer height")
{
    private const double Spacing = 2;
    private const double OpposingDegrees = 20;

    /// <summary>A reading counts as along z from this share of its length on.</summary>
    private const double Upright = 0.8;

    /// <summary>Chords, lattice and scaling for shrinkage change a thickness by less, mm (modelling).</summary>
    private const double Slack = 0.02;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        PrintBasis basis = PrintBasis.Of(housing.Board.Print);
        double across = basis.LineWidth - Slack;
        double along = (2 * basis.Layer) - Slack;
        foreach (CheckedPart part in housing.SoundParts)
        {
            var tree = new SurfaceTree(part.PrintMesh.Mesh);
            if (Thinnest(tree, across, upright: false) is { } wall)
            {
                yield return Found(
                    Severity.Warn, part.Name, $"at its thinnest it is {wall.Thickness:0.00} mm across, less than a line of {basis.LineWidth:0.00}", wall.Thickness, basis.LineWidth,
                    part.ToAssembled(wall.At), "make it at least one line wide");
            }

            if (Thinnest(tree, along, upright: true) is { } skin)
            {
                yield return Found(
                    Severity.Warn, part.Name, $"a skin of it is {skin.Thickness:0.00} mm thick, less than two layers", skin.Thickness, 2 * basis.Layer,
                    part.ToAssembled(skin.At), "make it at least two layers thick");
            }
        }
    }

    /// <summary>The thinnest place of a mesh in either direction, however thick; null for a mesh without opposite faces.</summary>
    internal static ThicknessReading? Thinnest(Mesh mesh) =>
        Thickness.Thinnest(new SurfaceTree(mesh), Spacing, double.PositiveInfinity, Angle.FromDegrees(OpposingDegrees));

    private static ThicknessReading? Thinnest(SurfaceTree tree, double reach, bool upright) =>
        Thickness.Thinnest(tree, Spacing, reach, Angle.FromDegrees(OpposingDegrees), reading =>
            Math.Abs(reading.Opposite.Z - reading.At.Z) >= Upright * reading.Thickness == upright);
}
