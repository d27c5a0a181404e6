using ShellForge.Board.Yaml.Variation;
using ShellForge.Sweep.Folder;
using ShellForge.Sweep.Rows;
using ShellForge.Sweep.Running;
using ShellForge.Sweep.Seeking;
using ShellForge.Sweep.Variants;
using ShellForge.Testing;

namespace ShellForge.Sweep.Tests.Seeking;

public class SeekingTests
{
    // Three ways a figure runs along 64 steps: falling until a stop, rising from a stop on, one lowest place between stops.
    [Theory]
    [InlineData("monotone", "height", 0)]
    [InlineData("monotone", "plastic", 1)]
    [InlineData("smooth", "coolness", 2)]
    public void A_search_finds_what_brute_force_finds_with_less_than_a_fifth_of_the_looks(string shape, string wish, int kind)
    {
        string range = "vary: {housing.floor: {from: 1, to: 3, count: 64}}";
        (VariantRow all, int every) = Run($"{range}\nbest: {{wish: {wish}}}", kind);
        (VariantRow found, int looks) = Run($"{range}\nbest: {{wish: {wish}, along: housing.floor, shape: {shape}}}", kind);

        Assert.Equal(64, every);
        Assert.Equal(all.Folder, found.Folder);
        Assert.True(looks * 5 < every, $"{looks} looks");
    }

    [Fact]
    public void Golden_section_finds_the_lowest_step_wherever_it_lies()
    {
        for (int count = 1; count <= 60; count++)
        {
            for (int lowest = 0; lowest < count; lowest++)
            {
                Assert.Equal(lowest, LineSearch.Best(count, RangeShape.Smooth, i => Math.Abs(i - lowest)));
                Assert.Equal(lowest, LineSearch.Best(count, RangeShape.Monotone, i => i < lowest ? null : i));
            }
        }

        Assert.Null(LineSearch.Best(9, RangeShape.Monotone, _ => null));
    }

    [Fact]
    public void The_best_has_no_stop_ties_go_to_the_first_and_what_limits_it_is_told()
    {
        var wish = new BestWish([("height", 1)], null, RangeShape.Smooth);
        Variant[] variants = [.. VariantList.Of(Orders.Of("vary: {housing.walls: [2, 3, 4, 5]}"))];
        VariantRow[] rows =
            [.. variants.Select(
                (v, i) => With(Orders.Row(v, $"{i}", stops: i == 3 ? 1 : 0), height: new[] { 12, 11, 11, 9 }[i], plastic: 10 + i))];

        BestChoice choice = BestChoice.Of(wish, rows);

        Assert.Equal(rows[1].Folder, choice.Row!.Folder);
        Assert.Contains($"{rows[3].Folder} would be better, but: too-low, tub", choice.Limit, StringComparison.Ordinal);
        Assert.Equal([rows[0].Folder, rows[1].Folder],
            BestChoice.Of(wish with { Weights = [("height", 1), ("plastic", 1)] }, rows).Front.Select(row => row.Folder));
        Assert.Equal(wish.ToString(), BestWish.Parse(wish.ToString())!.ToString());
    }

    private static (VariantRow Best, int Made) Run(string plan, int kind)
    {
        using var folder = new TemporaryFolder();
        SweepOrder order = Orders.Of(plan);
        int made = 0;
        using (SweepFolder sweep = SweepFolder.Open(folder.Path, order))
        {
            SweepRun.Run(order, sweep, new SweepPart(Shard.Whole, 2), (variant, key, _) =>
            {
                Interlocked.Increment(ref made);
                int i = variant.Number - 1;
                bool stopped = kind switch { 0 => i < 23, 1 => i > 40, _ => i is < 5 or > 60 };
                VariantRow row = Orders.Row(variant, key, stopped ? 1 : 0);
                double figure = kind switch { 0 => i, 1 => 100 - i, _ => 30 + (0.01 * (i - 37) * (i - 37)) };
                return new MadeVariant(row with { Housing = With(row, figure, figure).Housing! with { WarmestPlastic = figure } }, []);
            }, _ => { }, CancellationToken.None);
        }

        using SweepFolder found = SweepFolder.OpenFound(folder.Path)!;
        return (BestChoice.Of(found.Head.Best!, found.Rows()).Row!, made);
    }

    private static VariantRow With(VariantRow row, double height, double plastic) => row with
    {
        Housing = row.Housing! with { Size = [10, 10, height], Grams = plastic },
    };
}
