using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests.Light;

/// <summary>No wish of light is taken and dropped: it changes the plan, or a message names its key.</summary>
public class LightWishTests
{
    private static readonly WrittenBoard Front = new();

    private static readonly WrittenBoard Side = new()
    {
        Outline = "{disc: 60}",
        Holes = ["{circle: 40, count: 4, from: 45, diameter: 2.2, keep-out: 5.0}"],
        Pixels = "{package: 4020-side, circle: 54, count: 16, from: 90, direction: cw, facing: out}",
        Insert = "m2x3-od3.6",
        Light = "{through: wall, look: blend, evenness: soft}",
        Diffuser = "{distance: auto}",
    };

    [Fact]
    public void A_distance_that_a_lit_wall_has_no_use_for_is_told()
    {
        Assert.DoesNotContain(Told(Side), rule => rule == "diffuser-distance-unused");
        Assert.Contains("diffuser-distance-unused", Told(Side with { Diffuser = "{distance: 6}" }));
    }

    [Fact]
    public void The_evenness_asked_of_a_lit_wall_stands_in_the_plan_with_what_becomes_of_it()
    {
        string Said(string evenness) =>
            HousingPlanner.Plan((Side with { Light = $"{{through: wall, look: blend, evenness: {evenness}}}" }).Read())
            .Decisions.Single(decision => decision.Path == "light.evenness").Value;
        Assert.Equal("even", Said("even"));
        Assert.Equal("soft", Said("soft"));
    }

    [Fact]
    public void A_baffle_that_shall_be_joined_is_told_to_stay_loose()
    {
        Assert.DoesNotContain("baffle-not-joined", Told(Front));
        Assert.Contains("baffle-not-joined", Told(Front with { Housing = ["baffle: joined"] }));
        Assert.Contains("baffle-not-joined", Told(Front with { Housing = ["baffle: joined"], Light = "{through: front, look: pixels}" }));
    }

    [Fact]
    public void A_window_narrower_than_the_LEDs_is_told_with_the_width_that_is_built()
    {
        WrittenBoard board = Front with { Pixels = "{package: \"5050\", circle: 46, count: 16, from: 90, direction: cw}" };
        PlanRefusal told = Assert.Single(Refusals(board with { Light = "{through: front, window: 3}" }),
            refusal => refusal.Rule == "window-widened");
        Assert.Equal(5, told.Measured, 6);
        Assert.Equal(3, told.Limit, 6);
        Assert.DoesNotContain("window-widened", Told(board with { Light = "{through: front, window: 8}" }));
    }

    [Fact]
    public void A_ring_of_window_whose_middle_is_too_small_opens_to_a_disc_and_is_told()
    {
        WrittenBoard board = Front with { Pixels = "{package: \"5050\", circle: 20, count: 6, from: 90, direction: cw}" };
        Assert.Contains("window-open-to-middle", Told(board with { Light = "{through: front, window: 16}" }));
        Assert.DoesNotContain("window-open-to-middle", Told(board with { Light = "{through: front, window: 10}" }));
    }

    [Theory]
    [InlineData("{sheet: 3.0}")]
    [InlineData("{fit: drop-in}")]
    public void A_ring_of_window_before_a_diffuser_of_its_own_is_built_as_asked_with_bars_that_hold_its_middle(string diffuser)
    {
        HousingPlan plan = HousingPlanner.Plan((Front with { Diffuser = diffuser, Light = "{through: front, window: 11}" }).Read());

        Assert.False(plan.Cover.Window.Contains(Point2.Origin));
        Assert.Equal("across the window", plan.Decisions.Single(decision => decision.Path == "cover.bars").Value);
        Assert.Empty(plan.Refusals);
    }

    private static ImmutableArray<PlanRefusal> Refusals(WrittenBoard board) => HousingPlanner.Plan(board.Read()).Refusals;

    private static IEnumerable<string> Told(WrittenBoard board) => Refusals(board).Select(refusal => refusal.Rule);
}
