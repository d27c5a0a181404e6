using System.Text.RegularExpressions;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests;

public partial class PlanRuleTests
{
    // Calls that refuse or replace a wish, and refusals of closures, with the name as their first argument.
    [GeneratedRegex("""(?:Refuse|Replace|PlanRefusal|ClosureObstacle|new)\(\s*"([a-z]+(?:-[a-z]+)+)",""")]
    private static partial Regex Refusals();

    [Fact]
    public void Every_name_under_which_the_plan_refuses_something_is_explained_and_no_other()
    {
        string folder = Path.Combine(Repository.Root, "src", "ShellForge.Planning");
        string[] told =
        [
            .. Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories)
                .Where(path => !path.Contains("/obj/", StringComparison.Ordinal))
                .SelectMany(path => Refusals().Matches(File.ReadAllText(path))).Select(match => match.Groups[1].Value)
                .Distinct().Order(StringComparer.Ordinal),
        ];

        Assert.True(told.Length > 20, $"only {told.Length} names were found in {folder}");
        Assert.Equal(told, PlanRule.All.Select(rule => rule.Name));
        Assert.Empty(told.Intersect(RuleList.All.Select(rule => rule.Name)));
    }
}
