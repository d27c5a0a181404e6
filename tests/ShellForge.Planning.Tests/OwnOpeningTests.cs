using System.Globalization;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

public sealed class OwnOpeningTests
{
    private static readonly string[] SquareHoles =
        ["{at: [28, 22], diameter: 2.7}", "{at: [-28, 22], diameter: 2.7}", "{at: [-28, -22], diameter: 2.7}",
            "{at: [28, -22], diameter: 2.7}"];

    private static HousingPlan With(params string[] openings) => On(new WrittenBoard(), openings);

    private static HousingPlan On(WrittenBoard board, params string[] openings) => HousingPlanner.Plan(
        (board with { Housing = [.. board.Housing, "openings:", .. openings.Select(opening => $"  - {opening}")] }).Read());

    private static T Only<T>(HousingPlan plan)
        where T : OwnOpeningPlan
    {
        Assert.Empty(plan.Refusals);
        return Assert.IsType<T>(Assert.Single(plan.Openings));
    }

    [Fact]
    public void One_in_the_wall_is_as_large_as_asked_and_what_prints_take_and_starts_on_a_layer()
    {
        HousingPlan plan = With("{name: lever, wall: 20, height: 6.03, slot: [9, 3]}");
        WallOpeningPlan opening = Only<WallOpeningPlan>(plan);
        Box2 box = opening.Outline.Bounds;
        Assert.Equal(9.2, box.Size.X, 0.01);
        Assert.Equal(3.2, box.Size.Y, 0.01);
        Assert.Equal(0, (((box.Min.Y - 0.2) / 0.2) + 0.5) % 1 - 0.5, 0.02);
        Assert.Equal(6.03, opening.AxisZ, 0.11);
        Assert.Equal(20, Angle.Of(opening.Through).Degrees, 0.01);
        Assert.Equal(plan.Shell.Round!.Outer, opening.WallFace, 0.02);
        Assert.Contains(plan.Decisions, decision => decision.Path == "openings.lever.size" && decision.Value == "9.2 x 3.2");
        Assert.Contains(plan.Decisions, decision => decision.Path == "openings.lever.middle"
            && decision.Why.Contains("asked", StringComparison.Ordinal));
        Assert.Contains("lever", opening.Note.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void One_before_a_part_lies_at_its_middle_and_goes_through_the_nearest_wall()
    {
        WrittenBoard board = new()
        {
            Outline = "{polygon: [[-34, -28], [34, -28], [34, 28], [-34, 28]]}",
            Holes = SquareHoles,
            Parts = ["{ref: S1, size: [8, 4, 3], side: bottom, at: [31, 6]}"],
        };
        HousingPlan plan = On(board, "{name: lever, wall: S1, slot: [9, 2]}");
        WallOpeningPlan opening = Only<WallOpeningPlan>(plan);
        Assert.Equal(0, opening.Faces.Degrees, 0.001);
        Assert.Equal(6, opening.Through.Y, 0.001);
        Assert.Equal(plan.Stack.BoardBottom - 1.5, opening.AxisZ, 0.11);
        Assert.Equal(35 - 0.5, opening.OpenTo, 0.51);
        Assert.True(opening.OpenTo <= opening.WallInner);
    }

    [Theory]
    [InlineData("{name: ir, wall: 20, over-board: 4, diameter: 5}")]
    [InlineData("{name: ir, wall: 20, height: 14, rectangle: [6, 4]}")]
    public void The_tubs_wall_closes_over_it_and_the_lip_leaves_it_free(string text)
    {
        HousingPlan plan = With(text);
        WallOpeningPlan opening = Only<WallOpeningPlan>(plan);
        Assert.True(plan.Stack.PartingLine >= opening.Outline.Bounds.Max.Y + 1.2 - 1e-3);
        Assert.Contains(plan.Decisions, decision => decision.Path == "stack.parting-line"
            && decision.Why.Contains("the opening 'ir'", StringComparison.Ordinal));
        (Point3 from, Point3 to) = opening.SightThrough(opening.Outline.Bounds.Centre);
        Region way = Region.Slot(new Point2(from.X, from.Y), new Point2(to.X, to.Y), opening.Outline.Bounds.Size.X - 0.01);
        Assert.True(plan.Cover.Lip.Distance(way) > 0 || plan.Cover.LipBottom >= opening.Outline.Bounds.Max.Y);
        Assert.True(plan.Cover.LipBottom < opening.Outline.Bounds.Max.Y, "the lip hangs as low as the opening");
    }

    [Fact]
    public void One_in_the_floor_lies_where_it_is_asked_and_posts_lettering_mounts_and_vents_keep_off()
    {
        foreach (string mount in new[] { "keyhole", "magnets", "tripod", "feet" })
        {
            HousingPlan bare = HousingPlanner.Plan(new WrittenBoard { Mount = mount }.Read());
            Point2 wanted = bare.Mount!.Notes[0].At;
            HousingPlan plan = On(new WrittenBoard { Mount = mount, Housing = ["label: {text: SIDE}"] },
                string.Create(CultureInfo.InvariantCulture, $"{{name: trim, floor: [{wanted.X:0.0}, {wanted.Y:0.0}], diameter: 4}}"));
            FloorOpeningPlan opening = Assert.IsType<FloorOpeningPlan>(Assert.Single(plan.Openings));
            Assert.Equal(4.2, opening.Outline.Bounds.Size.X, 0.02);
            Region body = plan.Mount is TripodMountPlan tripod
                ? Region.Disc(tripod.At, Ring.Hole(tripod.BossDiameter / 2)) : plan.Mount?.Taken ?? Region.Empty;
            Assert.True(body.IsEmpty || body.Distance(opening.Outline) > 0, mount);
            Assert.All(plan.Lettering, line => Assert.True(line.Strokes.Hull().Distance(opening.Outline) > 0));
            Assert.All(plan.Vents, vent => Assert.True(vent.Outline.Distance(opening.Outline) > 0));
        }
    }

    [Fact]
    public void Rests_and_webs_keep_off_its_way_in_the_floor_and_in_the_wall()
    {
        WrittenBoard bare = new() { Holes = [] };
        HousingPlan before = HousingPlanner.Plan(bare.Read());
        Angle rest = Angle.Of(before.Bosses.First(boss => boss.Use == BossUse.Rest).At);
        HousingPlan plan = On(bare, string.Create(CultureInfo.InvariantCulture,
            $"{{name: air, wall: {rest.Normalized.Degrees:0.0}, height: 4, slot: [8, 2]}}"), "{name: trim, floor: [0, 33], diameter: 6}");
        Assert.Equal(2, plan.Openings.Length);
        Assert.All(plan.Openings, opening => Assert.All(plan.Bosses, boss =>
            Assert.True(opening.TakenInside.Distance(boss.At) > boss.Diameter / 2, $"{opening.Ref} {boss.Name}")));
    }

    [Theory]
    [InlineData("{name: mic, wall: 45, height: 5, diameter: 4}", "the boss of hole 1", "'wall: ")]
    [InlineData("{name: mic, wall: 20, height: 1, diameter: 4}", "into the floor", "'height: 4.2'")]
    [InlineData("{name: mic, wall: 20, height: 30, rectangle: [70, 3]}", "runs away", "narrower")]
    [InlineData("{name: mic, floor: [24, 24], diameter: 4}", "the boss of hole 1", "move it away")]
    [InlineData("{name: mic, floor: [38, 0], diameter: 5}", "past the room", "move it inward")]
    [InlineData("{name: mic, floor: [60, 0], diameter: 5}", "past the room", "move it inward")]
    public void What_stands_in_its_way_is_named_with_a_remedy_and_nothing_is_cut(string text, string obstacle, string remedy)
    {
        HousingPlan plan = With(text);
        Assert.Empty(plan.Openings);
        PlanRefusal refusal = Assert.Single(plan.Refusals);
        Assert.Equal(("opening-without-place", "mic"), (refusal.Rule, refusal.Subject));
        Assert.Contains(obstacle, refusal.Message, StringComparison.Ordinal);
        Assert.Contains(remedy, refusal.Remedy, StringComparison.Ordinal);
        Assert.Empty(MessageStyle.Faults(refusal.Message, refusal.Remedy));
    }

    [Theory]
    [InlineData(45)]
    [InlineData(130)]
    [InlineData(230)]
    public void The_angle_that_a_refusal_names_is_free(int angle)
    {
        string Opening(int at) => $"{{name: mic, wall: {at}, height: 5, diameter: 4}}";
        PlanRefusal refusal = Assert.Single(With(Opening(angle)).Refusals);
        string said = refusal.Remedy[(refusal.Remedy.IndexOf("'wall: ", StringComparison.Ordinal) + 7)..];
        int named = int.Parse(said[..said.IndexOf('\'', StringComparison.Ordinal)], CultureInfo.InvariantCulture);
        Assert.Single(With(Opening(named)).Openings);
    }

    [Theory]
    [InlineData("{name: a, wall: 0, height: 6, diameter: 4}", "{name: b, wall: 5, height: 6, diameter: 4}")]
    [InlineData("{name: a, floor: [0, 0], diameter: 6}", "{name: b, floor: [7, 0], diameter: 6}")]
    public void The_later_of_two_that_leave_too_little_between_them_is_left_out(string first, string second)
    {
        HousingPlan plan = With(first, second);
        Assert.Equal("a", Assert.Single(plan.Openings).Ref);
        PlanRefusal refusal = Assert.Single(plan.Refusals, refusal => refusal.Subject == "b");
        Assert.Contains("the opening 'a'", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void One_too_near_to_a_port_or_to_the_cables_notch_is_left_out_and_farther_off_is_made()
    {
        WrittenBoard port = new()
        {
            Cable = "{part: J1}",
            Parts = ["{ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: 1.0}"],
        };
        HousingPlan near = On(port, "{name: b, wall: 277, height: 4, diameter: 3}");
        Assert.Contains("J1", Assert.Single(near.Refusals, refusal => refusal.Subject == "b").Message, StringComparison.Ordinal);
        Assert.Equal(2, On(port, "{name: b, wall: 300, height: 4, diameter: 3}").Openings.Length);
        WrittenBoard cable = new() { Cable = "{round: 4, angle: 270, relief: tie}" };
        Assert.Contains("the cable's notch", Assert.Single(On(cable, "{name: b, wall: 277, height: 4, diameter: 3}").Refusals).Message,
            StringComparison.Ordinal);
        Assert.Single(On(cable, "{name: b, wall: 300, height: 4, diameter: 3}").Openings);
    }

    [Fact]
    public void An_opening_of_ones_own_is_no_port_to_key_the_board_by_or_to_pry_away_from()
    {
        HousingPlan plan = With("{name: air, wall: 200, height: 4, slot: [8, 2]}");
        HousingPlan bare = HousingPlanner.Plan(new WrittenBoard().Read());
        Assert.Equal(bare.Key.Board.Words, plan.Key.Board.Words);
        Assert.DoesNotContain(plan.Steps, step => step.Text.Contains("port", StringComparison.OrdinalIgnoreCase));
    }

    [Theory]
    [InlineData("window: 10, ", "{name: ir, front: [0, 0], diameter: 4}", "bezel")]
    [InlineData("window: 10, ", "{name: ir, front: {polar: [36, 10]}, diameter: 2}", "bezel")]
    [InlineData("window: 14, ", "{name: ir, front: {polar: [23, 100]}, slot: [3, 2]}", "diffuser")]
    public void One_in_the_front_goes_through_the_bezel_or_through_the_diffuser(string window, string text, string through)
    {
        HousingPlan plan = On(new WrittenBoard { Light = $"{{through: front, look: blend, {window}evenness: soft}}" }, text);
        FrontOpeningPlan opening = Only<FrontOpeningPlan>(plan);
        Assert.Equal(plan.Stack.Front, opening.Front);
        Assert.True(opening.CutFrom < plan.Stack.DiffuserOuter);
        Assert.Contains(plan.Decisions, decision => decision.Path == "openings.ir.place"
            && decision.Why.Contains(through, StringComparison.Ordinal));
        Assert.Equal(PartNames.Cover, opening.NotedOn);
        Assert.Equal(HousingPlanner.Plan(new WrittenBoard
        {
            Light = $"{{through: front, look: blend, {window}evenness: soft}}",
        }.Read()).Stack, plan.Stack);
    }

    [Theory]
    [InlineData("{name: ir, front: {polar: [18, 100]}, diameter: 6}", "the window's edge", "the edge")]
    [InlineData("{name: ir, front: {polar: [40, 100]}, diameter: 6}", "the cover's wall", "inward")]
    [InlineData("{name: ir, front: [0, 60], diameter: 6}", "the cover's wall", "inward")]
    public void One_on_the_windows_edge_or_in_the_covers_wall_is_left_out(string text, string obstacle, string remedy)
    {
        HousingPlan plan = On(new WrittenBoard { Light = "{through: front, look: blend, window: 10, evenness: soft}" }, text);
        Assert.Empty(plan.Openings);
        PlanRefusal refusal = Assert.Single(plan.Refusals);
        Assert.Contains(obstacle, refusal.Message, StringComparison.Ordinal);
        Assert.Contains(remedy, refusal.Remedy, StringComparison.Ordinal);
        Assert.Empty(MessageStyle.Faults(refusal.Message, refusal.Remedy));
    }

    [Fact]
    public void One_at_a_post_of_the_cover_is_left_out_and_a_sheet_that_is_laid_in_is_cut_by_hand()
    {
        HousingPlan screwed = On(new WrittenBoard { Closure = "screws" }, "{name: ir, front: {polar: [33, 45]}, diameter: 4}");
        Assert.Contains("post over the boss of hole 1", Assert.Single(screwed.Refusals, refusal => refusal.Subject == "ir").Message,
            StringComparison.Ordinal);

        HousingPlan sheet = On(
            new WrittenBoard { Diffuser = "{sheet: 2}", Light = "{through: front, look: blend, window: 14, evenness: dots}" },
            "{name: knob, front: {polar: [23, 100]}, diameter: 3}");
        Assert.True(Assert.IsType<FrontOpeningPlan>(Assert.Single(sheet.Openings)).ThroughSheet);
        Assert.Contains(sheet.Steps, step => step.Title.Contains("'knob'", StringComparison.Ordinal)
            && step.Text.Contains("3 mm", StringComparison.Ordinal));
        Assert.DoesNotContain(With("{name: knob, front: [0, 0], diameter: 3}").Steps,
            step => step.Title.Contains("knob", StringComparison.Ordinal));
    }
}
