using ShellForge.Planning.Hands;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

public class ClosureTests
{
    [Fact]
    public void A_twist_lock_that_cannot_turn_is_planned_in_every_number_as_the_snap_that_replaces_it()
    {
        HousingPlan refused = HousingPlanner.Plan(WrittenBoard.Sample("tide-lamp", "housing.closure=twist"));
        HousingPlan asked = HousingPlanner.Plan(WrittenBoard.Sample("tide-lamp", "housing.closure=snap"));

        Assert.Contains(refused.Refusals,
            refusal => refusal.Rule == "twist-cannot-turn" && refusal.Message.Contains("tongue", StringComparison.Ordinal));
        Assert.DoesNotContain(asked.Refusals, refusal => refusal.Rule == "twist-cannot-turn");
        Assert.Equal(asked.Stack, refused.Stack);
        Assert.Equal(asked.Cover.LipBottom, refused.Cover.LipBottom);
        Assert.NotNull(refused.Baffle!.Tooth);
        Assert.Equal(asked.Baffle!.Tooth, refused.Baffle.Tooth);
        Assert.Equal(asked.PryNotches.AsEnumerable(), refused.PryNotches.AsEnumerable());
        Assert.NotEmpty(refused.PryNotches);
        Assert.Equal(asked.Key, refused.Key);
        Assert.Equal(asked.Steps.Select(step => step.Text), refused.Steps.Select(step => step.Text));
        Assert.Equal(
            asked.Decisions.Where(decision => decision.Path != "closure").Select(decision => (decision.Path, decision.Value)),
            refused.Decisions.Where(decision => decision.Path != "closure").Select(decision => (decision.Path, decision.Value)));
    }

    [Fact]
    public void A_twist_lock_in_the_way_of_a_cable_is_replaced_by_what_holds_and_the_cable_may_go_through_the_floor()
    {
        HousingPlan plan = HousingPlanner.Plan(new WrittenBoard
        {
            Outline = "{disc: 62}",
            Holes = ["{circle: 53, count: 3, from: 45, diameter: 2.7}"],
            Pixels = "{package: \"2020\", circle: 31, count: 8, from: 90}",
            Wires = ["{name: lead, at: [0, -8], conductors: 2, gauge: 26, to: out}"],
            Cable = "{round: 4.0, angle: 270}",
            Closure = "twist",
            Print = "{printer: fdm-0.4, shell: pla-black, diffuser: pla-white}",
        }.Read());
        PlanRefusal refusal = Assert.Single(plan.Refusals, refusal => refusal.Rule == "twist-cannot-turn");
        Assert.IsType<ScrewClosurePlan>(plan.Closure);
        Assert.DoesNotContain("snap", refusal.Remedy, StringComparison.Ordinal);
        Assert.Contains("through: floor", refusal.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_that_is_told_of_a_twist_lock_speaks_of_a_rib_that_it_does_not_have()
    {
        HousingPlan twist = Of("twist");

        Assert.Null(twist.Key.Rib);
        Assert.DoesNotContain(twist.Decisions, decision => decision.Path == "key.depth");
        Assert.DoesNotContain(twist.Steps.Where(step => step.Phase is HandPhase.Prints or HandPhase.Close), step =>
            (step.Text + step.Check).Contains("rib", StringComparison.Ordinal));
        Assert.DoesNotContain(twist.Steps, step => (step.Text + step.Check).Contains("notch", StringComparison.Ordinal));
        Assert.Contains("rib", Of("snap").Steps.Single(step => step.Phase == HandPhase.Close).Text, StringComparison.Ordinal);
        Assert.Contains("rib", Of("screws").Steps.Single(step => step.Phase == HandPhase.Close).Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("snap")]
    [InlineData("screws")]
    [InlineData("twist")]
    [InlineData("glue")]
    public void Every_closure_tells_how_it_closes_and_how_it_opens_once_each(string closure)
    {
        HousingPlan plan = Of(closure);

        HandStep close = Assert.Single(plan.Steps, step => step.Phase == HandPhase.Close);
        HandStep open = Assert.Single(plan.Steps, step => step.Phase == HandPhase.Open);
        Assert.Contains(PartNames.Cover, close.Held);
        Assert.StartsWith("Unplug", open.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(" at  ", close.Text + open.Text, StringComparison.Ordinal);
        Assert.Equal(plan.Closure.TurnsCover && plan.Baffle is not null, close.Held.Contains(PartNames.Baffle));
        Assert.Equal(plan.Closure is ScrewClosurePlan, !close.Things.IsEmpty);
        Assert.All(plan.Steps, step => Assert.Empty(step.Held.Except(step.Shown)));
        Assert.Equal(plan.Steps.OrderBy(step => step.Phase), plan.Steps);
    }

    [Fact]
    public void Lugs_keep_off_the_openings_of_connectors()
    {
        var board = new WrittenBoard
        {
            Closure = "twist",
            Parts = ["{ref: J1, package: usb-c-receptacle, at: [0, 36.2], rotation: 90, side: bottom, port: open}"],
            Cable = "{part: J1}",
        };
        HousingPlan plan = HousingPlanner.Plan(board.Read());

        var twist = Assert.IsType<TwistClosurePlan>(plan.Closure);
        PortPlan port = Assert.Single(plan.Ports);
        double half = (twist.LugSweep.Degrees + twist.Turn.Degrees) / 2;
        Assert.All(twist.Lugs, lug => Assert.True(
            Geometry.Numerics.Angle.Between(lug + (0.5 * twist.Turn), port.At).Degrees
                > half + Geometry.Numerics.Angle.FromRadians(port.OpeningWidth / 2 / plan.Shell.Round!.Inner).Degrees));
    }

    [Fact]
    public void Numbers_that_builders_of_closures_need_stand_in_the_plan_with_their_reason()
    {
        Assert.Contains(Of("snap").Decisions, decision => decision.Path == "closure.groove.lower");
        Assert.Contains(Of("screws").Decisions, decision => decision.Path == "closure.counterbore-bridge");
        Assert.Contains(Of("twist").Decisions, decision => decision.Path == "closure.ridge.interference");
    }

    private static HousingPlan Of(string closure) => HousingPlanner.Plan(new WrittenBoard { Closure = closure }.Read());

    [Fact]
    public void A_glued_cover_says_so_before_it_is_closed_and_gets_no_notches_for_a_blade()
    {
        HousingPlan plan = Of("glue");
        GlueClosurePlan glue = Assert.IsType<GlueClosurePlan>(plan.Closure);
        Assert.False(glue.Reopens);
        Assert.Empty(plan.PryNotches);
        HandStep close = Assert.Single(plan.Steps, step => step.Phase == HandPhase.Close);
        Assert.Contains("does not come off again", close.Text, StringComparison.Ordinal);
        Assert.Contains(close.Cautions, caution => caution.Risk == "Fumes");
        Assert.Contains(plan.Shopping, item => item.Item.Contains("glue", StringComparison.Ordinal));

        // Two lines of the wall stay beside the groove, and the bond is higher than the wall is thick.
        Assert.True(plan.Shell.Wall - glue.Groove >= 0.85);
        Assert.True(plan.Stack.PartingLine - glue.Groove - plan.Cover.LipBottom >= plan.Shell.Wall);
    }
}
