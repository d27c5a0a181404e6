using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Hands;

namespace ShellForge.Planning.Plan;

/// <summary>Shallow recesses in the outer floor that adhesive rubber feet are stuck into.</summary>
public sealed record FeetMountPlan : MountPlan
{
    // Left free round a foot, mm.
    private const double Rib = 1.5;

    /// <summary>Middles of the feet.</summary>
    public required ImmutableArray<Point2> At { get; init; }

    /// <summary>Nominal diameter of a foot, mm.</summary>
    public required double FootDiameter { get; init; }

    /// <summary>Nominal height of a foot, mm.</summary>
    public required double FootHeight { get; init; }

    /// <summary>Diameter of a recess as drawn, mm.</summary>
    public required double RecessDiameter { get; init; }

    /// <summary>Depth of a recess from the outer floor, mm.</summary>
    public required double Recess { get; init; }

    /// <inheritdoc />
    public override Region Taken => Region.Union(At.Select(at => Region.Disc(at, Ring.Hole((RecessDiameter / 2) + Rib))));

    /// <inheritdoc />
    public override Region OnOuterFloor => Region.Union(At.Select(at => Region.Disc(at, Ring.Hole(RecessDiameter / 2))));

    /// <inheritdoc />
    public override ImmutableArray<(string What, Point2 At)> AtRim => [];

    /// <inheritdoc />
    public override ImmutableArray<ShoppingItem> Shopping =>
        [new($"adhesive rubber foot {HandWords.Figure(FootDiameter)} x {HandWords.Figure(FootHeight)}", At.Length)];

    /// <inheritdoc />
    public override ImmutableArray<PlanNote> Notes =>
        [new(At[0], $"{At.Length}x recess below \u00D8{HandWords.Figure(RecessDiameter)}, {HandWords.Figure(Recess)} deep, for a foot")];

    /// <inheritdoc />
    public override ImmutableArray<MountDistance> Distances => [];

    /// <inheritdoc />
    public override ImmutableArray<InsertPost> InsertPosts => [];

    /// <inheritdoc />
    public override DrillPlan? Drilling => null;

    /// <inheritdoc />
    public override ImmutableArray<MountPart> Parts => [];

    /// <inheritdoc />
    public override StandingPlan? Standing => null;

    /// <inheritdoc />
    public override double OffSurface => FootHeight - Recess;

    /// <inheritdoc />
    public override IEnumerable<HandStep> HandSteps(HousingPlan plan)
    {
        yield return new HandStep
        {
            Phase = HandPhase.Place,
            Title = "Stick the feet on",
            Text = $"Wipe the {HandWords.Count(At.Length, "recess", "recesses")} in the outer floor with alcohol, let them dry, and press "
                + $"an adhesive rubber foot, "
                + $"{HandWords.Figure(FootDiameter)} x {HandWords.Figure(FootHeight)}, into each for 10 s.",
            Check = "It stands without rocking and does not slide when the cable is pulled gently.",
            Tools = ["alcohol and a cloth"],
            Shown = [.. plan.Parts.Select(part => part.Name), PartNames.Board],
            Things = [
                .. At.Select(
                    at => new HandThing(HandMaterial.Plastic, at, [(FootDiameter, Recess - FootHeight, Recess)], FromBelow: true))],
            FromBelow = true,
        };
    }

    /// <inheritdoc />
    public override string NameOf(int number) => $"the recess of foot {number + 1}";

    /// <inheritdoc />
    public override T Accept<T>(IMountVisitor<T> visitor) => visitor.Feet(this);
}

/// <content>What is done for this form.</content>
public partial interface IMountVisitor<out T>
{
    /// <summary>For rubber feet.</summary>
    T Feet(FeetMountPlan mount);
}
