using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Hands;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

public sealed class OpeningTests
{
    private static WrittenBoard Board(string button) => new() { Parts = [$"{{ref: SW1, package: switch-6x6-5, {button}}}"] };

    private static HousingPlan With(string button) => HousingPlanner.Plan(Board(button).Read());

    private static PinHolePlan Hole(HousingPlan plan) => Assert.IsType<PinHolePlan>(Assert.Single(plan.Openings));

    [Fact]
    public void A_button_on_the_back_that_is_to_be_open_gets_a_hole_on_its_axis_a_note_and_a_step()
    {
        HousingPlan plan = With("side: bottom, at: [-14, 2], port: open");
        PinHolePlan hole = Hole(plan);
        Assert.Equal(new Point2(-14, 2), hole.At);
        Assert.Equal(plan.Stack.BoardBottom - 5, hole.Reach, 9);
        Assert.True(hole.Diameter > hole.Pin + 0.4);
        HandStep step = Assert.Single(plan.Steps, each => each.Title.Contains("SW1", StringComparison.Ordinal));
        Assert.Equal(HandPhase.Close, step.Phase);
        Assert.Contains(step.Tools, tool => tool.Contains("pin", StringComparison.Ordinal));
        Assert.Contains("SW1", hole.Note.Text, StringComparison.Ordinal);
        Assert.Contains(plan.Decisions, decision => decision.Path == "openings.SW1.hole");
        Assert.Empty(With("side: bottom, at: [-14, 2]").Openings);
        Assert.Empty(With("side: bottom, at: [-14, 2], port: closed").Openings);
    }

    [Theory]
    [InlineData("keyhole")]
    [InlineData("magnets")]
    [InlineData("tripod")]
    [InlineData("feet")]
    public void Mounts_lettering_and_slots_keep_off_the_hole(string mount)
    {
        // Where each of them would go on a board without the button.
        HousingPlan bare = HousingPlanner.Plan((Board("side: bottom, at: [0, 0]") with { Parts = [], Mount = mount }).Read());
        Point2 wanted = bare.Mount!.Notes[0].At;
        HousingPlan plan = HousingPlanner.Plan((Board(string.Create(System.Globalization.CultureInfo.InvariantCulture,
            $"side: bottom, at: [{Math.Round(wanted.X, 1)}, {Math.Round(wanted.Y, 1)}], port: open")) with
        {
            Mount = mount,
            Housing = ["label: {text: SIDE}"],
        }).Read("housing.vents=auto"));
        Region hole = Hole(plan).Hole;

        // The plate under a tripod's flat may cover it: in use it is taken off.
        Region body = plan.Mount is TripodMountPlan tripod
            ? Region.Disc(tripod.At, Ring.Hole(tripod.BossDiameter / 2)) : Assert.IsAssignableFrom<MountPlan>(plan.Mount).Taken;
        Assert.True(body.Distance(hole) > 0);
        Assert.All(plan.Vents, vent => Assert.True(vent.Outline.Distance(hole) > 0));
        Assert.All(plan.Lettering, line => Assert.True(line.Strokes.Hull().Distance(hole) > 0));
    }

    [Fact]
    public void Posts_whose_place_is_free_and_their_webs_keep_off_the_tube()
    {
        // Rests stand under the rim where no holes are.
        WrittenBoard board = Board("side: bottom, at: [-33, 0], port: open") with { Holes = [] };
        HousingPlan plan = HousingPlanner.Plan(board.Read());
        PinHolePlan hole = Hole(plan);
        Assert.NotEmpty(plan.Bosses);
        Assert.All(plan.Bosses, boss => Assert.True(hole.TakenInside.Distance(boss.At) > boss.Diameter / 2));
        Assert.All(plan.Bosses.SelectMany(boss => boss.Webs), web => Assert.True(web.Distance(hole.Hole) > 0));
    }

    [Fact]
    public void The_tube_ends_before_the_pusher_and_is_left_out_where_a_part_hangs_beside()
    {
        HousingPlan plan = With("side: bottom, at: [-14, 2], port: open");
        PinHolePlan hole = Hole(plan);
        Assert.True(hole.Tube is null || hole.Reach - hole.Tube.Top >= 0.6 - 1e-9);
        WrittenBoard deep = Board("side: bottom, at: [-14, 2], port: open");
        deep = deep with { Parts = [.. deep.Parts, "{ref: C9, size: [5, 5, 14], side: bottom, at: [14, 2]}"] };
        PinHolePlan led = Hole(HousingPlanner.Plan(deep.Read()));
        Assert.True(led.Tube is { } tube && led.Reach - tube.Top < 1 && tube.Top > plan.Stack.FloorTop + 5);
        PinHolePlan crowded = Hole(HousingPlanner.Plan(
            (deep with { Parts = [deep.Parts[0], "{ref: C9, size: [5, 5, 14], side: bottom, at: [-14, 7.6]}"] }).Read()));
        Assert.True(crowded.LedTo < led.LedTo);
    }

    [Theory]
    [InlineData("side: top, at: [0, 0], port: open", "looks to the front")]
    [InlineData("side: bottom, at: [24.7, 24.7], port: open", "hole 1")]
    public void A_button_on_the_front_or_over_a_post_gets_none_and_that_is_told_once(string button, string why)
    {
        HousingPlan plan = With(button);
        Assert.Empty(plan.Openings);
        PlanRefusal refusal = Assert.Single(plan.Refusals, refusal => refusal.Subject == "SW1");
        Assert.Equal("no-way-to-button", refusal.Rule);
        Assert.Contains(why, refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_plug_that_comes_to_no_wall_is_not_told_to_have_no_mouth()
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard
        {
            Parts = ["{ref: J1, package: usb-c-receptacle, side: bottom, at: [0, 0], faces: 90, port: open}"],
        }.Read());
        Assert.Equal("no-way-for-plug", Assert.Single(plan.Refusals, refusal => refusal.Subject == "J1").Rule);
    }
}
