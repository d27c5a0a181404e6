using ShellForge.Board.Description;
using ShellForge.Board.Yaml;
using ShellForge.Board.Yaml.Overriding;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;
using ShellForge.Planning.SecondBoards;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests.SecondBoards;

public sealed class SecondBoardTests
{
    private static readonly string[] Leads = ["{name: link, at: [24, 0], conductors: 3, gauge: 26, to: second-board}"];

    private static WrittenBoard Base => new()
    {
        Outline = "{disc: 110}",
        Holes = ["{circle: 100, count: 4, from: 45, diameter: 2.7}"],
        Closure = "screws",
        Wires = Leads,
    };

    private static WrittenBoard OnSpacers => Base with
    {
        Holes = [.. Base.Holes, "{circle: 30, count: 3, from: 90, diameter: 2.7, for: spacer}"],
        Wires = [],
    };

    private static HousingPlan Plan(WrittenBoard board, params string[] overrides) => HousingPlanner.Plan(board.Read(overrides));

    private static SecondBoardPlan Second(HousingPlan plan) => Assert.IsType<SecondBoardPlan>(plan.SecondBoard);

    // The oracle is the list of what stands on the floor, each as its own plan tells it.
    [Theory]
    [InlineData("screws", "none", "none")]
    [InlineData("screws", "magnets", "{round: 4, angle: 270}")]
    [InlineData("snap", "keyhole", "{round: 4, angle: 0, relief: knot}")]
    [InlineData("snap", "tripod", "{round: 4, angle: 30, through: floor}")]
    [InlineData("glue", "none", "{part: J1}")]
    public void All_that_stands_on_the_floor_keeps_off_it(string closure, string mount, string cable)
    {
        foreach (string second in new[]
        {
            "{size: [30, 20], above: 5, hold: strap}", "{round: 24, above: 5, hold: clips}",
            "{size: [34, 24], above: 8, holes: {at: [[14, 9], [-14, -9]], diameter: 2.7}}",
            "{size: [20, 14], above: 5, hold: strap, at: [12, 9], turn: 33}",
        })
        {
            HousingPlan plan = Plan(Base with
            {
                Closure = closure,
                Mount = mount,
                Cable = cable,
                Wires = [Leads[0], .. cable.StartsWith("{round", StringComparison.Ordinal)
                    ? ["{name: tail, at: [-40, 2], conductors: 2, gauge: 26, to: out}"] : Array.Empty<string>()],
                Parts = ["{ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: 1.0}",
                    "{ref: C1, size: [8, 8, 11], side: bottom, at: [-20, 0]}"],
            }, $"housing.second-board={second}", "housing.battery=pouch-401230", "housing.vents=floor",
                "housing.label={text: TWO, where: floor-inside}");
            SecondBoardPlan board = Second(plan);
            Region taken = board.Taken;
            Assert.True(plan.Shell.Cavity.Contains(taken));
            Assert.True(plan.Bay!.Taken.Intersect(taken).IsEmpty);
            foreach (BossPlan boss in plan.Bosses.Where(boss => boss.Use != BossUse.SecondBoard))
            {
                Assert.True(taken.Distance(boss.At) >= (boss.Diameter / 2) + 0.3, boss.Name);
                Assert.All(boss.Webs, web => Assert.True(web.Distance(taken) > 0.3, boss.Name));
            }

            Assert.All(plan.CableExits, exit => Assert.True(exit.TakenInside(plan.Shell, 0).Intersect(taken).IsEmpty, exit.Spoken));
            Assert.All(plan.Openings, opening => Assert.True(opening.TakenInside.Intersect(taken).IsEmpty, opening.Ref));
            Assert.All(plan.Vents, vent => Assert.True(vent.Outline.Intersect(taken).IsEmpty));
            Assert.True(board.Highest + 0.5 <= plan.Stack.BoardBottom + 1e-6, "it meets the LED board");
            Assert.True(board.Lowest - plan.Stack.FloorTop >= 0.6 - 1e-6, "its joints lie on the floor");
        }
    }

    [Fact]
    public void It_is_screwed_where_its_holes_let_screws_pass_clipped_where_the_filament_bends_and_strapped_else()
    {
        const string holes = "holes: {at: [[14, 9], [-14, -9]], diameter: ";
        Assert.Equal(SecondBoardHold.Screws, Hold($"{holes}2.7}}", "petg-black"));
        Assert.Equal(SecondBoardHold.Clips, Hold($"{holes}2.2}}", "petg-black"));
        Assert.Equal(SecondBoardHold.Clips, Hold($"{holes}4.4}}", "petg-black"));
        Assert.Equal(SecondBoardHold.Clips, Hold("below: 2", "petg-black"));
        Assert.Equal(SecondBoardHold.Strap, Hold("below: 2", "pla-black"));

        static SecondBoardHold Hold(string keys, string filament) => Second(Plan(
            Base, $"housing.second-board={{size: [34, 24], above: 5, {keys}}}", $"print.shell={filament}")).Size.Hold;
    }

    [Fact]
    public void Its_posts_carry_it_with_the_housings_inserts_and_its_screws_reach_into_them()
    {
        HousingPlan plan = Plan(Base,
            "housing.second-board={size: [34, 24], above: 5, holes: {at: [[14, 9], [-14, -9]], diameter: 2.7}, at: [3, -2], turn: 90}");
        BossPlan[] posts = [.. plan.Bosses.Where(boss => boss.Use == BossUse.SecondBoard)];
        ScrewJointPlan[] screws = [.. plan.Screws.Where(screw => screw.Use == ScrewUse.SecondBoard)];
        Assert.Equal(2, posts.Length);

        // A quarter turn carries [14, 9] to [-9, 14].
        Assert.Equal(0, Point2.Distance(posts[0].At, new Point2(3 - 9, -2 + 14)), 3);
        Assert.Equal(0, Point2.Distance(posts[1].At, new Point2(3 + 9, -2 - 14)), 3);
        Assert.All(posts, post => Assert.True(post.Hole!.PlasticBelow >= 1.2 - 1e-6 && post.Top == Second(plan).Seat));
        Assert.All(screws, screw =>
        {
            Assert.True(screw.Engagement >= screw.EngagementWanted - 1e-6 && screw.TipGap >= 0.5 - 1e-6);
            Assert.Equal(Second(plan).Top, screw.SeatZ, 6);
        });
        Assert.Equal(plan.Screws.Length, plan.Screws.Select(screw => screw.Name).Distinct().Count());
        Assert.Equal(plan.Bosses.Length, plan.Bosses.Select(boss => boss.Name).Distinct().Count());
    }

    [Fact]
    public void Clips_are_as_long_as_their_filament_needs_across_its_layers()
    {
        SecondBoardPlan second = Second(Plan(Base, "housing.second-board={size: [34, 24], above: 5, hold: clips}"));
        SecondBoardClips clips = second.Size.Clips!;

        // A beam held at one end: 1.5 thickness bend / length squared; the bend is the hook's reach and 0.2 of the printer.
        double length = second.Top + clips.Play + clips.Reach - second.FloorTop;
        Assert.InRange(1.5 * clips.Thickness * (clips.Reach + 0.2) / (length * length), 0.004, 0.008);
        Assert.True(clips.Reach >= second.Size.Gap + 0.3 - 1e-9, "it slips out where it lies against the other wall");
    }

    [Fact]
    public void Room_under_the_led_board_grows_with_what_stands_on_it_and_says_so()
    {
        HousingPlan low = Plan(Base, "housing.second-board={size: [34, 24], above: 5, hold: strap}");
        HousingPlan high = Plan(Base, "housing.second-board={size: [34, 24], above: 15, hold: strap}");
        Assert.Equal(10, high.Stack.BelowBoard - low.Stack.BelowBoard, 1);
        Assert.Contains("second board", high.Stack.BelowBoardFor, StringComparison.Ordinal);
        Assert.Contains(high.Decisions, decision => decision.Path == "second-board.place");
    }

    [Fact]
    public void Its_wires_have_room_to_bend_at_the_end_that_looks_to_their_pads()
    {
        foreach (int side in new[] { 1, -1 })
        {
            HousingPlan plan = Plan(
                Base with { Wires = [$"{{name: link, at: [{40 * side}, 3], conductors: 4, diameter: 1.5, to: second-board}}"] },
                "housing.second-board={size: [30, 20], above: 2, hold: strap}");
            SecondBoardPlan second = Second(plan);
            Assert.True(Point2.Dot(Point2.Polar(1, second.Turn), new Point2(side, 0)) >= 0);
            Assert.Equal(6, second.Size.WireBend, 6);
            Point2 bent = second.WireEnd + Point2.Polar(second.Size.Gap + second.Size.Wall + 5.9, second.Turn);
            Assert.True(second.Taken.Contains(bent));
            Assert.True(plan.Stack.BoardBottom - second.Top >= 6);
            Assert.NotNull(SecondBoardHands.WireLength(plan));
        }
    }

    [Fact]
    public void A_second_board_without_a_place_is_told_and_the_housing_is_planned_without_it()
    {
        HousingPlan large = Plan(Base, "housing.second-board={size: [100, 70], above: 5}");
        Assert.Null(large.SecondBoard);
        Assert.Single(large.Refusals, refusal => refusal.Rule == "second-board-without-place");
        HousingPlan aside = Plan(Base, "housing.second-board={size: [30, 20], above: 5, at: [45, 0], turn: 0}");
        Assert.True(Assert.Single(aside.Refusals, refusal => refusal.Rule == "second-board-without-place").Measured > 10);
        Assert.DoesNotContain(aside.Steps, step => step.Title == "Put the second board in");
    }

    [Fact]
    public void It_goes_in_before_the_led_board()
    {
        HousingPlan plan = Plan(Base, "housing.second-board={size: [34, 24], above: 5, hold: strap}", "housing.battery=aaa");
        string[] titles = [.. plan.Steps.Select(step => step.Title)];
        int at = Array.IndexOf(titles, "Put the second board in");
        Assert.True(at >= 0 && titles[at + 1] == "Put the board in");
        Assert.Contains(plan.Shopping, item => item.Item.StartsWith("hook-and-loop strap", StringComparison.Ordinal));
    }

    [Fact]
    public void On_spacers_it_hangs_behind_the_led_board_with_screws_from_both_sides()
    {
        HousingPlan plan = Plan(OnSpacers, "housing.second-board={round: 40, above: 3, below: 2, spacers: 10}");
        Assert.Null(plan.SecondBoard);
        Assert.Equal(3, plan.Spacers.Length);

        // 1.6 of board and 3 of thread: 5 is the first stock length, 3.4 of it in a spacer of 10.
        Assert.All(plan.Spacers, spacer => Assert.Equal((5.0, 5.0), (spacer.FrontScrew, spacer.BackScrew)));
        Assert.Contains(plan.Shopping, item => item.Count == 3
            && item.Item.StartsWith("hexagonal spacer M2.5 x 10", StringComparison.Ordinal));
        Assert.Contains(plan.Shopping, item => item.Count == 6 && item.Item.StartsWith("screw M2.5 x 5 ", StringComparison.Ordinal));

        // Spacers, laminate, and the screws' heads of 2.1, which stand farther down than the 2 mm of joints.
        Assert.True(plan.Stack.BelowBoard >= 10 + 1.6 + 2.1 + 0.6 - 1e-6);
        Assert.Contains("second-board", plan.Stack.BelowBoardFor, StringComparison.Ordinal);
        Assert.All(plan.Bosses, boss => Assert.True(boss.At.Length - (boss.Diameter / 2) > 20, boss.Name));
        Assert.Contains(plan.Steps, step => step.Title == "Hang the second board behind the LED board");
    }

    [Fact]
    public void Spacer_screws_that_meet_are_told_with_the_length_that_works()
    {
        PlanRefusal told = Assert.Single(
            Plan(OnSpacers, "housing.second-board={round: 40, above: 1, spacers: 4}").Refusals,
            refusal => refusal.Rule == "spacer-screws-meet");
        Assert.Equal(5.4, told.Limit, 3);
        Assert.Contains("spacers: 6", told.Remedy, StringComparison.Ordinal);
        Assert.DoesNotContain(Plan(OnSpacers, "housing.second-board={round: 40, above: 1, spacers: 6}").Refusals,
            refusal => refusal.Rule == "spacer-screws-meet");
    }

    [Theory]
    [InlineData("{size: [30, 20], above: 5, hold: screws}", "no-holes")]
    [InlineData("{size: [30, 20], above: 5, spacers: 8}", "no-spacer-holes")]
    [InlineData("{size: [30, 20], above: 5, holes: {at: [[20, 0]], diameter: 2.7}}", "hole-off-second-board")]
    [InlineData("{size: [30, 20], above: 5, at: [1500, 0]}", "second-board-off-board")]
    public void What_cannot_be_is_told(string second, string code)
    {
        BoardReadResult read = BoardFileReader.Read(
            "board.yaml", Base.Text, WrittenBoard.Shipped, [SetOverride.Parse($"housing.second-board={second}")]);
        Assert.Single(read.Diagnostics, diagnostic => diagnostic.Code == code);
        Assert.Null(read.File);
    }

    [Fact]
    public void On_many_boards_it_never_meets_posts_battery_or_walls()
    {
        var dice = new Random(20_260_311);
        int placed = 0;
        for (int i = 0; i < 40; i++)
        {
            string shape = dice.Next(2) == 0 ? FormattableString.Invariant($"size: [{dice.Next(12, 44)}, {dice.Next(12, 30)}]")
                : FormattableString.Invariant($"round: {dice.Next(12, 34)}");
            string hold = new[] { "auto", "clips", "strap" }[dice.Next(3)];
            HousingPlan plan = Plan(
                Base with
                {
                    Closure = new[] { "snap", "screws", "twist", "glue" }[dice.Next(4)],
                    Mount = dice.Next(2) == 0 ? "none" : "keyhole",
                },
                FormattableString.Invariant(
                    $"housing.second-board={{{shape}, above: {dice.Next(0, 12)}, below: {dice.Next(0, 5)}, hold: {hold}}}"),
                dice.Next(2) == 0 ? "housing.battery=aaa" : "housing.vents=floor");
            if (plan.SecondBoard is not { } second)
            {
                continue;
            }

            placed++;
            Region taken = second.Taken;
            Assert.True(plan.Shell.Cavity.Contains(taken));
            Assert.True(plan.Bay is null || plan.Bay.Taken.Intersect(taken).IsEmpty);
            Assert.All(plan.Bosses.Where(boss => boss.Use != BossUse.SecondBoard),
                boss => Assert.True(taken.Distance(boss.At) > boss.Diameter / 2, boss.Name));
            Assert.True(second.Highest < plan.Stack.BoardBottom && second.Lowest > plan.Stack.FloorTop);
        }

        Assert.True(placed > 25, $"only {placed} found a place");
    }
}
