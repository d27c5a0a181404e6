using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Hands;

namespace ShellForge.Planning.Plan;

/// <summary>
/// A hole through the floor: a knot or a tie inside can't follow a pull through it. Where a plug has to pass, a window as large as the plug
/// lies beside the hole, and a slot leads the cable from one to the other:
/// <code>
///   towards the axis   ┌────────┐___
///                      │ window  ___  )  hole, knot or tie over it
///                      └────────┘
/// </code>
/// </summary>
public sealed record FloorExitPlan : CableExitPlan
{
    // A hole in what it is put on is so much wider than what passes it, mm: it is drilled by hand.
    private const double SurfaceOver = 4;
    private const double LeastSurfaceHole = 10;

    // A cable bends in so many of its diameters. Source: common norm for what is fixed.
    private const double BendOfCable = 4;

    /// <summary>Middle of the hole.</summary>
    public required Point2 Place { get; init; }

    /// <summary>Diameter of the hole, mm, as drawn.</summary>
    public required double HoleDiameter { get; init; }

    /// <summary>z of the floor's inner face.</summary>
    public required double FloorTop { get; init; }

    /// <summary>Leg of the 45 degree chamfers on both edges of the hole, mm.</summary>
    public required double EdgeChamfer { get; init; }

    /// <summary>Whether a tie takes the pull; a knot otherwise.</summary>
    public required bool Tied { get; init; }

    /// <summary>Diameter of the room for knot or tie, mm.</summary>
    public required double StopDiameter { get; init; }

    /// <summary>z of the top of knot or tie.</summary>
    public required double StopTop { get; init; }

    /// <summary>The window that the plug passes; null where nothing has to pass.</summary>
    public PlugWindow? Window { get; init; }

    /// <summary>Hole, slot and window in plan.</summary>
    public Region Opening
    {
        get
        {
            Region hole = Region.Disc(Place, Ring.Hole(HoleDiameter / 2));
            return Window is not { } window ? hole : hole.And(Region.Slot(Place, window.Middle, HoleDiameter)).And(window.Outline(At));
        }
    }

    /// <inheritdoc />
    public override PlacedTongue? Tongue => null;

    /// <inheritdoc />
    public override ExitAtRim? AtRim => null;

    /// <inheritdoc />
    public override ImmutableArray<(string What, Point2 At)> NearRim => [];

    /// <inheritdoc />
    public override Region TakenOutside => Opening.And(Region.Disc(Place, Ring.Hole((HoleDiameter / 2) + EdgeChamfer)));

    /// <inheritdoc />
    public override SurfaceHole ThroughSurface => new(
        Place, Math.Max(LeastSurfaceHole, Math.Ceiling(SurfaceOver
            + (Window is { } window ? Math.Sqrt((window.Across * window.Across) + (window.Along * window.Along)) : CableDiameter))),
        BendOfCable * CableDiameter);

    /// <inheritdoc />
    public override ImmutableArray<ShoppingItem> Shopping => Tied ? [new("cable tie, 2.5 wide", 1)] : [];

    /// <inheritdoc />
    public override Region TakenInside(ShellPlan shell, double beside) =>
        Opening.And(Region.Disc(Place, Ring.Hole(StopDiameter / 2))).Offset(beside);

    /// <inheritdoc />
    public override CableWay Outside(double beside, double bend) => new(
        Region.Disc(Place, Ring.Hole((CableDiameter / 2) + beside)), -bend * CableDiameter, null);

    /// <inheritdoc />
    public override Point2 LeadsFrom(double by) => Place;

    /// <inheritdoc />
    public override LeadBend Bend(Point3 joint)
    {
        // The leads lie level where they leave a knot; over a tie they rise, and bend once.
        if (!Tied)
        {
            return TwoArcs(new Point3(Place.X, Place.Y, (FloorTop + StopTop) / 2), joint);
        }

        double way = Point2.Distance(Place, new Point2(joint.X, joint.Y));
        double rise = Math.Abs(joint.Z - StopTop);
        return new LeadBend(
            way == 0 ? double.PositiveInfinity : Math.Min(way, rise),
            new Point3((Place.X + joint.X) / 2, (Place.Y + joint.Y) / 2, joint.Z));
    }

    /// <inheritdoc />
    public override ImmutableArray<PlanNote> Notes(ShellPlan shell) =>
    [
        new(Place, $"{Noted} hole \u00D8{HandWords.Figure(HoleDiameter)}"),
        .. Window is { } window ? new[] { NoteOf(window) } : [],
    ];

    /// <inheritdoc />
    public override IEnumerable<HandStep> HandSteps(HousingPlan plan)
    {
        string clock = HandWords.Clock(At, plan.Source.Up);
        string through = Window is null
            ? $"Pass the free end of the soldered {TheCable[4..]} from inside through the hole in the floor at {clock}."
            : $"Pass the plug of the soldered {TheCable[4..]} from inside through the window in the floor at {clock}, and slide the "
                + $"cable into the round end of the slot.";
        yield return new HandStep
        {
            Phase = HandPhase.Board,
            Title = $"Bring {TheCable} through the floor",
            Text = $"{through} Leave 15 mm of slack between floor and board. "
                + (Tied ? "There draw a 2.5 mm cable tie hard round the cable, close to the floor, and cut it off: its head can't pass "
                + "the hole."
                    : "There tie a tight knot in the cable: it can't pass the hole."),
            Check = $"A firm pull on the cable from outside moves nothing at the solder joints, and the {(Tied ? "tie" : "knot")} does "
                + $"not slip.",
            Tools = Tied ? ["cable tie 2.5 mm", "side cutter"] : [],
            Shown = [PartNames.Tub, PartNames.Board],
            Held = [PartNames.Board],
            At = At,
        };
    }

    /// <inheritdoc />
    public override string NameOf(int number) =>
        Name is null ? "the cable's hole in the floor" : $"the hole of the cable '{Name}' in the floor";

    /// <inheritdoc />
    public override T Accept<T>(ICableExitVisitor<T> visitor) => visitor.Floor(this);

    private PlanNote NoteOf(PlugWindow window)
    {
        string whose = Name is null ? "" : Name + " ";
        return new(window.Middle, $"{whose}plug window {HandWords.Figure(window.Across)} x {HandWords.Figure(window.Along)}");
    }
}

/// <summary>A window in the floor that a plug passes.</summary>
/// <param name="Middle">Its middle in plan.</param>
/// <param name="Across">Across the exit's direction, mm, as drawn.</param>
/// <param name="Along">Along it, mm, as drawn.</param>
/// <param name="CornerRadius">Corner radius, mm.</param>
public sealed record PlugWindow(Point2 Middle, double Across, double Along, double CornerRadius)
{
    /// <summary>Its outline.</summary>
    /// <param name="direction">The exit's direction.</param>
    public Region Outline(Angle direction) =>
        Region.RoundedRectangle(Point2.Origin, Along, Across, CornerRadius).Turned(direction).Moved(Middle);
}

/// <content>What is done for this form.</content>
public partial interface ICableExitVisitor<out T>
{
    /// <summary>For a hole through the floor.</summary>
    T Floor(FloorExitPlan exit);
}
