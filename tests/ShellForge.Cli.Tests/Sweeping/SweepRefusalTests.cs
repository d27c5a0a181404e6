namespace ShellForge.Cli.Tests.Sweeping;

/// <summary>Plans of sweeps that nobody can wait for are refused before anything is made.</summary>
public class SweepRefusalTests
{
    private static Bench WithPlan(string plan)
    {
        var bench = new Bench();
        bench.Folder.Write("board.yaml", Bench.SmallBoard);
        bench.Folder.Write("plan.yaml", $"format: shellforge-plan/1\nboard: board.yaml\n{plan}\n");
        return bench;
    }

    // Seven paths with as many values each.
    private static string Axes(int values) => "vary:\n" + string.Concat(
        new[] { "housing.walls", "housing.floor", "name", "power.brightness", "housing.insert", "housing.closure", "print.shell" }
            .Select(path => $"  {path}: [{string.Join(", ", Enumerable.Range(1, values).Select(i => $"v{i}"))}]\n"));

    [Theory]
    [InlineData("--dry-run")]
    [InlineData("--findings-only")]
    public async Task A_plan_of_more_combinations_than_anybody_makes_is_refused_at_once_with_their_number(string option)
    {
        using Bench bench = WithPlan(Axes(100));

        int exit = await Task.Run(() => bench.Run("sweep", "plan.yaml", "-o", "lamps", option)).WaitAsync(TimeSpan.FromSeconds(20));

        Assert.Equal((int)ExitCode.BadInput, exit);
        Assert.Contains("the plan has about 1E+14 combinations, and a sweep takes up to 1,000,000", bench.Err, StringComparison.Ordinal);
        Assert.Contains("several plans", bench.Err, StringComparison.Ordinal);
        Assert.False(Directory.Exists(bench.Folder.File("lamps")));
    }

    [Fact]
    public void A_plan_that_is_just_too_large_is_told_its_number()
    {
        using Bench bench = WithPlan(Axes(8));

        Assert.Equal((int)ExitCode.BadInput, bench.Run("sweep", "plan.yaml", "--dry-run"));

        Assert.Contains("the plan has 2,097,152 combinations", bench.Err, StringComparison.Ordinal);
    }
}
