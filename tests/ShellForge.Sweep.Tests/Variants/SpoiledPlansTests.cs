using System.Diagnostics;
using ShellForge.Board.Yaml;
using ShellForge.Board.Yaml.Variation;
using ShellForge.Sweep.Variants;
using ShellForge.Testing;
using Xunit.Abstractions;

namespace ShellForge.Sweep.Tests.Variants;

/// <summary>
/// Spoiled plans give variants or mistakes with their places, soon: no plan runs away, and no variant leaves the sweep's folder.
/// </summary>
public class SpoiledPlansTests(ITestOutputHelper output)
{
    private const int Runs = 600;

    // A plan may have more combinations than anybody makes; these are looked at.
    private const int Looked = 40;

    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(5);

    private static readonly string[] Plans =
    [
        WrittenPlan.Whole,
        """
        format: shellforge-plan/1
        board: a.yaml
        vary:
          housing.walls: {from: 2, to: 6, step: 1}
        best: {wish: height, along: housing.walls}
        """,
        """
        format: shellforge-plan/1
        board: [a.yaml]
        cases:
          slim: {housing.walls: 2}
          wide: {housing.walls: 6, housing.floor: 3}
        mark: none
        """,
    ];

    [Fact]
    public void A_spoiled_plan_gives_variants_or_mistakes_soon()
    {
        Random dice = FuzzRuns.Dice(31);
        var spoil =
            new SpoiledYaml(dice, [.. SpoiledYaml.WordsOf(SweepPlanReader.SchemaJson()), "housing.walls", "housing.floor", "a.yaml"]);
        int varied = 0;
        int refused = 0;
        var time = new FuzzRuns(Runs);
        while (time.Next())
        {
            string text = spoil.Of(Plans[dice.Next(Plans.Length)]);
            TimeSpan began = Environment.CpuUsage.TotalTime;
            var watch = Stopwatch.StartNew();
            SweepPlanResult read;
            try
            {
                read = SweepPlanReader.Read("plan.yaml", text, WrittenBoard.Shipped);
                if (read.Plan is { } plan)
                {
                    LookAt(plan, text);
                }
            }
            catch (Exception e) when (e is not Xunit.Sdk.XunitException)
            {
                throw new InvalidOperationException($"this plan:\n{text}", e);
            }

            TimeSpan busy = Environment.CpuUsage.TotalTime - began;
            Assert.True((busy < watch.Elapsed ? busy : watch.Elapsed) < Longest, $"{busy.TotalSeconds:0.0} s for\n{text}");
            Assert.True(read.Plan is not null ^ read.Diagnostics.Any(d => d.IsError), text);
            Assert.All(read.Diagnostics, d => Assert.True(d.Message.Length > 0 && d.Line >= 0, text));
            varied += read.Plan is null ? 0 : 1;
            refused += read.Plan is null ? 1 : 0;
        }

        output.WriteLine($"{varied} plans, {refused} refused");
        Assert.True(varied > Runs / 30 && refused > Runs / 4, $"{varied} plans, {refused} refused");
    }

    private static void LookAt(SweepPlan plan, string text)
    {
        var order = new SweepOrder
        {
            Plan = plan,
            Boards =
            [
                .. plan.Boards.Select(b =>
                    new SweepBoard(b.Raw, Path.GetFileName(b.Raw), Orders.SmallBoard, WrittenBoard.Shipped, [])),
            ],
            Version = "1",
        };
        Assert.True(VariantList.Combinations(order) >= 0, text);
        Func<Variant, string> keys = order.Keys();
        var folders = new HashSet<string>(StringComparer.Ordinal);
        foreach (Variant variant in VariantList.Of(order).Take(Looked))
        {
            Assert.Equal(64, keys(variant).Length);
            Assert.True(folders.Add(variant.Folder), text);
            Assert.True(variant.Folder.Length is > 0 and < 200, text);
            Assert.DoesNotContain(variant.Folder, c => c is '/' or '\\' || char.IsControl(c));
            Assert.False(variant.Folder.StartsWith('.'), text);
        }

        // The first is read as its board would be.
        if (VariantList.Of(order).FirstOrDefault() is { } first)
        {
            BoardReadResult board =
                BoardFileReader.Read("buoy.yaml", Orders.SmallBoard, WrittenBoard.Shipped, order.OverridesOf(first));
            Assert.True(board.File is not null ^ board.Diagnostics.Any(d => d.IsError), text);
        }
    }
}
