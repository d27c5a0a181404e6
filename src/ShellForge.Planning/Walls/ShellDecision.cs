using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Posts;

namespace ShellForge.Planning.Walls;

/// <summary>
/// Walls in plan: thickness in lines of plastic, and a gap round the board that lets it in, leaves the lip its place and the boss holes
/// their wall.
/// </summary>
internal static class ShellDecision
{
    /// <summary>Decides the walls, without bulges for closure screws.</summary>
    public static Decided<ShellPlan> Bare(Given given, ImmutableArray<Joint> joints, LipRing lip)
    {
        BoardFile file = given.File;
        var reasons = new Reasons();
        (double wall, int lines) = Wall(given, reasons);
        var rim = new Rim(file.Board.Outline);
        ImmutableArray<Crowd> crowds = Crowds(given, joints, lip, wall, rim);
        double finish = PlanRules.EdgeGap(file.Board);
        Gap outer = Sized(given, GapFor(file, finish, [.. crowds.Select(c => (c.OuterGap, c.Why))]), (wall, lines), rim, reasons);
        double gap = reasons.Length("shell.gap", outer.Width, outer.From, $"between board and wall: {outer.Why}");

        RoundShell? round = null;
        if (file.Board.Outline is not PolygonOutline)
        {
            Gap inner = GapFor(file, finish, [.. crowds.Select(c => (c.BoreGap, c.Why))]);
            bool bore = BoreOpen(file, wall, inner.Width, reasons);
            if (bore)
            {
                reasons.Length("shell.bore-gap", inner.Width, inner.From, $"between board and bore wall: {inner.Why}");
            }

            round = Round(file.Board.Outline, gap, bore ? inner.Width : null, wall);
            reasons.Length("shell.outer-diameter", 2 * round.Outer, Reasons.Rule, "board, gap and wall on either side");
            if (round.HasBore)
            {
                reasons.Length("shell.bore-diameter", 2 * round.BoreInner, Reasons.Rule,
                    "the board's bore less gap and wall on either side");
            }
        }

        return reasons.Of(new ShellPlan
        {
            Footprint = round is null ? rim.Filled.Offset(gap + wall) : RoundRegions.Footprint(round),
            Cavity = round is null ? rim.Filled.Offset(gap) : RoundRegions.Cavity(round),
            Round = round,
            Wall = wall,
            WallLines = lines,
            BoardEdgeGap = gap,
            BedChamfer = Math.Max(PlanRules.BedChamfer, file.Print.Printer.ElephantFoot),
        });
    }

    /// <summary>The walls with bulges for closure screws, where there are any.</summary>
    public static ShellPlan WithSites(ShellPlan bare, ImmutableArray<ClosureSite> sites) =>
        WithLobes(bare, [.. sites.Where(site => site.Lobe is not null).Select(site => site.Lobe!)]);

    /// <summary>The walls with all bulges: those for closure screws, and those at the board's rim with their pockets.</summary>
    public static Decided<ShellPlan> Finished(BoardFile file, ShellPlan bare, ShellPlan eared, ImmutableArray<HoldSite> holds)
    {
        var reasons = new Reasons();
        ShellPlan shell = WithLobes(eared, [.. holds.Select(hold => hold.Lobe)]) with { Pockets = [.. holds.Select(hold => hold.Pocket)] };
        if (file.Housing.Size.Outer is double asked && Largest(shell.Footprint) - Largest(bare.Footprint) > Layers.Slack)
        {
            bool byScrews = Largest(eared.Footprint) - Largest(bare.Footprint) > Layers.Slack;
            double wide = Math.Round(Largest(shell.Footprint), 1);
            reasons.Replace(
                "size-with-ears", "outer",
                $"The ears for {(byScrews ? "the cover's screws" : "what holds the board's rim")} make it {Reasons.Mm(wide)} mm wide; "
                    + $"{Reasons.Mm(asked)} mm are asked for.",
                wide, asked, "mm", default,
                byScrews ? "'closure: snap' or 'closure: glue', which need no ears" : "'hold: auto', which needs no ears");
        }

        return reasons.Of(shell with { BedChamfer = Chamfer(file, shell, reasons) });
    }

    private static (double Wall, int Lines) Wall(Given given, Reasons reasons)
    {
        (BoardFile file, PrintBasis basis) = given;
        if (file.Housing.WallThickness is double asked)
        {
            int near = basis.LinesNear(asked);
            string origin = Reasons.Origin(file, "housing.walls");
            return (reasons.Length("shell.wall", asked, origin, Math.Abs(basis.Wall(near) - asked) < Layers.Slack
                ? $"asked for: {near} whole lines"
                    : $"asked for: not whole lines; {near} lines would be {Reasons.Mm(basis.Wall(near))}"), near);
        }

        int lines = file.Housing.WallLines ?? PlanRules.WallLines;
        return (reasons.Length("shell.wall", basis.Wall(lines), Reasons.Origin(file, "housing.walls", file.Print.Printer.Name),
            $"{lines} lines of {Reasons.Mm(basis.LineWidth)}, laid {Reasons.Mm(Math.Round(basis.LineSpacing, 3))} apart at layers of "
                + $"{Reasons.Mm(basis.Layer)}"), lines);
    }

    // What stands out farther over the edge than this, mm, is no corner: it wants an opening, or sits in the wrong place.
    private const double CornerOut = 0.5;

    // Air beside such a corner, mm: the spread of board holes and placement, and the flats of a round wall.
    private const double BesideCorner = 0.28;

    // The widest gap round a board, mm, as 'clearance: {board-edge: ...}' takes it. No wall stands back farther for a part: what stands out
    // more sits in the wrong place, and is told by what it meets.
    private const double WidestGap = 10;

    // The fewest lines that a wall is advised to have.
    private const int LeastLines = 2;

    private sealed record Gap(double Width, string From, string Why);

    private static Gap GapFor(BoardFile file, double finish, ImmutableArray<(double Gap, string Why)> needs)
    {
        if (file.Housing.BoardEdgeClearance is double asked)
        {
            return new Gap(asked, Reasons.Origin(file, "housing.clearance.board-edge"), "asked for");
        }

        (double largest, string why) = needs.Append((finish, $"a board edge that is {Edge(file.Board.Edge)}")).MaxBy(n => n.Item1);
        return new Gap(Math.Ceiling(Math.Round(largest * 20, 4)) / 20, Reasons.Rule, $"driven by {why}");
    }

    // What a size fixed from outside leaves of gap, where that is as much as is needed and no more than holds the board in its place.
    private static Gap Sized(Given given, Gap needed, (double Thickness, int Lines) wall, Rim rim, Reasons reasons)
    {
        if (given.File.Housing.Size.Outer is not double asked)
        {
            return needed;
        }

        double board = given.File.Board.Outline is PolygonOutline ? Largest(rim.Filled) : 2 * given.File.Board.Outline.OuterRadius;
        double Outer(double gap, double thickness) => board + (2 * (gap + thickness));
        double gap = ((asked - board) / 2) - wall.Thickness;
        double wanted = Outer(needed.Width, wall.Thickness);
        if (wanted > asked + Layers.Slack)
        {
            int lines = Enumerable.Range(LeastLines, wall.Lines).LastOrDefault(
                count => Outer(needed.Width, given.Basis.Wall(count)) <= asked + Layers.Slack);
            reasons.Refuse(
                "size-too-small", "outer",
                $"{Reasons.Mm(asked)} mm across are {Reasons.Mm(Math.Round(wanted - asked, 2))} mm too few: the board has "
                    + $"{Reasons.Mm(Math.Round(board, 2))} mm, on either side the gap {Reasons.Mm(needed.Width)} mm ({needed.Why}), "
                    + $"the wall {Reasons.Mm(wall.Thickness)} mm.",
                asked, wanted, "mm", default,
                (lines > 0 ? $"'walls: {lines}', or " : "") + $"'size: {{outer: {Reasons.Mm(PlanRules.UpToTenth(wanted))}}}'");
            return needed;
        }

        string from = Reasons.Origin(given.File, "housing.size.outer");
        if (gap > WidestGap + Layers.Slack)
        {
            double most = Outer(WidestGap, wall.Thickness);
            reasons.Refuse(
                "size-too-large", "outer",
                $"{Reasons.Mm(asked)} mm across leave {Reasons.Mm(Math.Round(gap, 2))} mm round the board; more than "
                    + $"{Reasons.Mm(WidestGap)} mm no longer hold it in its place.",
                asked, most, "mm", default, $"'size: {{outer: {Reasons.Mm(Math.Floor(10 * most) / 10)}}}' at most, or thicker 'walls'");
            return new Gap(WidestGap, from, "the widest that holds the board");
        }

        return new Gap(gap, from,
            $"what {Reasons.Mm(asked)} across leave; the least is {Reasons.Mm(needed.Width)}, {needed.Why}");
    }

    private static double Largest(Region region) => Math.Max(region.Bounds.Size.X, region.Bounds.Size.Y);

    private static string Edge(EdgeFinish finish) => finish switch
    {
        EdgeFinish.Clean => "routed clean",
        EdgeFinish.Tabs => "broken off at tabs",
        _ => "scored and broken",
    };

    // What crowds the rim: each thing with the gap that it asks of either wall.
    private sealed record Crowd(double OuterGap, double BoreGap, string Why);

    private static ImmutableArray<Crowd> Crowds(
        Given given, ImmutableArray<Joint> joints, LipRing lip, double wall, Rim rim)
    {
        (BoardFile file, PrintBasis basis) = given;
        var crowds = ImmutableArray.CreateBuilder<Crowd>();
        double fit = file.Print.Printer.LooseFit;

        void BesideLip(Region region, string what) => crowds.Add(new Crowd(
            lip.Reach + fit - rim.InsideOuter(region), lip.TongueReach + fit - rim.OutsideBore(region),
            $"the cover's lip beside {what}"));

        // Connectors with a port interrupt the lip themselves.
        var ported = file.Board.Parts.Where(p => p.Mouth is not null && p.Mouth.PastEdge >= 0).Select(p => p.Ref).ToHashSet();
        foreach (PartEnvelope thing in PartEnvelope.OnTop(file.Board))
        {
            if ((thing.To ?? PlanRules.UnknownHeight) > lip.AboveBoard && !ported.Contains(thing.Ref)
                && lip.Reach + fit - rim.InsideOuter(thing.Outline) <= WidestGap)
            {
                BesideLip(thing.Outline, thing.Ref);
            }
        }

        // Square corners of what sits at a round edge stand out over it; a port's opening is for the mouth, not for them.
        foreach (BoardPart part in file.Board.Parts.Where(part => part.Mouth is null or { PastEdge: <= 0 }))
        {
            Region body = PartEnvelope.OutlineOf(part);
            double outward = -rim.InsideOuter(body);
            double inward = file.Board.Outline.BoreRadius > 0 ? -rim.OutsideBore(body) : 0;
            if (outward <= CornerOut && inward <= CornerOut)
            {
                crowds.Add(
                    new Crowd(outward + BesideCorner, inward + BesideCorner, $"{part.Ref}, whose corners stand out over the board's edge"));
            }
        }

        if (file.Housing.Light.Through == LightThrough.Wall)
        {
            crowds.Add(
                new Crowd(lip.Reach + fit, lip.TongueReach + fit, "the cover's lip, which passes the board's edge where the wall is lit"));
        }

        foreach (Joint joint in joints)
        {
            BesideLip(Region.Disc(joint.Hole.At, Ring.Hole(joint.Covers / 2)), $"the screw head at {joint.Hole.Name}");
            double skin = (InsertHoleDecision.MouthDiameter(joint.Insert) / 2) + InsertHoleDecision.Wall(joint.Insert, basis) - wall;
            crowds.Add(new Crowd(
                skin - rim.InsideOuter(joint.Hole.At),
                skin - (joint.Hole.At.Length - file.Board.Outline.BoreRadius),
                $"the plastic round the insert at {joint.Hole.Name}"));
        }

        return crowds.ToImmutable();
    }

    private static bool BoreOpen(BoardFile file, double wall, double gap, Reasons reasons)
    {
        double bore = file.Board.Outline.BoreRadius;
        if (bore <= 0 || file.Housing.BoreOpen == false)
        {
            if (bore > 0)
            {
                reasons.Choice("shell.bore", "closed", Reasons.Origin(file, "housing.bore"), "asked for");
            }

            return false;
        }

        double left = Math.Round(2 * (bore - gap - wall), 3);
        if (BoreParts.Over(file.Board) is { } over)
        {
            reasons.Choice("shell.bore", "closed", Reasons.Rule, $"{over.Ref} reaches {Reasons.Mm(over.Reach)} over it");
            if (file.Housing.BoreOpen == true)
            {
                reasons.Replace("part-over-bore", over.Ref,
                    $"{over.Ref} reaches {Reasons.Mm(over.Reach)} mm over the bore, where an open bore has its wall; planned closed",
                    over.Reach, 0, "mm", new Point3(over.At.X, over.At.Y, 0), "say 'bore: closed', or move the part off the bore");
            }

            return false;
        }

        if (left >= PlanRules.LeastBore)
        {
            reasons.Choice("shell.bore", "open", Reasons.Origin(file, "housing.bore"), $"about {Reasons.Mm(left)} stay open");
            return true;
        }

        reasons.Choice("shell.bore", "closed", Reasons.Rule, $"walls would leave {Reasons.Mm(Math.Max(0, left))} of the bore");
        if (file.Housing.BoreOpen == true)
        {
            reasons.Replace("bore-too-small", "bore", "walls round the bore leave too little of it; planned closed",
                Math.Max(0, left), PlanRules.LeastBore, "mm", default, "say bore: closed, or take thinner walls");
        }

        return false;
    }

    private static RoundShell Round(BoardOutline outline, double gap, double? boreGap, double wall)
    {
        double inner = outline.OuterRadius + gap;
        double boreOuter = boreGap is double open ? outline.BoreRadius - open : 0;
        return new RoundShell(
            inner + wall, inner, boreOuter, boreGap is null ? 0 : boreOuter - wall, Ring.CountFor(inner + wall));
    }

    private static ShellPlan WithLobes(ShellPlan shell, ImmutableArray<ShellLobe> lobes) => lobes.IsEmpty ? shell : shell with
    {
        Lobes = shell.Lobes.AddRange(lobes),
        Footprint = OutlineOffsets.WithoutSlivers(Region.Union([shell.Footprint, .. lobes.Select(RoundRegions.Lobe)])),
    };

    private static double Chamfer(BoardFile file, ShellPlan shell, Reasons reasons)
    {
        double chamfer = shell.BedChamfer;
        bool possible = shell.Round is not null
            || shell.Footprint.Filled().Loops.All(l => OutlineOffsets.Chamferable(l, chamfer));
        if (!possible)
        {
            return reasons.Length("shell.bed-chamfer", 0, Reasons.Rule, "the outline's corners are too tight for one");
        }

        return reasons.Length("shell.bed-chamfer", chamfer, file.Print.Printer.Name,
            $"45 degrees on every edge that lies on the bed, where the first layers spread by "
                + $"{Reasons.Mm(file.Print.Printer.ElephantFoot)}");
    }
}
