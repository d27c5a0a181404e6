using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Gauges;

/// <summary>Where a printed part is the thinnest, between two faces that lie nearly opposite.</summary>
public static class ThinnestPlace
{
    private const double Spacing = 2;
    private const double OpposingDegrees = 20;

    /// <summary>How far to either side a thin place must go on, mm: tips of crescents, which every nozzle leaves out, do not.</summary>
    private const double GoesOn = 0.7;

    /// <summary>A neighbour is as thin when it is no thicker than this times as much, and <see cref="Slack"/>.</summary>
    private const double AsThin = 1.5;

    /// <summary>A direction is along z from this share of its length on.</summary>
    private const double Upright = 0.5;

    /// <summary>Lattice and scaling for shrinkage change a thickness by less, mm (modelling).</summary>
    private const double Slack = 0.02;

    /// <summary>The thinnest place of a sound part as printed, in any direction that goes on to either side; null for none.</summary>
    public static ThicknessReading? Of(HousingUnderCheck housing, MadePart part) =>
        housing.Memory.OfMesh(part.PrintMesh, new ThinnestKey(), () => Of(housing.PrintTreeOf(part)));

    /// <summary>
    /// The thinnest place of a mesh in any direction that goes on to either side; null for a mesh without opposite faces.
    /// </summary>
    /// <param name="solid">A surface that bounds a solid.</param>
    public static ThicknessReading? Of(SurfaceTree solid) => Thinnest(solid, double.PositiveInfinity, from: null);

    /// <summary>The thinnest place of a mesh along z that goes on to either side and is thinner than asked; null for none.</summary>
    /// <param name="solid">A surface that bounds a solid.</param>
    /// <param name="least">Thickness that is enough, mm.</param>
    public static ThicknessReading? OfSkin(SurfaceTree solid, double least) => Thinnest(solid, least - Slack, IsSkin);

    private static ThicknessReading? Thinnest(SurfaceTree solid, double reach, Func<Point3, bool>? from) =>
        Thickness.Thinnest(solid, Spacing, reach, Angle.FromDegrees(OpposingDegrees), from, reading => HasSize(solid, reading));

    private sealed record ThinnestKey;

    // Rays go straight into a face, so those along z start from level faces.
    private static bool IsSkin(Point3 normal) => Math.Abs(normal.Z) >= Upright * normal.Length;

    // Along one of two tangents the part is about as thin on both sides.
    private static bool HasSize(SurfaceTree tree, ThicknessReading reading)
    {
        Point3 through = (1 / reading.Thickness) * (reading.Opposite - reading.At);
        Point3 across = Point3.Cross(through, Math.Abs(through.Z) > Upright ? new Point3(1, 0, 0) : new Point3(0, 0, 1));
        across = (1 / across.Length) * across;
        Point3 other = Point3.Cross(through, across);
        return (IsAsThin(tree, reading, through, GoesOn * across) && IsAsThin(tree, reading, through, -GoesOn * across))
            || (IsAsThin(tree, reading, through, GoesOn * other) && IsAsThin(tree, reading, through, -GoesOn * other));
    }

    // From the middle of the wall, a little to the side: to the surface on both sides.
    private static bool IsAsThin(SurfaceTree tree, ThicknessReading reading, Point3 through, Point3 aside)
    {
        Point3 middle = (0.5 * (reading.At + reading.Opposite)) + aside;
        double most = (AsThin * reading.Thickness) + Slack;
        return PointMembership.Of(tree, middle) == Membership.Inside
            && RayCast.First(tree, middle, through, RayFaces.Leaving, most) is { } ahead
            && RayCast.First(tree, middle, -1 * through, RayFaces.Leaving, most) is { } behind
            && ahead.Distance + behind.Distance <= most;
    }
}
