using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Floors;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Mounts;

/// <summary>
/// Keyholes for wall screws of 3.5 to 4.0 with heads up to 8: two on a horizontal line where they fit, else one on the vertical line.
/// Source: hardware practice (entry = head + 1, slot = shank + 0.5, travel of a head, undercut = head height + 0.8).
/// </summary>
internal sealed class KeyholeForm : MountForm
{
    private const double Entry = 9.0;
    private const double Slot = 4.6;
    private const double Travel = 8.0;
    private const double Lip = 2.0;
    private const double Undercut = 3.5;
    private const double Cap = 1.2;
    private const double RoofChamfer = 2.0;
    private const int WallLines = 3;

    // Two keyholes nearer than this share of the width only wobble.
    private const double SpreadShare = 0.35;

    // From the lip's inner face to a screw's head, mm: it slides without a rattle.
    private const double HeadAir = 0.5;

    /// <inheritdoc />
    public override MountKind Kind => MountKind.Keyhole;

    /// <inheritdoc />
    public override string Why => "the keyhole's undercut and cap";

    /// <inheritdoc />
    public override double FloorLeast(PrintBasis basis) => basis.Up(Lip);

    /// <inheritdoc />
    public override double Top(Given given) => given.Basis.Up(FloorLeast(given.Basis) + Undercut + Cap);

    /// <inheritdoc />
    public override MountPlan? Decide(HousingDraft draft, Reasons reasons)
    {
        BoardFile file = draft.File;
        PrintBasis basis = draft.Basis;
        double wall = basis.Wall(WallLines);
        double top = Top(draft.Given);
        Point2 up = Travel * Point2.Polar(1, file.Up);
        Region Shape(Point2 entry) => Region.Slot(entry, entry + up, Entry + (2 * wall));

        Region room = FloorRoom.Inside(draft, top).Intersect(FloorRoom.Outside(draft, draft.Shell.Wall));
        double spread = SpreadShare * 2 * file.Board.Outline.OuterRadius;
        ImmutableArray<Point2> entries = Pair(room, file.Up, spread, Shape) is (Point2 left, Point2 right)
            ? [left, right]
            : [.. FloorPlaces.About(room, file.Up, (Entry / 2) + wall, Shape).Take(1)];
        if (entries.IsEmpty)
        {
            reasons.Refuse(
                "mount-without-place", "keyhole", "Parts and posts leave no place for a keyhole.",
                0, Entry + (2 * wall), "mm", default, "mount: magnets, or a taller space below the board");
            return null;
        }

        reasons.Choice("mount.keyholes", entries.Length == 2 ? "2" : "1", Reasons.Rule,
            entries.Length == 2 ? "two on a horizontal line, slots upwards: it can't swing"
                : "one: parts leave no room for a second beside it");
        if (entries.Length == 2)
        {
            reasons.Length("mount.screw-spacing", Math.Round(Point2.Distance(entries[0], entries[1]), 2), Reasons.Rule,
                "between the wall screws, 3.5 to 4.0 with heads up to 8; drill-template.svg shows them at their size");
        }

        return new KeyholeMountPlan
        {
            Keyholes = [.. entries.Select(entry => new KeyholePlan(entry, entry + up))],
            EntryDiameter = Entry,
            SlotWidth = Slot,
            UndercutWidth = Entry,
            LipTop = FloorLeast(basis),
            UndercutTop = basis.Up(FloorLeast(basis) + Undercut),
            RoofChamfer = RoofChamfer,
            BlockTop = top,
            BlockWall = wall,
            HeadOffWall = FloorLeast(basis) + HeadAir,
        };
    }

    // Mirror images about the vertical line, as far apart as fits, as high as fits.
    private static (Point2, Point2)? Pair(Region room, Angle up, double spread, Func<Point2, Region> shape)
    {
        if (room.IsEmpty)
        {
            return null;
        }

        Region middles = room.Offset(-Entry / 2);
        if (middles.IsEmpty)
        {
            return null;
        }

        Angle right = up - Angle.FromDegrees(90);
        double reach = Math.Max(room.Bounds.Max.X, room.Bounds.Max.Y);
        for (double side = reach; side >= spread / 2; side -= 2)
        {
            for (double height = reach; height >= -reach / 2; height -= 2)
            {
                Point2 middle = height * Point2.Polar(1, up);
                Point2 a = middle + (side * Point2.Polar(1, right));
                Point2 b = middle - (side * Point2.Polar(1, right));
                if (middles.Contains(a) && middles.Contains(b)
                    && FloorPlaces.Fits(room, a, shape) && FloorPlaces.Fits(room, b, shape))
                {
                    return (a, b);
                }
            }
        }

        return null;
    }
}
