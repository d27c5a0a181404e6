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
/// Pockets for disc magnets of 8 x 3, glued in from inside, a thin skin of floor in front of them. They come in mirror images about the
/// line that points up, so that the pull is even.
/// </summary>
internal sealed class MagnetForm : MountForm
{
    // Glued fit in depth, mm. Source: trade knowledge for sintered magnets of +-0.1.
    private const double OverHeight = 0.2;
    private const double SkinWanted = 0.6;
    private const double Mark = 1.2;
    private const int CollarLines = 4;

    // From a line to a wall in the same plane there is no pull left: neighbours nearer than two diameters weaken each other.
    private static readonly double Apart = 2 * MagnetSize.Nominal.Diameter;
    private static readonly double Step = MagnetSize.Nominal.Diameter / 2;

    private static readonly Angle Quarter = Angle.FromDegrees(45);

    /// <inheritdoc />
    public override MountKind Kind => MountKind.Magnets;

    /// <inheritdoc />
    public override string Why => "the magnets' pockets";

    /// <inheritdoc />
    public override double FloorLeast(PrintBasis basis) => 0;

    /// <inheritdoc />
    public override double Top(Given given) =>
        given.Basis.Up(given.Basis.Up(SkinWanted) + given.File.Housing.Magnet.Height + OverHeight);

    /// <inheritdoc />
    public override MountPlan? Decide(HousingDraft draft, Reasons reasons)
    {
        PrintBasis basis = draft.Basis;
        MagnetSize magnet = draft.File.Housing.Magnet;
        double pocket = magnet.Diameter + draft.File.Print.Printer.MagnetAllowance;
        double collar = pocket + (2 * basis.Wall(CollarLines));
        Region Shape(Point2 at) => Region.Disc(at, Ring.Hole(collar / 2));
        ImmutableArray<Point2> at = Spread(draft.File.Up, FloorRoom.Inside(draft, Top(draft.Given)), Shape);
        if (at.IsEmpty)
        {
            reasons.Refuse(
                "mount-without-place", "magnets",
                "Parts and posts leave no place for two magnet pockets, one on either side of the middle.",
                0, 2, "pockets", default, "mount: feet or stand, or a taller space below the board ('clearance: {below-parts: ...}')");
            return null;
        }

        reasons.Choice("mount.magnets", at.Length.ToString(CultureInfo.InvariantCulture), Reasons.Rule,
            $"discs of {Reasons.Mm(magnet.Diameter)} x {Reasons.Mm(magnet.Height)} in mirror images about the vertical line, glued in "
                + "from inside; the pull counts the skins of both sides as air");
        return new MagnetMountPlan
        {
            At = at,
            MagnetDiameter = magnet.Diameter,
            MagnetHeight = magnet.Height,
            PocketDiameter = pocket,
            Skin = basis.Up(SkinWanted),
            Rim = Math.Max(Top(draft.Given), draft.Stack.FloorTop),
            CollarDiameter = collar,
            MarkDiameter = Mark,
        };
    }

    // A pair above and one below; where one finds no place, a single magnet on the vertical line balances the other pair.
    private static ImmutableArray<Point2> Spread(Angle up, Region room, Func<Point2, Region> shape)
    {
        (Point2 Left, Point2 Right)? above = FloorPlaces.Pair(room, up, (Quarter, Quarter), Apart, Step, shape);
        Region rest = above is { } upper ? Without(room, upper.Left, upper.Right) : room;
        (Point2 Left, Point2 Right)? below = FloorPlaces.Pair(
            rest, up, (Angle.FromDegrees(180) - Quarter, Quarter), Apart, Step, shape);
        rest = below is { } lower ? Without(rest, lower.Left, lower.Right) : rest;
        Point2? top = above is null ? FloorPlaces.Along(rest, up, Step, shape) : null;
        rest = top is { } first ? Without(rest, first, first) : rest;
        Point2? bottom = below is null ? FloorPlaces.Along(rest, up + Angle.FromDegrees(180), Step, shape) : null;
        ImmutableArray<Point2> all =
        [
            .. above is { } a ? new[] { a.Left, a.Right } : [],
            .. below is { } b ? new[] { b.Left, b.Right } : [],
            .. top is { } t ? new[] { t } : [],
            .. bottom is { } u ? new[] { u } : [],
        ];
        return all.Length < 2 ? [] : all;
    }

    private static Region Without(Region room, Point2 a, Point2 b) =>
        room.Less(Region.Disc(a, Ring.Hole(Apart)).And(Region.Disc(b, Ring.Hole(Apart))));
}
