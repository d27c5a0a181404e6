using System.Text.RegularExpressions;
using ShellForge.Sweep.Variants;

namespace ShellForge.Sweep.Tests.Variants;

public class VariantListTests
{
    private static string[] Told(SweepOrder order) =>
        [.. VariantList.Of(order)
            .Select(v => $"{order.Boards[v.BoardIndex].Stem}:{v.Case}{string.Join(' ', v.Telling.Select(s => s.Value.Text))}")];

    [Fact]
    public void Every_value_meets_every_other_the_last_axis_fastest_then_come_the_cases() => Assert.Equal(
        ["buoy:2 snap", "buoy:2 twist", "buoy:4 snap", "buoy:4 twist", "buoy:slim3"],
        Told(Orders.Of("vary: {housing.walls: [2, 4], housing.closure: [snap, twist]}\ncases: {slim: {housing.walls: 3}}")));

    [Fact]
    public void A_list_ends_when_it_is_asked_to_also_where_every_combination_is_left_out()
    {
        using var stop = new CancellationTokenSource();
        string steps = string.Join(", ", Enumerable.Range(1, 9000));
        SweepOrder order = Orders.Of($"vary: {{a: [{steps}], b: [{steps}], c: [{steps}], x: [1]}}\nexcept: [{{x: 1}}]");
        stop.CancelAfter(TimeSpan.FromMilliseconds(50));

        Assert.Throws<OperationCanceledException>(() => VariantList.Of(order, stop.Token).Any());
    }

    [Fact]
    public void Pairs_go_together_and_exclusions_leave_out() => Assert.Equal(
        ["buoy:2 m2x3-od3.6 snap", "buoy:4 m2x3-od3.6 snap", "buoy:4 m2.5x4-od4.6 twist"],
        Told(Orders.Of(
            """
            vary: {housing.walls: [2, 4]}
            together: [{housing.insert: [m2x3-od3.6, m2.5x4-od4.6], housing.closure: [snap, twist]}]
            except: [{housing.walls: 2, housing.closure: twist}]
            """)));

    [Fact]
    public void Boards_are_an_axis_that_exclusions_know() => Assert.Equal(
        ["a:2", "a:4", "b:4"],
        Told(Orders.OfBoards("vary: {housing.walls: [2, 4]}\nexcept: [{board: b, housing.walls: 2}]",
            [("a.yaml", Orders.SmallBoard), ("b.yaml", Orders.SmallBoard)])));

    [Fact]
    public void What_the_command_line_holds_fixed_tells_no_variants_apart()
    {
        SweepOrder order = Orders.Of("vary: {housing.walls: [2, 4], housing.closure: [snap, twist]}", "housing.walls=3");

        Assert.Equal(["buoy:snap", "buoy:twist"], Told(order));
        Assert.All(VariantList.Of(order), v => Assert.Equal("housing.walls=3", order.OverridesOf(v)[^1].ToString()));
    }

    [Fact]
    public void A_repeated_value_makes_one_variant() =>
        Assert.Equal(["buoy:2", "buoy:4"], Told(Orders.Of("vary: {housing.walls: [2, 4, 2]}")));

    [Fact]
    public void Derived_values_are_filled_in_by_path_or_by_its_end() => Assert.Equal(
        ["name=buoy 2 of m2x3-od3.6", "name=buoy 4 of m2x3-od3.6"],
        VariantList.Of(
            Orders.Of("set: {housing.insert: m2x3-od3.6}\nvary: {housing.walls: [2, 4]}\nname: \"{board} {walls} of {housing.insert}\""))
            .Select(v => v.Settings[^1].Override.ToString()));

    [Fact]
    public void A_name_stays_when_the_plan_grows_or_is_reordered()
    {
        Variant[] small = [.. VariantList.Of(Orders.Of("vary: {housing.walls: [2, 4], housing.closure: [snap, twist]}"))];
        Variant[] large = [.. VariantList.Of(Orders.Of("vary: {housing.closure: [screws, twist, snap], housing.walls: [4, 3, 2]}"))];

        Assert.All(small, v => Assert.Contains(large, other => other.Code == v.Code));
        Assert.Equal(9, large.Select(v => v.Folder).Distinct().Count());
    }

    [Fact]
    public void Folders_are_short_and_safe_on_every_file_system()
    {
        SweepOrder order = Orders.Of(
            """
            vary:
              name: [CON, "a/b\\c:d*e?\"<>|", ".hidden.", "ÄÖÜ und mehr", "", "a very long name that goes on and on and on and on, longer than sixty"]
              housing.walls: [2, 4]
            """);
        string[] folders = [.. VariantList.Of(order).Select(v => v.Folder)];

        Assert.Equal(12, folders.Distinct(StringComparer.OrdinalIgnoreCase).Count());
        Assert.All(folders, folder => Assert.Matches(new Regex("^[a-z0-9][a-z0-9._-]{0,58}[a-z0-9]$"), folder));
    }

    [Fact]
    public void Shares_take_every_variant_once()
    {
        Variant[] all = [.. VariantList.Of(Orders.Of("vary: {housing.floor: {from: 1, to: 3, count: 41}}"))];
        for (int n = 1; n <= 7; n++)
        {
            int[] taken = [.. Enumerable.Range(0, n).SelectMany(i => all.Where(new Shard(i, n).Has)).Select(v => v.Number).Order()];
            Assert.Equal(all.Select(v => v.Number), taken);
        }
    }

    [Fact]
    public void A_key_changes_with_everything_that_decides_a_variant_and_with_nothing_else()
    {
        static string Key(SweepOrder order) => order.Keys()(VariantList.Of(order).First());
        const string plan = "vary: {housing.walls: [2, 4]}";
        SweepOrder order = Orders.Of(plan);
        string[] others =
        [
            Key(Orders.Of("vary: {housing.walls: [4, 2]}")),
            Key(Orders.Of(plan + "\nset: {housing.floor: 2.2}")),
            Key(Orders.Of(plan + "\nmark: names")),
            Key(Orders.Of(plan, "housing.floor=2.2")),
            Key(Orders.OfBoards(plan, [("buoy.yaml", Orders.SmallBoard + "\n# longer")])),
            Key(order with { Version = "1.2.4" }),
            Key(order with { FindingsOnly = true }),
            Key(order with { Formats = [Output.Files.OutputFormat.Stl] }),
            Key(order with { Boards = [order.Boards[0] with { ProfileTexts = [("own.yaml", "filaments: {}")] }] }),
        ];

        Assert.Equal(others.Length + 1, others.Append(Key(order)).Distinct().Count());
        Assert.Equal(Key(order), Key(Orders.Of("# a comment\n\n" + plan.Replace("[2, 4]", "[2, 4, 5]", StringComparison.Ordinal))));
    }
}
