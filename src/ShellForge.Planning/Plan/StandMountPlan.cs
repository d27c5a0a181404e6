using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Hands;

namespace ShellForge.Planning.Plan;

/// <summary>
/// A stand of its own: a low band round a table's foot, and on its straight left and right side two flat cheeks. Each cheek has a notch,
/// leaning back, for the housing's rim; plug and cable hang between them.
/// <code>
///      from the side:      __           from above:   __________
///                       / /  |                       /  back    \
///                    __/ /   |                       | cheek    | cheek
///          front lip |  /    |                       |          |
///               _____|_/     |__                     \__________/
///              |________________|  band                 front
/// </code>
/// Frame of the stand: x to the right seen by the viewer, 0 midway between the cheeks; y away from the viewer, 0 at the middle of the foot;
/// z up, the foot on z = 0.
/// </summary>
public sealed record StandMountPlan : MountPlan
{
    /// <summary>From the stand's own frame to the assembled housing's frame.</summary>
    public required Transform3 ToHousing { get; init; }

    /// <summary>The band in plan (x, y): whole lines of plastic wide.</summary>
    public required Region Band { get; init; }

    /// <summary>Height of the band, mm.</summary>
    public required double BandHeight { get; init; }

    /// <summary>x of the outer face of the right cheek; that of the left one is its negative, mm.</summary>
    public required double HalfWidth { get; init; }

    /// <summary>Wall thickness, mm.</summary>
    public required double Wall { get; init; }

    /// <summary>Depth of the foot, mm.</summary>
    public required double Depth { get; init; }

    /// <summary>
    /// The left cheek seen from the left (y, z), from the table up; below the band's top within the band's straight side.
    /// </summary>
    public required Region LeftSide { get; init; }

    /// <summary>The same of the right cheek.</summary>
    public required Region RightSide { get; init; }

    /// <summary>z of the highest point, mm.</summary>
    public required double Height { get; init; }

    /// <summary>
    /// Slot in the back of the band that a cable lies in: its width and the z of its sill, mm; null where none is needed.
    /// </summary>
    public required (double Width, double Sill)? CableSlot { get; init; }

    /// <summary>Tilt of the housing's face from the horizontal.</summary>
    public required Angle Tilt { get; init; }

    /// <summary>Chamfer on the foot against elephant's foot, mm.</summary>
    public required double BedChamfer { get; init; }

    /// <summary>Word for what hangs between the cheeks: "J1's plug"; empty for nothing.</summary>
    public required string Hanging { get; init; }

    /// <inheritdoc />
    public override Region Taken => Region.Empty;

    /// <inheritdoc />
    public override Region OnOuterFloor => Region.Empty;

    /// <inheritdoc />
    public override ImmutableArray<(string What, Point2 At)> AtRim => [];

    /// <inheritdoc />
    public override ImmutableArray<ShoppingItem> Shopping => [];

    /// <inheritdoc />
    public override ImmutableArray<PlanNote> Notes => [];

    /// <inheritdoc />
    public override ImmutableArray<MountDistance> Distances => [];

    /// <inheritdoc />
    public override ImmutableArray<InsertPost> InsertPosts => [];

    /// <inheritdoc />
    public override DrillPlan? Drilling => null;

    /// <inheritdoc />
    public override ImmutableArray<MountPart> Parts => [new(PartNames.Stand, ToHousing.Inverse(), "foot down")];

    /// <inheritdoc />
    public override StandingPlan? Standing => new(ToHousing.Inverse(), Band);

    /// <inheritdoc />
    public override double OffSurface => double.PositiveInfinity;

    /// <inheritdoc />
    public override IEnumerable<HandStep> HandSteps(HousingPlan plan)
    {
        string cable = Hanging.Length == 0
            ? ""
            : $" Let {Hanging} hang between the cheeks and lead the cable out through the slot in the back.";
        yield return new HandStep
        {
            Phase = HandPhase.Place,
            Title = "Put it on its stand",
            Text = string.Create(
                CultureInfo.InvariantCulture,
                $"Set the rim into the two notches, the front towards the low lips; it leans back by {90 - Tilt.Degrees:0} "
                    + $"degrees.{cable}"),
            Check = "It sits in both notches, does not rock, and the stand stands flat on the table.",
            Shown = [.. plan.Parts.Select(part => part.Name), PartNames.Board],
        };
    }

    /// <inheritdoc />
    public override string NameOf(int number) => "the stand";

    /// <inheritdoc />
    public override T Accept<T>(IMountVisitor<T> visitor) => visitor.Stand(this);
}

/// <content>What is done for this form.</content>
public partial interface IMountVisitor<out T>
{
    /// <summary>For a stand.</summary>
    T Stand(StandMountPlan mount);
}
