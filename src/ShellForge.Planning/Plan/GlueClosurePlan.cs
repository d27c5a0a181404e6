using System.Collections.Immutable;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Hands;

namespace ShellForge.Planning.Plan;

/// <summary>A lip glued into the tub, with a groove under the seam for what is squeezed out.</summary>
public sealed record GlueClosurePlan : ClosurePlan
{
    private static readonly HandCaution Fumes = new(
        "Fumes", "Glues and their solvents give off fumes, and some burn: air the room, keep flames and hot irons away, and let the glue "
            + "cure before you bring the supply.");

    /// <summary>Gap that the glue fills, mm on each side.</summary>
    public required double Gap { get; init; }

    /// <summary>Leg of the 45 degree groove inside the tub's rim, mm; 0 where the wall is too thin for one.</summary>
    public required double Groove { get; init; }

    /// <inheritdoc />
    public override bool Reopens => false;

    /// <inheritdoc />
    public override bool TurnsCover => false;

    /// <inheritdoc />
    public override ClosureEntry? Entry => null;

    /// <inheritdoc />
    public override Region FreePosts => Region.Empty;

    /// <inheritdoc />
    public override string Faces => "the groove for the glue";

    /// <inheritdoc />
    public override ImmutableArray<ShoppingItem> Shopping =>
        [new($"glue for both prints that fills {HandWords.Mm(Gap)}: two-part epoxy, or thick cyanoacrylate", 1), new("rubber bands", 2)];

    /// <inheritdoc />
    public override string WayOn(HousingPlan plan) => ClosingHands.RibWay(plan);

    /// <inheritdoc />
    public override IEnumerable<HandStep> HandSteps(HousingPlan plan)
    {
        yield return ClosingHands.Close(
            plan,
            $"Try everything first, since the cover does not come off again. Roughen the lip's outside and the tub's inside with fine "
                + $"sandpaper, and wipe off the dust. "
            + "Lay a thin bead of glue round the lip, but not beside openings, and press the cover down; what the rim scrapes off stays "
            + "in the groove under the seam. "
            + "Hold it with two rubber bands until the glue has cured as its sheet says. Thick cyanoacrylate leaves a white film on what "
            + "is near, the diffuser too, where its vapour can't leave; epoxy does not.") with
        {
            Check = "The seam is closed all round, and no glue stands out of it.",
            Tools = ["fine sandpaper", "rubber bands"],
            Cautions = [HandCaution.Adhesive, Fumes],
        };
        yield return ClosingHands.Open(plan,
            "The glue holds the cover for good: to get at the inside, lip or wall have to break, and both are printed anew.");
    }

    /// <inheritdoc />
    public override T Accept<T>(IClosureVisitor<T> visitor) => visitor.Glue(this);
}

/// <content>This form's visit.</content>
public partial interface IClosureVisitor<out T>
{
    /// <summary>A glued lip.</summary>
    T Glue(GlueClosurePlan closure);
}
