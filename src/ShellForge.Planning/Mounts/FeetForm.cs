using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Floors;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Mounts;

/// <summary>
/// Places for adhesive rubber feet of 8 x 2.2: three on a small housing, since three never rock; four on a wide one, which would tip over
/// the edge between three. Source: the trade's smallest common foot; a recess of three layers keeps it from creeping.
/// </summary>
internal sealed class FeetForm : MountForm
{
    private const double Diameter = 8.0;
    private const double Height = 2.2;
    private const double OverDiameter = 0.6;
    private const double Depth = 0.6;
    private const double PlasticOver = 1.2;

    // From the outer edge, mm, and the width from which there are four.
    private const double FromEdge = 2.0;
    private const double Wide = 70;

    /// <inheritdoc />
    public override MountKind Kind => MountKind.Feet;

    /// <inheritdoc />
    public override string Why => "the feet's recesses";

    /// <inheritdoc />
    public override double FloorLeast(PrintBasis basis) => basis.Up(basis.Up(Depth) + PlasticOver);

    /// <inheritdoc />
    public override double Top(Given given) => 0;

    /// <inheritdoc />
    public override MountPlan? Decide(HousingDraft draft, Reasons reasons)
    {
        double radius = (Diameter + OverDiameter) / 2;
        Region Shape(Point2 at) => Region.Disc(at, Ring.Hole(radius));
        Region room = FloorRoom.Outside(draft, FromEdge);
        bool wide = draft.Shell.Footprint.Bounds.Size.X > Wide;
        ImmutableArray<Point2> at = wide
            ? [.. Pair(room, draft.File.Up, 45, radius, Shape), .. Pair(room, draft.File.Up, 135, radius, Shape)]
            : [.. Pair(room, draft.File.Up, 60, radius, Shape), .. Lowest(room, draft.File.Up, radius, Shape)];
        int wanted = wide ? 4 : 3;
        if (at.Length < wanted)
        {
            reasons.Refuse(
                "mount-without-place", "feet", $"The outer floor has no room for {wanted} rubber feet of {Reasons.Mm(Diameter)}.",
                at.Length, wanted, "feet", default, "mount: none, and stick smaller feet where they fit");
            return null;
        }

        reasons.Choice("mount.feet", wanted.ToString(CultureInfo.InvariantCulture), Reasons.Rule,
            wide ? "wider than 70: four, it would tip over the edge between three" : "three never rock");
        return new FeetMountPlan
        {
            At = at,
            FootDiameter = Diameter,
            FootHeight = Height,
            RecessDiameter = 2 * radius,
            Recess = draft.Basis.Up(Depth),
        };
    }

    private static IEnumerable<Point2> Pair(Region room, Angle up, double aside, double radius, Func<Point2, Region> shape) =>
        FloorPlaces.Pair(room, up, (Angle.FromDegrees(aside), Angle.FromDegrees(25)), Diameter, radius, shape) is var (left, right)
            ? [left, right] : [];

    private static IEnumerable<Point2> Lowest(Region room, Angle up, double radius, Func<Point2, Region> shape) =>
        FloorPlaces.Along(room, up + Angle.FromDegrees(180), radius, shape) is { } found ? [found] : [];
}
