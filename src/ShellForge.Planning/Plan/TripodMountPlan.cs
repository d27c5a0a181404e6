using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Hands;

namespace ShellForge.Planning.Plan;

/// <summary>A heat-set insert with a photographic tripod thread, set from below.</summary>
public sealed record TripodMountPlan : MountPlan
{
    // Left free round the land, mm.
    private const double Rib = 2.0;

    /// <summary>The insert's axis.</summary>
    public required Point2 At { get; init; }

    /// <summary>Hole as drawn, mm.</summary>
    public required double HoleDiameter { get; init; }

    /// <summary>Depth of the hole from the outer floor, mm.</summary>
    public required double HoleDepth { get; init; }

    /// <summary>Length of the insert, mm.</summary>
    public required double InsertLength { get; init; }

    /// <summary>Outer diameter of the insert, mm.</summary>
    public required double InsertDiameter { get; init; }

    /// <summary>Leg of the 45 degree lead-in, mm.</summary>
    public required double LeadIn { get; init; }

    /// <summary>Diameter of the boss round it, mm.</summary>
    public required double BossDiameter { get; init; }

    /// <summary>z of the boss's top; a floor as thick as that needs no boss.</summary>
    public required double BossTop { get; init; }

    /// <summary>Diameter of the flat of the outer floor round it, mm.</summary>
    public required double LandDiameter { get; init; }

    /// <inheritdoc />
    public override Region Taken => Region.Disc(At, Ring.Hole((LandDiameter / 2) + Rib));

    /// <inheritdoc />
    public override Region OnOuterFloor => Region.Disc(At, Ring.Hole((HoleDiameter / 2) + LeadIn));

    /// <inheritdoc />
    public override ImmutableArray<(string What, Point2 At)> AtRim => [(NameOf(0), At)];

    /// <inheritdoc />
    public override ImmutableArray<ShoppingItem> Shopping =>
        [new($"heat-set insert 1/4-20 x {HandWords.Figure(InsertLength)}, body 8.4 to 8.7", 1)];

    /// <inheritdoc />
    public override ImmutableArray<PlanNote> Notes =>
        [new(At, $"1/4-20 insert from below, hole \u00D8{HandWords.Figure(HoleDiameter)}, {HandWords.Figure(HoleDepth)} deep")];

    /// <inheritdoc />
    public override ImmutableArray<MountDistance> Distances => At == Point2.Origin ? [] : [new(Point2.Origin, At, "")];

    /// <inheritdoc />
    public override ImmutableArray<InsertPost> InsertPosts =>
        [new(NameOf(0), At, BossDiameter, HoleDiameter, 0, BossTop, Math.Max(0, BossTop - HoleDepth))];

    /// <inheritdoc />
    public override DrillPlan? Drilling => null;

    /// <inheritdoc />
    public override ImmutableArray<MountPart> Parts => [];

    /// <inheritdoc />
    public override StandingPlan? Standing => null;

    /// <inheritdoc />
    public override double OffSurface => double.PositiveInfinity;

    /// <inheritdoc />
    public override IEnumerable<HandStep> HandSteps(HousingPlan plan)
    {
        double iron = plan.Source.Print.Shell.IronCelsius;
        yield return new HandStep
        {
            Phase = HandPhase.Tub,
            Title = "Set the tripod insert",
            Text = string.Create(
                CultureInfo.InvariantCulture,
                $"Turn the tub over, outer floor up, and set the 1/4-20 insert into its hole from that side. Iron at {iron:0} degrees "
                    + $"Celsius, with a tip for 1/4 inch inserts; so much brass takes a minute to warm. ")
                + "Let the iron's weight press; at nine tenths of the depth take it away and press flush with a cold flat plate for 10 s. "
                + "Let it cool for five minutes.",
            Check = "A tripod screw turns in by fingers and stands upright; the insert is flush with the floor or a little below.",
            Cautions = [HandCaution.Iron],
            Tools = ["soldering iron with a tip for 1/4-20 inserts", "flat metal plate"],
            Shown = [PartNames.Tub],
            Things = [new HandThing(HandMaterial.Brass, At, [(InsertDiameter, 0, InsertLength)], FromBelow: true)],
            FromBelow = true,
        };
        yield return new HandStep
        {
            Phase = HandPhase.Place,
            Title = "Screw it onto the tripod",
            Text = $"Turn the plate's screw in by fingers until the plate lies flat on the floor. "
                + $"{(LandDiameter < 25 ? "The flat round the hole is small: tighten gently." : "Tighten by fingers only.")}",
            Check = "It does not turn on the plate, and the tripod stands when the cable is pulled.",
            Shown = [.. plan.Parts.Select(part => part.Name), PartNames.Board],
            FromBelow = true,
        };
    }

    /// <inheritdoc />
    public override string NameOf(int number) => "the tripod insert's boss";

    /// <inheritdoc />
    public override T Accept<T>(IMountVisitor<T> visitor) => visitor.Tripod(this);
}

/// <content>What is done for this form.</content>
public partial interface IMountVisitor<out T>
{
    /// <summary>For a tripod insert.</summary>
    T Tripod(TripodMountPlan mount);
}
