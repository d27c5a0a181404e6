using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Hands;

namespace ShellForge.Planning.Plan;

/// <summary>A bead on the lip snaps into a groove in the tub's wall.</summary>
public sealed record SnapClosurePlan : ClosurePlan
{
    /// <summary>z of the middle of the bead's crest.</summary>
    public required double BeadZ { get; init; }

    /// <summary>Bead height off the lip's face: gap plus interference, mm.</summary>
    public required double BeadHeight { get; init; }

    /// <summary>Interference per side while closing, mm.</summary>
    public required double Interference { get; init; }

    /// <summary>Groove depth in the wall, mm.</summary>
    public required double GrooveDepth { get; init; }

    /// <summary>z of the middle of the groove's bottom: a little lower, so that the bead draws the cover onto the rim.</summary>
    public required double GrooveZ { get; init; }

    /// <summary>Height of the bead's flat crest along z, mm.</summary>
    public required double Crest { get; init; }

    /// <summary>Angle of the lower flanks of bead and groove to the axis: the bead's leads in.</summary>
    public required Angle LeadIn { get; init; }

    /// <summary>Angle of the upper flanks to the axis: they hold.</summary>
    public required Angle Hold { get; init; }

    /// <summary>Strain of the ring while closing, as a fraction, when all tolerances go against it.</summary>
    public required double Strain { get; init; }

    /// <summary>Force that closes the cover when it is pressed down from one side, N.</summary>
    public required double ClosingForce { get; init; }

    /// <summary>Catch left when all tolerances go against it, mm.</summary>
    public required double CatchAfterTolerance { get; init; }

    /// <summary>Why too little catch is left; null where enough is.</summary>
    public LostCatch? LostCatch { get; init; }

    /// <summary>Sectors without bead (at ports and keys): start and sweep.</summary>
    public required ImmutableArray<(Angle From, Angle Sweep)> Interruptions { get; init; }

    /// <summary>A piece of bead shorter than this holds nothing and is left out, mm.</summary>
    public required double ShortestPiece { get; init; }

    /// <summary>How far the bead keeps from wall that has no groove, mm.</summary>
    public required double BesideSolidWall { get; init; }

    /// <summary>Corners and short sides without bead, in plan; empty on round outlines.</summary>
    public Region LeftOut { get; init; } = Region.Empty;

    /// <summary>
    /// Short beads on the tongue round an open bore, which hold a wide cover down there: start and sweep; empty for none.
    /// </summary>
    public ImmutableArray<(Angle From, Angle Sweep)> BoreHooks { get; init; } = [];

    /// <summary>Height of those beads off the tongue's face, mm.</summary>
    public double BoreHookHeight { get; init; }

    /// <summary>Depth of the groove for them in the bore wall, mm.</summary>
    public double BoreGrooveDepth { get; init; }

    /// <inheritdoc />
    public override bool Reopens => true;

    /// <inheritdoc />
    public override bool TurnsCover => false;

    /// <inheritdoc />
    public override ClosureEntry? Entry => null;

    /// <inheritdoc />
    public override Region FreePosts => Region.Empty;

    /// <inheritdoc />
    public override string Faces => "the snap bead";

    /// <inheritdoc />
    public override ImmutableArray<ShoppingItem> Shopping => [];

    /// <inheritdoc />
    public override string WayOn(HousingPlan plan) => ClosingHands.RibWay(plan);

    /// <inheritdoc />
    public override IEnumerable<HandStep> HandSteps(HousingPlan plan)
    {
        string start = !plan.Ports.Any() && plan.CableExits.All(exit => exit.AtRim is null) ? "Press"
            : "Start at the side across from the opening in the wall and press";
        yield return ClosingHands.Close(plan, $"{start} round the rim until the bead has snapped in all round.");
        yield return ClosingHands.Open(plan, plan.PryNotches.IsEmpty
            ? "Squeeze the tub's wall beside the seam and lift the cover there, then work round."
            : $"Put a blade into the {(plan.PryNotches.Length == 1 ? "notch" : "notches")} at "
                + $"{HandWords.Listed(plan.PryNotches.Select(notch => HandWords.Clock(notch.At, plan.Source.Up)))} and turn "
                + $"it{(!plan.Ports.Any() ? "" : "; never pry at the port")}.") with
        {
            Tools = plan.PryNotches.IsEmpty ? [] : ["small flat screwdriver"],
            Cautions = plan.PryNotches.IsEmpty ? [] : [HandCaution.Blade],
        };
    }

    /// <inheritdoc />
    public override T Accept<T>(IClosureVisitor<T> visitor) => visitor.Snap(this);
}

/// <summary>A snap that would not hold.</summary>
/// <param name="Cause">What keeps the bead from catching more.</param>
/// <param name="Instead">What would work.</param>
public sealed record LostCatch(string Cause, string Instead);

/// <content>This form's visit.</content>
public partial interface IClosureVisitor<out T>
{
    /// <summary>A bead that snaps into a groove.</summary>
    T Snap(SnapClosurePlan closure);
}
