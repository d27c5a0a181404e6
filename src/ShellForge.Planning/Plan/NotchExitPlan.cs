using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Hands;
using ShellForge.Planning.Outlines;

namespace ShellForge.Planning.Plan;

/// <summary>A notch in the wall, open to the parting line and closed by a tongue on the cover: the cable is laid in from above.</summary>
public sealed record NotchExitPlan : CableExitPlan
{
    /// <summary>Number of the face of the post for the tie; the notch has 0.</summary>
    public const int PostNumber = 1;

    /// <summary>Distance along the exit's direction from the axis to the nearest inner wall face, mm.</summary>
    public required double WallInner { get; init; }

    /// <summary>Distance along the exit's direction from the axis to the farthest outer wall face, mm.</summary>
    public required double WallFace { get; init; }

    /// <summary>Width of the notch, mm, as drawn.</summary>
    public required double NotchWidth { get; init; }

    /// <summary>z of the round bottom of the notch.</summary>
    public required double NotchBottom { get; init; }

    /// <summary>The tongue that closes it.</summary>
    public required TonguePlan Roof { get; init; }

    /// <summary>Edge radius (as a 45 degree chamfer) of the notch, mm.</summary>
    public required double EdgeChamfer { get; init; }

    /// <summary>Tie saddle; null for a knot.</summary>
    public TiePostPlan? TiePost { get; init; }

    /// <summary>Room for the knot in plan radius, mm; 0 for a tie.</summary>
    public double KnotRoom { get; init; }

    /// <inheritdoc />
    public override PlacedTongue Tongue => new(
        Roof, Point2.Origin, At, At, Name is null ? "the cable's notch" : $"the notch of the cable '{Name}'");

    /// <inheritdoc />
    public override ExitAtRim AtRim => new(At, Roof.SlotWidth, OpensRim: true);

    /// <inheritdoc />
    public override ImmutableArray<(string What, Point2 At)> NearRim => [(Spoken, Point2.Polar(WallFace, At))];

    /// <inheritdoc />
    public override Region TakenOutside => Region.Empty;

    /// <inheritdoc />
    public override SurfaceHole? ThroughSurface => null;

    /// <inheritdoc />
    public override ImmutableArray<ShoppingItem> Shopping => TiePost is null ? [] : [new("cable tie, 2.5 wide", 1)];

    /// <inheritdoc />
    public override Region TakenInside(ShellPlan shell, double beside)
    {
        Region way = Strips.Radial(At, NotchWidth + (2 * beside), WayFrom(shell), shell.Footprint.Bounds.Max.X + shell.Wall);
        return TiePost is not { } post ? way : way.And(
            Strips.Along(post.At, post.Along, post.Width + (2 * beside), -(post.Length / 2) - beside, (post.Length / 2) + beside));
    }

    /// <inheritdoc />
    public override CableWay Outside(double beside, double bend) => new(
        Strips.Radial(At, NotchWidth + (2 * beside), Math.Max(0, WallFace - 1), WallFace + (bend * CableDiameter)), NotchBottom, At);

    /// <inheritdoc />
    public override Point2 LeadsFrom(double by) => Point2.Polar(WallInner - by, At);

    /// <inheritdoc />
    public override LeadBend Bend(Point3 joint)
    {
        double cable = NotchBottom + (NotchWidth / 2);
        Point2 mouth = Point2.Polar(WallInner, At);
        return TwoArcs(new Point3(mouth.X, mouth.Y, cable), joint);
    }

    /// <inheritdoc />
    public override ImmutableArray<PlanNote> Notes(ShellPlan shell) =>
        [new(Point2.Polar(shell.Round?.Outer ?? shell.Footprint.Bounds.Max.X, At), $"{Noted} \u00D8{HandWords.Figure(CableDiameter)}")];

    /// <inheritdoc />
    public override IEnumerable<HandStep> HandSteps(HousingPlan plan)
    {
        yield return new HandStep
        {
            Phase = HandPhase.Board,
            Title = $"Lay {TheCable}",
            Text = $"Lay the soldered {TheCable[4..]} into the notch at {HandWords.Clock(At, plan.Source.Up)}, with 15 mm of slack inside. "
                + (TiePost is null ? "Tie a loose knot behind the wall."
                    : "Pull a 2.5 mm cable tie through the post and round the cable, and cut it off."),
            Check = "A firm pull on the cable from outside moves nothing at the solder joints.",
            Tools = TiePost is null ? [] : ["cable tie 2.5 mm", "side cutter"],
            Shown = [PartNames.Tub, PartNames.Board],
            Held = [PartNames.Board],
            At = At,
        };
    }

    /// <inheritdoc />
    public override string NameOf(int number) =>
        number != PostNumber ? Spoken : Name is null ? "the post for the cable tie" : $"the post for the tie of the cable '{Name}'";

    /// <inheritdoc />
    public override T Accept<T>(ICableExitVisitor<T> visitor) => visitor.Notch(this);

    // Where the cable's way over the floor begins, from the axis.
    private double WayFrom(ShellPlan shell)
    {
        double wall = shell.Round?.Inner ?? shell.Cavity.Bounds.Max.X;
        double post = TiePost is { } tie ? tie.At.Length - tie.Length : wall - (2 * KnotRoom);
        return Math.Max(0, Math.Min(wall - CableDiameter, post));
    }
}

/// <summary>A post on the floor that a cable tie goes round, cable on top.</summary>
/// <param name="At">Middle in plan.</param>
/// <param name="Along">Direction of the cable.</param>
/// <param name="Length">Along the cable, mm.</param>
/// <param name="Width">Across the cable, mm.</param>
/// <param name="Top">z of the cable's seat.</param>
/// <param name="SlotHeight">Height of the passage for the tie, mm.</param>
/// <param name="SlotWidth">Width of the passage along the cable, mm.</param>
public sealed record TiePostPlan(
    Point2 At, Angle Along, double Length, double Width, double Top, double SlotHeight, double SlotWidth);

/// <content>What is done for this form.</content>
public partial interface ICableExitVisitor<out T>
{
    /// <summary>For a notch in the wall.</summary>
    T Notch(NotchExitPlan exit);
}
