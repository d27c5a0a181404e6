using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning;

/// <summary>
/// What makers call the features of a housing: by the thing on their board that a feature serves ("the boss of hole 2", "J1's saddle"),
/// never by the number that it has in the plan.
/// </summary>
public static class SpokenNames
{
    /// <summary>The feature that a face belongs to, with its article.</summary>
    /// <param name="plan">The plan that the face comes from.</param>
    /// <param name="tag">Tag of the face.</param>
    public static string Of(HousingPlan plan, FaceTag tag)
    {
        int i = FaceNames.NumberOf(tag);
        return FaceNames.FeatureOf(tag) switch
        {
            FaceFeature.Floor => "the floor",
            FaceFeature.Wall => "the wall",
            FaceFeature.BoreWall => "the wall round the bore",
            FaceFeature.Boss or FaceFeature.Rest when i < plan.Bosses.Length => Of(plan, plan.Bosses[i]),
            FaceFeature.InsertHole when i < plan.Bosses.Length => $"the insert hole in {Of(plan, plan.Bosses[i])}",
            FaceFeature.Web when i < plan.Bosses.Length => $"the web at {Of(plan, plan.Bosses[i])}",
            FaceFeature.Gusset when i < plan.Bosses.Length => $"the gusset at {Of(plan, plan.Bosses[i])}",
            FaceFeature.Port or FaceFeature.PortRecess or FaceFeature.Tongue when i < plan.Openings.Length =>
                plan.Openings[i].NameOf(FaceNames.FeatureOf(tag)),
            FaceFeature.Tongue => plan.CableExits.ElementAtOrDefault(i - plan.Openings.Length)?.NameOf(0) ?? "a tongue",
            FaceFeature.CableExit => plan.CableExits.ElementAtOrDefault(i / CableExitPlan.FacesEach)?.NameOf(i % CableExitPlan.FacesEach)
                ?? "the cable exit",
            FaceFeature.Saddle when i < plan.Saddles.Length => $"{plan.Saddles[i].Ref}'s saddle",
            FaceFeature.Key => "the key",
            FaceFeature.Seat => "the seat of the baffle",
            FaceFeature.PryNotch => "a pry notch",
            FaceFeature.Vent => "a vent",
            FaceFeature.Mount => "the mount",
            FaceFeature.Lettering => "the lettering",
            FaceFeature.BedChamfer => "the chamfer at the bed",
            FaceFeature.RoundedEdge => "the rounded edge",
            FaceFeature.Bezel => "the bezel",
            FaceFeature.CoverWall => "the cover's wall",
            FaceFeature.Lip => "the lip",
            FaceFeature.Bead or FaceFeature.Groove or FaceFeature.Lug
                or FaceFeature.Post or FaceFeature.ScrewHole or FaceFeature.Counterbore => plan.Closure.Faces,
            FaceFeature.Diffuser => "the diffuser",
            FaceFeature.BaffleWall => "a wall of the baffle",
            FaceFeature.BaffleNotch => "a notch in the baffle's feet",
            FaceFeature.Holder => plan.Hold.Holder?.NameOf(i) ?? "what holds the board",
            FaceFeature.BoardStop => "a post of the cover over the board",
            FaceFeature.BatteryBay => "the battery's bay",
            FaceFeature.SecondBoard => "what holds the second board",
            FaceFeature.CrushRib => "a small rib of the baffle",
            _ => "the part itself",
        };
    }

    /// <summary>A post on the floor, by the hole of the board over it where there is one, with its article.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="boss">One of its posts.</param>
    public static string Of(HousingPlan plan, BossPlan boss) => Of(plan.Source, plan.Screws, boss);

    /// <summary>The same, while the plan is still being made.</summary>
    internal static string Of(BoardFile file, ImmutableArray<ScrewJointPlan> screws, BossPlan boss)
    {
        BoardHole? hole = file.Board.Holes.FirstOrDefault(hole => hole.At == boss.At);
        return hole is not null ? $"the boss of {hole.Name}"
            : boss.Use == BossUse.Rest ? "a rest under the board's rim"
            : boss.Use == BossUse.SecondBoard ? "a post of the second board"
            : screws.FirstOrDefault(screw => screw.Boss == boss) is { } joint ? $"the boss of {joint.Name}"
            : "a boss";
    }
}
