using System.Collections.Concurrent;
using System.Text.Json;
using ShellForge.Sweep.Folder;
using ShellForge.Sweep.Rows;
using ShellForge.Sweep.Running;
using ShellForge.Sweep.Variants;
using ShellForge.Testing;

namespace ShellForge.Sweep.Tests.Folder;

public class SweepFolderTests
{
    private const string Plan = "vary: {housing.walls: [2, 3, 4], housing.floor: [1.6, 2.0, 2.4, 2.8]}";

    private static List<string> Run(SweepOrder order, TemporaryFolder folder, Shard? shard = null,
        Func<Variant, string, CancellationToken, MadeVariant>? make = null) =>
        [.. Orders.Run(order, folder.Path, new SweepPart(shard ?? Shard.Whole, 3), make).Select(row => row.Folder)];

    [Fact]
    public void A_second_run_makes_nothing_and_writes_nothing()
    {
        using var folder = new TemporaryFolder();
        SweepOrder order = Orders.Of(Plan);

        Assert.Equal(12, Run(order, folder).Count);
        var before = Orders.Snapshot(folder);
        Assert.Empty(Run(order, folder));
        Assert.Equal(before, Orders.Snapshot(folder));
    }

    [Fact]
    public void A_plan_that_grows_makes_only_what_is_new()
    {
        using var folder = new TemporaryFolder();
        Run(Orders.Of(Plan), folder);

        SweepOrder grown = Orders.Of(Plan.Replace("[2, 3, 4]", "[4, 5, 2, 3]", StringComparison.Ordinal));

        Assert.Equal(VariantList.Of(grown).Where(v => v.Telling[0].Value.Text == "5").Select(v => v.Folder).Order(),
            Run(grown, folder).Order());
    }

    [Fact]
    public void A_folder_that_was_deleted_is_made_again_alone()
    {
        using var folder = new TemporaryFolder();
        SweepOrder order = Orders.Of(Plan);
        Run(order, folder);
        string gone = VariantList.Of(order).ElementAt(5).Folder;
        Directory.Delete(folder.File(gone), recursive: true);

        Assert.Equal([gone], Run(order, folder));
    }

    [Fact]
    public void Shares_joined_in_any_order_give_the_bytes_of_one_run()
    {
        using var whole = new TemporaryFolder();
        using var shared = new TemporaryFolder();
        SweepOrder order = Orders.Of(Plan);
        Run(order, whole);

        foreach (int i in new[] { 2, 0, 1 })
        {
            Run(order, shared, new Shard(i, 3));
        }

        Assert.Equal(Orders.Snapshot(whole), Orders.Snapshot(shared));
    }

    [Fact]
    public void A_line_that_a_killed_writer_left_unfinished_is_no_row()
    {
        using var folder = new TemporaryFolder();
        SweepOrder order = Orders.Of(Plan);
        Run(order, folder);
        var before = Orders.Snapshot(folder);
        string rows = folder.File("sweep-state/rows.jsonl");
        byte[] all = File.ReadAllBytes(rows);
        string last = VariantList.Of(order).Last().Folder;
        Directory.Delete(folder.File(last), recursive: true);
        foreach (int cut in new[] { 1, 2, 40, 300 })
        {
            File.WriteAllBytes(rows, all[..^cut]);
            Assert.Equal([last], Run(order, folder));
            Assert.Equal(before, Orders.Snapshot(folder));
            Directory.Delete(folder.File(last), recursive: true);
        }
    }

    [Fact]
    public void A_run_stopped_anywhere_is_taken_up_again_and_ends_in_the_same_bytes()
    {
        using var whole = new TemporaryFolder();
        SweepOrder order = Orders.Of(Plan);
        Run(order, whole);
        for (int after = 0; after < 12; after++)
        {
            using var folder = new TemporaryFolder();
            using var stop = new CancellationTokenSource();
            int made = 0;
            using (SweepFolder sweep = SweepFolder.Open(folder.Path, order))
            {
                Assert.ThrowsAny<OperationCanceledException>(
                    () => SweepRun.Run(order, sweep, new SweepPart(Shard.Whole, 2), (variant, key, cancel) =>
                {
                    if (Interlocked.Increment(ref made) > after)
                    {
                        stop.Cancel();
                    }

                    return Orders.Written(variant, key, cancel);
                }, _ => { }, stop.Token));
            }

            Assert.InRange(Run(order, folder).Count, 12 - after, 12);
            Assert.Equal(Orders.Snapshot(whole), Orders.Snapshot(folder));
        }
    }

    [Fact]
    public void Two_runs_of_one_plan_in_one_folder_do_no_harm()
    {
        using var whole = new TemporaryFolder();
        using var folder = new TemporaryFolder();
        SweepOrder order = Orders.Of(Plan);
        Run(order, whole);

        using (SweepFolder one = SweepFolder.Open(folder.Path, order))
        using (SweepFolder other = SweepFolder.Open(folder.Path, order))
        {
            Parallel.ForEach([one, other, one, other],
                sweep => SweepRun.Run(order, sweep, new SweepPart(Shard.Whole, 4), Orders.Written, _ => { }, CancellationToken.None));
        }

        Assert.Empty(Run(order, folder));
        Assert.Equal(Orders.Snapshot(whole), Orders.Snapshot(folder));
    }

    [Fact]
    public void A_plan_does_not_start_where_another_one_runs_and_one_overtaken_stops()
    {
        using var folder = new TemporaryFolder();
        SweepOrder order = Orders.Of(Plan);
        SweepOrder other = Orders.Of("vary: {housing.walls: [2, 3]}\nset: {housing.floor: 2.2}");
        using SweepFolder sweep = SweepFolder.Open(folder.Path, order);
        bool refused = false;

        // In the middle of its first variant: another plan is refused; then the list is replaced, as by one that saw no living writer.
        Assert.Throws<SweepTakenOverException>(() => SweepRun.Run(order, sweep, new SweepPart(Shard.Whole, 1), (variant, key, cancel) =>
        {
            refused = Record.Exception(() => SweepFolder.Open(folder.Path, other)) is SweepTakenOverException;
            File.WriteAllText(folder.File("sweep-state/variants.csv"), "shellforge-variants/1,00,0,5,,plan\n");
            return Orders.Written(variant, key, cancel);
        }, _ => { }, CancellationToken.None));

        Assert.True(refused);
        Assert.Equal(["sweep-state"], Directory.GetDirectories(folder.Path).Select(Path.GetFileName));
    }

    [Fact]
    public void One_variant_that_fails_fails_alone()
    {
        using var folder = new TemporaryFolder();
        SweepOrder order = Orders.Of("vary: {housing.walls: [2, 4], housing.cable: [none, {part: J77}]}");

        var rows = new ConcurrentBag<VariantRow>();
        using (SweepFolder sweep = SweepFolder.Open(folder.Path, order))
        {
            SweepRun.Run(order, sweep, new SweepPart(Shard.Whole, 2), new VariantMaker(order).Make, rows.Add,
                CancellationToken.None);
        }

        Assert.Equal(2, rows.Count(row => row.Outcome == VariantOutcome.Made && File.Exists(folder.File($"{row.Folder}/report.json"))));
        VariantRow[] refused = [.. rows.Where(row => row.Outcome == VariantOutcome.Refused)];
        Assert.Equal(2, refused.Length);
        Assert.All(refused, row => Assert.Contains("plan.yaml:3:", row.Faults.Single(), StringComparison.Ordinal));
        Assert.All(refused, row => Assert.False(Directory.Exists(folder.File(row.Folder))));
    }

    [Fact]
    public void A_variant_carries_its_code_in_names_and_in_its_parts_and_says_where_values_come_from()
    {
        SweepOrder order = Orders.Of("vary: {housing.walls: [4], housing.floor: [2.0, 2.4]}", "housing.walls=3");
        Variant[] all = [.. VariantList.Of(order)];
        MadeVariant[] made =
            [.. all.Select(v => new VariantMaker(order).Make(v, new string('0', 64), CancellationToken.None))];

        Assert.Contains($"tub-{all[0].Code}.stl", made[0].Files.Select(file => file.Name));
        Assert.Contains(made[0].Files,
            file => file.Name.StartsWith($"housing-{all[0].Code}", StringComparison.Ordinal)
                && file.Name.EndsWith(".3mf", StringComparison.Ordinal));
        JsonElement resolved =
            JsonDocument.Parse(made[0].Files.Single(file => file.Name == "report.json").Content).RootElement.GetProperty("resolved");
        Assert.Equal(("2", "plan.yaml"),
            (resolved.GetProperty("stack.floor").GetProperty("value").GetString(),
                resolved.GetProperty("stack.floor").GetProperty("from").GetString()));
        Assert.Equal("--set 1:1:15", resolved.GetProperty("shell.wall").GetProperty("from").GetString());

    }

    [Theory]
    [InlineData("names", true)]
    [InlineData("inside", false)]
    public void Parts_that_variants_share_are_equal_unless_each_carries_its_mark(string mark, bool equal)
    {
        SweepOrder order = Orders.Of($"vary: {{power.brightness: [0.2, 0.25]}}\nmark: {mark}");
        MadeVariant[] made =
            [.. VariantList.Of(order)
                .Select(v => new VariantMaker(order).Make(v, new string('0', 64), CancellationToken.None))];

        Assert.Equal(equal, Shape(made[0], "tub") == Shape(made[1], "tub"));
    }

    private static string Shape(MadeVariant made, string part) => made.Row.Housing!.Parts.Single(p => p.Name == part).Shape;
}
