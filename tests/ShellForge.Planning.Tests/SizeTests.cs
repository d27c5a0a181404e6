using System.Globalization;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

/// <summary>Sizes that are fixed from outside.</summary>
public sealed class SizeTests
{
    private static readonly string[] Outlines =
        ["{disc: 80}", "{ring: {outer: 96, bore: 46}}", "{polygon: [[-40, -30], [40, -30], [40, 30], [-40, 30]]}"];

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 10)];

    private static HousingPlan Plan(WrittenBoard board, string size) =>
        HousingPlanner.Plan((board with { Housing = [.. board.Housing, $"size: {{{size}}}"] }).Read());

    private static HousingPlan Plan(string size) => Plan(new WrittenBoard(), size);

    private static double Across(HousingPlan plan) =>
        Math.Max(plan.Shell.Footprint.Bounds.Size.X, plan.Shell.Footprint.Bounds.Size.Y);

    private static PlanRefusal[] OfSize(HousingPlan plan) =>
        [.. plan.Refusals.Where(each => each.Rule.StartsWith("size-", StringComparison.Ordinal))];

    // From far too small to far too large: met to the hundredth, or told by how much it is missed, and the size that is named is met.
    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_size_is_met_or_refused_with_one_that_is_met(int seed)
    {
        var dice = new Random(seed);
        WrittenBoard board = new()
        {
            Outline = Outlines[seed % Outlines.Length],
            Holes = [],
            Pixels = "{package: \"2020\", circle: 54, count: 14, from: 90, direction: cw}",
            Walls = dice.Next(2, 6),
            Closure = dice.Next(2) == 0 ? "snap" : "glue",
            Light = $"{{through: front, look: blend, window: 10, evenness: {(dice.Next(2) == 0 ? "dots" : "soft")}}}",
            Parts = dice.Next(2) == 0 ? ["{ref: C9, size: [6.3, 6.3, 7.7], side: bottom, at: [20, 16]}"] : [],
            Cable = dice.Next(2) == 0 ? "none" : "{round: 4, angle: 270}",
        };
        HousingPlan free = HousingPlanner.Plan(board.Read());
        double outer = Math.Round(Across(free) + dice.Next(-60, 240) / 10.0, 1);
        double height = Math.Round(free.Stack.Front + dice.Next(-80, 240) / 10.0, 1);
        HousingPlan plan = Plan(board, string.Create(CultureInfo.InvariantCulture, $"outer: {outer}, height: {height}"));
        PlanRefusal[] told = OfSize(plan);
        Assert.All(told, each => Assert.Empty(MessageStyle.Faults(each.Message, each.Remedy)));
        PlanRefusal[] stops = [.. told.Where(each => !each.IsReplaced)];
        if (!stops.Any(each => each.Subject == "outer"))
        {
            Assert.Equal(outer, Across(plan), 0.02);
        }

        if (!stops.Any(each => each.Subject == "height"))
        {
            Assert.InRange(height - plan.Stack.Front, -1e-6, 0.2 - 1e-6);
        }

        foreach (PlanRefusal stop in stops)
        {
            string key = stop.Subject + ": ";
            string said = stop.Remedy[(stop.Remedy.IndexOf(key, StringComparison.Ordinal) + key.Length)..];
            HousingPlan again = Plan(board, key + said[..said.IndexOf('}', StringComparison.Ordinal)]);
            Assert.DoesNotContain(OfSize(again), each => !each.IsReplaced);
        }
    }

    [Fact]
    public void More_height_than_needed_is_room_under_the_board()
    {
        HousingPlan free = HousingPlanner.Plan(new WrittenBoard().Read());
        HousingPlan high = Plan("height: 25");
        Assert.Equal(25, high.Stack.Front, 6);
        Assert.Equal(free.Stack.BelowBoard + 25 - free.Stack.Front, high.Stack.BelowBoard, 6);
        Assert.Equal(free.Diffuser.Distance, high.Diffuser.Distance, 6);
        Assert.Empty(high.Refusals);
        Assert.Contains("the height asked for", Assert.Single(high.Decisions, each => each.Path == "stack.below-board").Why,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_little_less_brings_the_diffuser_nearer_and_much_less_is_refused_by_what_stands_under_the_board()
    {
        WrittenBoard tall = new() { Parts = ["{ref: C9, size: [6.3, 6.3, 7.7], side: bottom, at: [20, 0]}"] };
        HousingPlan free = HousingPlanner.Plan(tall.Read());
        string less = (free.Stack.Front - 1).ToString(CultureInfo.InvariantCulture);
        HousingPlan near = Plan(tall, $"height: {less}");
        PlanRefusal note = Assert.Single(near.Refusals);
        Assert.Equal(("size-costs-evenness", true), (note.Rule, note.IsNoted));
        Assert.Equal(free.Diffuser.Distance - 1, near.Diffuser.Distance, 6);
        Assert.Equal(free.Stack.BelowBoard, near.Stack.BelowBoard, 6);
        PlanRefusal stop = Assert.Single(OfSize(Plan(tall, "height: 9")), each => each.Rule == "size-too-small");
        Assert.Contains("for C9", stop.Message, StringComparison.Ordinal);
        Assert.False(stop.IsReplaced);
    }

    [Fact]
    public void Walls_of_fewer_lines_are_advised_where_they_make_the_size()
    {
        HousingPlan plan = Plan(new WrittenBoard { Walls = 6 }, "outer: 84.5");
        PlanRefusal stop = Assert.Single(plan.Refusals, each => each.Rule == "size-too-small");
        Assert.Contains("'walls: 4'", stop.Remedy, StringComparison.Ordinal);
        Assert.Empty(Plan(new WrittenBoard { Walls = 4 }, "outer: 84.5").Refusals);
    }

    [Fact]
    public void A_height_between_two_layers_and_ears_that_stand_out_are_told()
    {
        PlanRefusal note = Assert.Single(Plan("height: 25.1").Refusals);
        Assert.Equal(("size-between-layers", true), (note.Rule, note.IsNoted));
        WrittenBoard ears = new()
        {
            Holes = ["{circle: 66, count: 4, from: 45, diameter: 2.7}"],
            Pixels = "{package: \"2020\", circle: 58, count: 16, from: 90, direction: cw}",
            Closure = "screws",
        };
        Assert.Single(Plan(ears, "outer: 86").Refusals, each => each.Rule == "size-with-ears");
        Assert.DoesNotContain(Plan(ears with { Closure = "snap" }, "outer: 86").Refusals, each => each.Rule == "size-with-ears");
    }
}
