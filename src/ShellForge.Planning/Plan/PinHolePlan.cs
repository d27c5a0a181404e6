using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Hands;

namespace ShellForge.Planning.Plan;

/// <summary>
/// A hole in the floor through which a blunt pin presses a button on the board's back. Where there is room a tube stands round it and leads
/// the pin:
/// <code>
///        ______board______
///            [ button ]
///              |_  _|        pusher
///              |    |        tube
///      ████████|    |████████ floor
///                ^ pin
/// </code>
/// </summary>
public sealed record PinHolePlan : OpeningPlan
{
    // What fingers hold of the pin, mm.
    private const double Grip = 20;

    // Floor left between the hole and anything else that is cut there: two lines, mm.
    private const double FloorBeside = 0.8;

    /// <summary>Its axis, which is the button's.</summary>
    public required Point2 At { get; init; }

    /// <summary>Diameter of the hole, mm, as drawn.</summary>
    public required double Diameter { get; init; }

    /// <summary>Thickness of the pin that goes through, mm.</summary>
    public required double Pin { get; init; }

    /// <summary>Diameter of the button's pusher, mm.</summary>
    public required double Pusher { get; init; }

    /// <summary>z of the pusher's end: so far a pin has to reach.</summary>
    public required double Reach { get; init; }

    /// <summary>z of the floor's inner face.</summary>
    public required double FloorTop { get; init; }

    /// <summary>The tube that leads the pin; null where there is no room or no need for one.</summary>
    public PinTubePlan? Tube { get; init; }

    /// <summary>z up to which the hole leads the pin.</summary>
    public double LedTo => Tube?.Top ?? FloorTop;

    /// <summary>The hole in plan.</summary>
    public Region Hole => Region.Disc(At, Ring.Hole(Diameter / 2));

    /// <inheritdoc />
    public override WallOpening? InWall => null;

    /// <inheritdoc />
    public override PlacedTongue? PlacedTongue => null;

    /// <inheritdoc />
    public override Region TakenInside => Tube?.Outline(At) ?? Hole;

    /// <inheritdoc />
    public override (Angle Direction, string Through) Section =>
        (At == Point2.Origin ? Angle.Zero : Angle.Of(At), $"the pin hole of {Ref}");

    /// <inheritdoc />
    public override PlanNote Note => new(At, $"{Ref}: pin hole \u00D8{HandWords.Figure(Diameter)}");

    /// <inheritdoc />
    public override string? Trial => null;

    /// <inheritdoc />
    public override Region TakenOutside(ShellPlan shell) => Hole.Offset(FloorBeside);

    /// <inheritdoc />
    public override bool IsBarredBy(Point2 at, double diameter) => TakenInside.Distance(at) <= diameter / 2;

    /// <inheritdoc />
    public override Region ThroughLip(CircuitBoard board, double lipBottom) => Region.Empty;

    /// <inheritdoc />
    public override OpeningInUse? InUse(double beside) => null;

    /// <inheritdoc />
    public override BoardSeat? Seat(Angle up) => null;

    /// <inheritdoc />
    public override IEnumerable<HandStep> HandSteps(HousingPlan plan)
    {
        string thick = HandWords.Mm(Pin);
        yield return new HandStep
        {
            Phase = HandPhase.Close,
            Title = $"Try {Ref} from outside",
            Text = string.Create(CultureInfo.InvariantCulture,
                $"Turn the housing over and press {Ref} through its hole in the floor, with a blunt pin {thick} thick and at least "
                    + $"{10 * Math.Ceiling((Reach + Grip) / 10):0} mm long: a {Pin:0.#} mm hex key will do. A pointed pin slips off and "
                    + $"scratches the board."),
            Check = $"{Ref} clicks and comes back by itself.",
            Tools = [$"blunt pin {thick} thick, such as a hex key"],
            Shown = [.. plan.Parts.Where(part => part.IsOfHousing).Select(part => part.Name), PartNames.Board],
            Things = [new HandThing(HandMaterial.Steel, At, [(Pin, Reach - Grip, Reach)], FromBelow: true)],
            FromBelow = true,
        };
    }

    /// <inheritdoc />
    public override string NameOf(FaceFeature face) => $"the pin hole of {Ref}";

    /// <inheritdoc />
    public override T Accept<T>(IOpeningVisitor<T> visitor) => visitor.PinHole(this);
}

/// <summary>A tube that stands on the floor round a pin hole.</summary>
/// <param name="Outer">Its outer diameter, mm.</param>
/// <param name="Top">z of its upper end.</param>
public sealed record PinTubePlan(double Outer, double Top)
{
    /// <summary>The tube in plan, its hole filled.</summary>
    /// <param name="at">Its axis.</param>
    public Region Outline(Point2 at) => Region.Disc(at, Ring.Peg(Outer / 2));
}

/// <content>What is done for this form.</content>
public partial interface IOpeningVisitor<out T>
{
    /// <summary>For a hole over a button.</summary>
    T PinHole(PinHolePlan opening);
}
