using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Exits;
using ShellForge.Planning.Floors;
using ShellForge.Planning.Front;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Posts;

namespace ShellForge.Planning.Walls;

/// <summary>Heights from the floor to the front, each the largest of its needs, rounded up to whole layers.</summary>
internal static class StackDecision
{
    /// <summary>Least height of the cover's wall from the parting line to the front, mm: enough to hold it while opening.</summary>
    private const double LeastCoverWall = 2.0;

    private sealed record Need(string What, double Height);

    /// <summary>Floor and standoffs, from the largest of what is needed.</summary>
    public static Decided<BoardLevels> Below(
        Given given, ImmutableArray<Joint> joints, InPlan choice, FloorNeeds onFloor)
    {
        (BoardFile file, PrintBasis basis) = given;
        MountNeeds mount = onFloor.Mount;
        var reasons = new Reasons();
        double asked = file.Housing.Floor ?? PlanRules.Floor;
        double floor = basis.Up(Math.Max(asked, mount.Floor));
        reasons.Length("stack.floor", floor, Reasons.Origin(file, "housing.floor"), mount.Floor > asked
            ? $"{mount.Why} needs {Reasons.Mm(mount.Floor)}" : "to whole layers");

        IEnumerable<Need> all = Needs(file, joints, choice.Openings, onFloor, floor, reasons);
        if (choice.Hold.Form.BelowBoard(given, choice.Shell.BoardEdgeGap) is var (what, height))
        {
            all = all.Append(new Need(what, height));
        }

        ImmutableArray<Need> needs =
        [
            .. (given.BelowBoard > 0 ? all.Append(new Need("the height asked for", given.BelowBoard)) : all)
                .OrderByDescending(n => n.Height),
        ];
        double below = basis.UpDistance(needs[0].Height);
        Need? next = needs.FirstOrDefault(n => n.What != needs[0].What);
        string cost = next is null ? ""
            : $"; {needs[0].What} costs {Reasons.Mm(Math.Round(below - basis.UpDistance(next.Height), 3))} over {next.What}";
        reasons.Length("stack.below-board", below, Reasons.Rule, $"driven by {needs[0].What}{cost}");
        double boardBottom = basis.Up(floor + below);
        reasons.Length("stack.standoff-top", boardBottom, Reasons.Rule, "floor and the space under the board");
        return reasons.Of(new BoardLevels(floor, boardBottom, boardBottom + file.Board.Thickness) { BelowBoardFor = needs[0].What });
    }

    /// <summary>The parting line: above the board, and above everything that the tub's wall must close round.</summary>
    public static Decided<double> Parting(
        Given given, InPlan choice, BoardLevels levels, ImmutableArray<OpeningPlan> openings)
    {
        (BoardFile file, PrintBasis basis) = given;
        var reasons = new Reasons();
        LipSection lip = choice.Lip;
        IEnumerable<Need> overOpenings = openings.Select(opening => opening.InWall).Where(wall => wall is not null)
            .Select(wall => new Need(wall!.What, wall.Top + PlanRules.OverOpening));
        if (file.Housing.Light.Through == LightThrough.Wall)
        {
            return LitWall(given, lip, levels, overOpenings, reasons);
        }

        ImmutableArray<Need> needs =
        [
            new("the board's top face", levels.BoardTop + PlanRules.PartingOverBoard),
            new("the cover's lip over the board", levels.BoardTop + lip.AboveBoard + lip.Overlap),
            .. overOpenings,
            .. choice.Hold.Form.OverBoard(given, choice.Shell.BoardEdgeGap, lip)
                .Select(need => new Need(need.What, levels.BoardTop + need.Height)),
            .. AtTheRim(file, choice.Room)
                .Select(part =>
                    new Need($"{part.Ref}, which stands under the cover's wall", levels.BoardTop + part.To!.Value + PlanRules.Beside)),
        ];
        Need driver = needs.MaxBy(n => n.Height)!;
        double parting = basis.Up(driver.Height);
        reasons.Length("stack.parting-line", parting, Reasons.Rule, $"driven by {driver.What}");
        return reasons.Of(parting);
    }

    // What stands on the board where the cover's wall, which is thicker than the tub's by the lip, comes down.
    private static IEnumerable<PartEnvelope> AtTheRim(BoardFile file, CoverRoom room) =>
        PartEnvelope.OnTop(file.Board).Where(part => part.To is not null && !room.Cavity.Contains(part.Outline));

    /// <summary>How low the front may lie.</summary>
    public static FrontLimits Limits(BoardFile file, ClosureTraits closure, ImmutableArray<Joint> joints, BoardLevels levels,
        double parting)
    {
        PixelCircle[] up = [.. file.Board.PixelCircles.Where(c => c.Facing == PixelFacing.Up)];
        HashSet<string> refs = [.. up.SelectMany(circle => circle.Pixels).Select(pixel => pixel.Ref)];
        var leds = new Need("the LEDs", up.Select(c => c.Led.Height.Value).DefaultIfEmpty(0).Max());
        Need[] others =
        [
            .. PartEnvelope.OnTop(file.Board).Where(e => !refs.Contains(e.Ref))
                .Select(e => new Need(e.Ref, e.To ?? PlanRules.UnknownHeight)),
            .. joints.Select(j => new Need($"the screw at {j.Hole.Name}", j.Rises)),
        ];
        Need tallest = others.Prepend(leds).MaxBy(n => n.Height)!;
        double cover = closure.CoverWallLeast(file, LeastCoverWall);
        return new FrontLimits(
            levels.BoardTop + leds.Height,
            levels.BoardTop + tallest.Height + (tallest == leds ? 0 : PlanRules.Beside),
            parting + cover,
            $"{tallest.What} on the board, and {Reasons.Mm(cover)} of cover wall over the parting line",
            others.Length > 0 ? levels.BoardTop + others.Max(n => n.Height) + PlanRules.Beside : 0,
            levels.BoardTop,
            levels.BoardTop + tallest.Height);
    }

    /// <summary>The whole stack.</summary>
    public static Decided<StackPlan> Above(BoardFile file, BoardLevels levels, double parting, FrontLimits limits, FrontDraft front)
    {
        var reasons = new Reasons();
        double inner = limits.LedWindow + front.Diffuser.Distance;
        double outer = inner + front.Diffuser.Thickness;
        var stack = new StackPlan
        {
            FloorTop = levels.FloorTop,
            BoardBottom = levels.BoardBottom,
            BoardTop = levels.BoardTop,
            PartingLine = parting,
            LedWindow = limits.LedWindow,
            DiffuserInner = inner,
            DiffuserOuter = outer,
            Front = outer + front.OverDiffuser,
            BelowParts = PlanRules.BelowPartsOf(file),
            BelowBoardFor = levels.BelowBoardFor,
        };
        reasons.Length("stack.board-top", stack.BoardTop, Reasons.Origin(file, "board.thickness"), "standoffs and laminate");
        reasons.Length("stack.led-window", stack.LedWindow, Reasons.Rule, "the tallest LED on the board");
        reasons.Length("stack.front", stack.Front, Reasons.Origin(file, "housing.size.height"), "height of the whole housing");
        return reasons.Of(stack);
    }

    private static IEnumerable<Need> Needs(
        BoardFile file, ImmutableArray<Joint> joints, ImmutableArray<OpeningInPlan> openings, FloorNeeds onFloor, double floor,
        Reasons reasons)
    {
        yield return new Need("the least room under a board", PlanRules.LeastBelowBoard);
        double clearance = PlanRules.BelowPartsOf(file);
        reasons.Length("stack.below-parts", clearance, Reasons.Origin(file, "housing.clearance.below-parts"),
            "air between the tallest bottom part and the floor");
        foreach (PartEnvelope part in PartEnvelope.OnBottom(file.Board))
        {
            if (part.To is double height)
            {
                double taller = file.Board.Parts.Where(p => p.Ref == part.Ref).Select(p => p.HeightTolerance).DefaultIfEmpty(0).Max();
                string who = taller > 0 ? $"{part.Ref} at its tallest, {Reasons.Mm(taller)} over its listed height," : part.Ref;
                yield return new Need(who, height + clearance);
                continue;
            }

            bool passive = file.Board.Parts.Any(p => p.Ref == part.Ref && p.Passive);
            if (!passive)
            {
                // That nobody knows it is for the rule on heights to tell.
                yield return new Need(part.Ref, PlanRules.UnknownHeight + clearance);
            }
        }

        foreach (Joint joint in joints)
        {
            string driver = joint.Fit.Deepened ? $"the screw's tip at {joint.Hole.Name}" : $"the insert {joint.Insert.Name}";
            yield return new Need(driver, joint.Fit.Depth + PlanRules.PlasticBelow - floor);
        }

        ImmutableArray<ExitForm> exits = ExitForm.Of(file);
        if (file.Board.Wires.Any(w => w.Side == BoardSide.Bottom) || !exits.IsEmpty)
        {
            yield return new Need("soldered wires", PlanRules.WireBlob);
        }

        foreach ((string what, double least) in exits.Select(exit => exit.BelowBoard(file)))
        {
            yield return new Need(what, least);
        }

        foreach ((string who, double height) in openings.Select(opening => opening.BelowBoard).OfType<(string, double)>())
        {
            yield return new Need(who, height);
        }

        if (onFloor.Mount.BelowBoard > 0)
        {
            yield return new Need(onFloor.Mount.Why, onFloor.Mount.BelowBoard);
        }

        if (onFloor.Battery is { } battery)
        {
            yield return new Need(
                battery.Under is null ? "the battery with its strap" : $"the battery with its strap under {battery.Under}",
                battery.BelowBoard);
        }

        if (onFloor.SecondBoard is { } second)
        {
            yield return new Need(
                second.Under is null ? "the second board with what stands on it"
                    : $"the second board with what stands on it under {second.Under}",
                second.BelowBoard);
        }
    }

    private static Decided<double> LitWall(
        Given given, LipSection lip, BoardLevels levels, IEnumerable<Need> overOpenings, Reasons reasons)
    {
        (BoardFile file, PrintBasis basis) = given;
        double axis = levels.BoardTop + LitWallSection.AxisHeight(file);
        LitWallSection section = LitWallSection.Of(given, lip);
        double belowBand = basis.Up(axis - section.HalfHeight) - section.Slope;
        double overFloor = levels.FloorTop + lip.Overlap;
        double wanted =
            basis.Down(Math.Max(overFloor, Math.Min(belowBand, Math.Min(levels.BoardBottom, axis - PlanRules.PartingFromEmission))));
        Need? port = overOpenings.MaxBy(n => n.Height);
        if (port is null || port.Height <= wanted)
        {
            reasons.Length("stack.parting-line", wanted, Reasons.Rule,
                "the wall is lit: the seam lies below the board and away from the LEDs' axis");
            return reasons.Of(wanted);
        }

        double above = basis.Up(Math.Max(port.Height, axis + PlanRules.PartingFromEmission));
        double parting = port.Height <= axis - PlanRules.PartingFromEmission ? basis.Up(port.Height) : above;
        reasons.Length("stack.parting-line", parting, Reasons.Rule, $"driven by {port.What}");
        if (parting > belowBand + Layers.Slack)
        {
            // No band finds a place over such a wall, and that is told.
            return reasons.Of(parting);
        }

        reasons.Replace("lit-wall-seam", "parting line", $"{port.What} needs the tub's wall to reach past the board; the seam shows",
            parting, wanted, "mm", new Point3(0, 0, parting),
            "an opening lower in the wall, power through a soldered cable, or light through the front");
        return reasons.Of(parting);
    }
}

/// <summary>What stands on the floor and is known before the heights are.</summary>
/// <param name="Mount">What a mount asks for.</param>
/// <param name="Battery">The place of a battery's bay; null for none.</param>
/// <param name="SecondBoard">The place of a second board; null for none.</param>
internal sealed record FloorNeeds(MountNeeds Mount, BatteryPlace? Battery, SecondBoardPlace? SecondBoard);
