using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Floors;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Posts;

/// <summary>
/// Posts on the floor: a boss under each board hole, one for each closure screw, rests where the board has too few holes. Bosses near a
/// wall are tied to it by webs, slender ones get gussets; both dodge the parts on the board's back.
/// </summary>
internal static class BossDecision
{
    /// <summary>
    /// A screw of the clamp ring goes into a post so much lower than the board's face at least, mm: the ring then presses the board, also
    /// one a little thinner than listed, and not the post.
    /// </summary>
    private const double UnderClamp = 0.1;

    /// <summary>Length and hole of a screw of the clamp ring.</summary>
    /// <param name="file">The board file.</param>
    /// <param name="basis">Lines and layers.</param>
    /// <param name="post">Its post.</param>
    /// <param name="gap">From the post's top to what it presses, mm.</param>
    public static ScrewFit ClampFit(BoardFile file, PrintBasis basis, HoldPost post, double gap) =>
        ScrewFit.Choose(file.Housing.Screw!, file.Housing.Insert!, Math.Round(post.Thickness + gap, 6), basis);

    /// <summary>Posts under the board's holes and for closure screws, before the heights are decided.</summary>
    public static ImmutableArray<PostInPlan> InPlan(
        ImmutableArray<Joint> joints, ImmutableArray<ClosureSite> sites, ImmutableArray<HoldSite> holds, PrintBasis basis) =>
    [
        .. joints.Select(joint => new PostInPlan(
            $"the boss of {joint.Hole.Name}", joint.Hole.At, Diameter(joint, sites.FirstOrDefault(site => site.Shared == joint), basis),
            ToRim: false, InCover: sites.Any(site => site.Shared == joint))),
        .. sites.Where(site => site.Shared is null).Select(site => new PostInPlan(
            "the boss of a cover screw", site.At, site.Diameter, ToRim: true, InCover: true)),
        .. holds.Select(hold => new PostInPlan(
            "an ear at the board's rim", hold.Lobe.At, 2 * hold.Lobe.Radius, ToRim: true, InCover: false)),
    ];

    /// <summary>Decides all posts.</summary>
    public static Decided<ImmutableArray<BossPlan>> Decide(
        TubDraft tub, double parting, ImmutableArray<Joint> joints, ImmutableArray<ClosureSite> sites)
    {
        (BoardFile file, PrintBasis basis, _, BoardLevels levels, _) = tub;
        var reasons = new Reasons();
        var room = new BelowBoardRoom(tub);
        var bosses = ImmutableArray.CreateBuilder<BossPlan>();
        foreach (Joint joint in joints)
        {
            ClosureSite? shared = sites.FirstOrDefault(s => s.Shared == joint);
            bosses.Add(new BossPlan
            {
                Name = Numbered("boss", bosses.Count + 1),
                Use = shared is null ? BossUse.Board : BossUse.Both,
                At = joint.Hole.At,
                Diameter = Diameter(joint, shared, basis),
                Top = levels.BoardBottom,
                Hole = InsertHoleDecision.Plan(joint.Insert, levels.BoardBottom, joint.Fit.Depth),
            });
        }

        foreach (ClosureSite site in sites.Where(s => s.Shared is null))
        {
            bosses.Add(new BossPlan
            {
                Name = Numbered("boss", bosses.Count + 1),
                Use = BossUse.Closure,
                At = site.At,
                Diameter = site.Diameter,
                Top = parting,
                Hole = InsertHoleDecision.Plan(
                    file.Housing.Insert!, parting, ClosureScrewFit.Depth(tub.Given, parting)),
            });
        }

        foreach (HoldSite hold in tub.Holds.Where(each => each.Post is not null))
        {
            double top = basis.Down(levels.BoardTop - UnderClamp);
            bosses.Add(new BossPlan
            {
                Name = Numbered("boss", bosses.Count + 1),
                Use = BossUse.Clamp,
                At = hold.Lobe.At,
                Diameter = hold.Post!.Diameter,
                Top = top,
                Hole = InsertHoleDecision.Plan(file.Housing.Insert!, top, ClampFit(file, basis, hold.Post, levels.BoardTop - top).Depth),
            });
        }

        for (int i = 0; i < bosses.Count; i++)
        {
            bosses[i] = Stiffened(bosses[i], tub, room, reasons);
        }

        // Low, and beside what hangs under their own board: neither webs nor gussets.
        bosses.AddRange(SecondBoardPosts.Of(tub.Given, tub.SecondBoard, bosses.Count));

        ImmutableArray<BossPlan> rests = reasons.Take(
            RestDecision.Decide(tub, bosses.ToImmutable(), room));
        bosses.AddRange(rests);
        foreach (BossPlan boss in bosses.Where(b => b.Hole is not null))
        {
            string path = $"bosses.{boss.Name.Replace(' ', '-')}";
            reasons.Length($"{path}.diameter", boss.Diameter, boss.Hole!.Insert.Name,
                "wall round the insert, and round a sunk head where the cover's post stands on it");
            reasons.Length($"{path}.hole-depth", boss.Hole.Depth, boss.Hole.Insert.Name,
                "insert and melt room, or the screw's tip and half a millimetre");
            reasons.Length($"{path}.plastic-below", boss.Hole.PlasticBelow, Reasons.Rule,
                $"at least {Reasons.Mm(PlanRules.PlasticBelow)}, so that the iron does not come through");
        }

        return reasons.Of(bosses.ToImmutable());
    }

    // Round the insert, and round a sunk head where the cover's post stands on it.
    private static double Diameter(Joint joint, ClosureSite? shared, PrintBasis basis) =>
        Math.Max(InsertHoleDecision.BossDiameter(joint.Insert, basis), shared?.Diameter ?? 0);

    /// <summary>"boss 3".</summary>
    internal static string Numbered(string kind, int number) => string.Create(CultureInfo.InvariantCulture, $"{kind} {number}");

    private static BossPlan Stiffened(BossPlan boss, TubDraft tub, BelowBoardRoom room, Reasons reasons)
    {
        string path = $"bosses.{boss.Name.Replace(' ', '-')}";
        (ImmutableArray<Region> webs, double top) = WebDecision.Decide(boss, tub, room);
        if (!webs.IsEmpty)
        {
            reasons.Length($"{path}.web-top", top, Reasons.Rule,
                $"nearer to a wall than {Reasons.Mm(PlanRules.TieDistance)}: tied to it, with room for wires above");
            return boss with { Webs = webs, WebTop = top };
        }

        double height = boss.Top - tub.Levels.FloorTop;
        if (height <= PlanRules.SlenderBoss * boss.Diameter || tub.Shell.Lobes.Any(l => l.At == boss.At))
        {
            return boss;
        }

        ImmutableArray<GussetPlan> gussets = GussetDecision.Decide(boss, tub, room);
        reasons.Choice($"{path}.gussets", gussets.Length.ToString(CultureInfo.InvariantCulture), Reasons.Rule,
            $"{Reasons.Mm(height)} high on {Reasons.Mm(boss.Diameter)}: slender, stiffened where no part is in the way");
        return boss with { Gussets = gussets };
    }
}
