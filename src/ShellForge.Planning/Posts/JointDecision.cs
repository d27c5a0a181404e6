using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;

namespace ShellForge.Planning.Posts;

/// <summary>A board hole with its screw and insert.</summary>
/// <param name="Hole">The hole.</param>
/// <param name="Screw">Its screw.</param>
/// <param name="Insert">Its insert.</param>
/// <param name="Washer">Whether a washer lies under the head.</param>
/// <param name="Clamp">Board, and the washer when there is one, mm.</param>
/// <param name="Fit">Stock length and hole depth.</param>
internal sealed record Joint(
    BoardHole Hole, ScrewProfile Screw, InsertProfile Insert, bool Washer, double Clamp, ScrewFit Fit)
{
    /// <summary>Diameter that the head, or the washer under it, covers on the board's top, mm.</summary>
    public double Covers => Washer ? Math.Max(Screw.HeadDiameter, Screw.WasherDiameter) : Screw.HeadDiameter;

    /// <summary>From the board's top face to the top of the head, mm.</summary>
    public double Rises => Screw.HeadHeight + (Washer ? Screw.WasherThickness : 0);
}

/// <summary>
/// Screws that hold the board: from the front, pan heads by default, washers only where asked for and where they fit. The length comes
/// from stock; the hole is made deep enough for it.
/// </summary>
internal static class JointDecision
{
    /// <summary>Pairs each mounting hole with screw and insert.</summary>
    public static Decided<ImmutableArray<Joint>> Decide(Given given)
    {
        (BoardFile file, PrintBasis basis) = given;
        var reasons = new Reasons();
        ImmutableArray<PartEnvelope> onTop = PartEnvelope.OnTop(file.Board);
        ImmutableArray<Joint> joints =
            [.. file.Board.Holes.Where(h => h.For == HolePurpose.Mount).Select(h => JointAt(file, h, onTop, basis, reasons))];
        Explain(file, joints, reasons);
        foreach (InsertProfile insert in joints.Select(j => j.Insert).Concat(file.Housing.Insert is { } own ? [own] : [])
            .DistinctBy(i => i.Name))
        {
            InsertHoleDecision.Explain(reasons, $"insert.{insert.Name}", insert, basis);
        }

        return reasons.Of(joints);
    }

    private static Joint JointAt(
        BoardFile file, BoardHole hole, ImmutableArray<PartEnvelope> onTop, PrintBasis basis, Reasons reasons)
    {
        ScrewProfile screw = hole.Screw ?? file.Housing.Screw!;
        InsertProfile insert = hole.Insert ?? file.Housing.Insert!;
        var at = new Point3(hole.At.X, hole.At.Y, 0);
        if (screw.Thread != insert.Thread)
        {
            reasons.Refuse("screw-insert-thread", hole.Name,
                $"a screw {screw.Thread} does not go into an insert {insert.Thread}",
                screw.ThreadDiameter, screw.ThreadDiameter, "mm", at,
                $"choose a screw with thread {insert.Thread}, or an insert with thread {screw.Thread}");
        }

        if (hole.Diameter < screw.ThreadDiameter)
        {
            reasons.Refuse("screw-through-board-hole", hole.Name,
                $"{screw.Thread} does not pass a board hole of {Reasons.Mm(hole.Diameter)}",
                hole.Diameter, screw.ThreadDiameter, "mm", at, "take an insert of a thinner thread ('insert:'), or drill the board");
        }

        bool washer = file.Housing.Washers
            && Clearance(hole, Math.Max(screw.WasherDiameter, screw.HeadDiameter), onTop).Gap >= PlanRules.Beside;
        if (file.Housing.Washers && !washer)
        {
            (PartEnvelope? near, double washerGap) = Clearance(hole, screw.WasherDiameter, onTop);
            reasons.Replace("washer-meets-part", hole.Name,
                $"a washer of {Reasons.Mm(screw.WasherDiameter)} comes too near to {near!.Ref}; planned without it",
                washerGap, PlanRules.Beside, "mm", at, "leave washers out, or keep the part away from the hole");
        }

        double clamp = file.Board.Thickness + (washer ? screw.WasherThickness : 0);
        ScrewFit fit = ScrewFit.Choose(screw, insert, clamp, basis);
        return new Joint(hole, screw, insert, washer, clamp, fit);
    }

    private static (PartEnvelope? Nearest, double Gap) Clearance(BoardHole hole, double covers, ImmutableArray<PartEnvelope> onTop)
    {
        PartEnvelope? nearest = onTop.MinBy(e => e.Outline.Distance(hole.At));

        // To a thousandth, as the rule on heads has it: bodies lie on the lattice, and half a millimetre on the drawing is half a
        // millimetre.
        return (nearest, nearest is null ? double.PositiveInfinity : Math.Round(nearest.Outline.Distance(hole.At) - (covers / 2), 3));
    }

    private static void Explain(BoardFile file, ImmutableArray<Joint> joints, Reasons reasons)
    {
        if (joints.IsEmpty)
        {
            reasons.Choice("screws.board", "none", Reasons.Rule, "the board has no mounting holes: it is held by its edge");
            return;
        }

        foreach (Joint[] same in joints.GroupBy(j => (j.Screw.Name, j.Insert.Name, j.Washer, j.Fit.Length)).Select(g => g.ToArray()))
        {
            Joint joint = same[0];
            string why = string.Create(CultureInfo.InvariantCulture,
                $"clamps {Reasons.Mm(joint.Clamp)}, wants {Reasons.Mm(joint.Fit.Wanted)} of thread in the insert, gets "
                    + $"{Reasons.Mm(joint.Fit.Engagement)}; the tip stays {Reasons.Mm(joint.Fit.TipGap)} off the bottom");
            reasons.Length($"screws.{joint.Hole.Name.Replace(' ', '-')}.length", joint.Fit.Length, joint.Screw.Name,
                joint.Fit.Deepened ? $"{why} of a hole deepened to {Reasons.Mm(joint.Fit.Depth)} for it" : why);
        }

        reasons.Choice("screws.board.from", "front", Reasons.Rule,
            "LEDs leave more room for a head than for the nut that a screw from behind would need on their side");
        reasons.Choice("screws.washers", file.Housing.Washers ? "yes" : "none", Reasons.Origin(file, "housing.washers"),
            file.Housing.Washers ? "asked for" : "a pan head holds a board well, and a washer costs room beside LEDs");
    }
}
