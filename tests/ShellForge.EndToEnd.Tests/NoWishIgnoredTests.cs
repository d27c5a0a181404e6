using System.Text.Json.Nodes;
using ShellForge.Board.Description;
using ShellForge.Board.Yaml;
using ShellForge.Board.Yaml.Overriding;
using ShellForge.Checks;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Pipeline;
using ShellForge.Planning;
using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

/// <summary>No wish is taken and ignored: a changed value changes what is planned or told, or a message names it.</summary>
public sealed partial class NoWishIgnoredTests
{
    public static TheoryData<string> Named => [.. Boards.Keys];

    [Theory]
    [MemberData(nameof(Named))]
    public void Every_wish_changes_the_plan_or_is_told(string board)
    {
        string text = Boards[board];
        string planned = Outcome(text, null);
        string[] ignored = [.. Of(Cases, board).Where(wish => Outcome(text, wish) == planned)];

        Assert.True(ignored.Length == 0, string.Join("\n", ignored));
    }

    [Theory]
    [MemberData(nameof(Judged))]
    public void A_key_that_only_rules_look_at_changes_what_they_find(string board, string wish, string rule)
    {
        IRule judge = RuleList.All.Single(each => each.Name == rule);
        string[] found = [.. new[] { null, wish }.Select(set => Found(Boards[board], set, judge))];

        Assert.NotEqual(found[0], found[1]);
    }

    [Fact]
    public void Every_key_of_the_schema_is_among_them()
    {
        JsonNode schema = JsonNode.Parse(File.ReadAllText(Repository.At("tests", "golden", "schema", "board.json")))!;
        var all = new SortedSet<string>(StringComparer.Ordinal);
        Collect(schema, "", all);
        string[] said = [.. Cases.Concat(Rules).Select(line => line.Split(" | ")[1]), .. Boards.Keys.SelectMany(board => Of(Cases, board))];
        string whole = string.Join('\n', said);
        string[] missing = [.. all.Where(path => !whole.Contains(path.Split('.')[^1], StringComparison.Ordinal)).Except(Elsewhere)];

        Assert.True(all.Count > 100, $"{all.Count}");
        Assert.True(missing.Length == 0, string.Join("\n", missing));
    }

    /// <summary>Every wish that is tried on a board.</summary>
    internal static IEnumerable<string> WishesFor(string board) => Of([.. Cases, .. Rules], board);

    private static IEnumerable<string> Of(string[] lines, string board) =>
        lines.Select(line => line.Split(" | ")).Where(parts => parts[0] == board).Select(parts => parts[1]);

    private static string Outcome(string text, string? wish)
    {
        BoardReadResult read = Read(text, wish);
        string told = string.Join('\n', read.Diagnostics.Select(diagnostic => diagnostic.Message));
        return read.File is { } file ? OutcomeText.Of(HousingPlanner.Plan(file)) + told : told;
    }

    private static string Found(string text, string? wish, IRule rule)
    {
        BoardFile file = Read(text, wish).File
            ?? throw new InvalidOperationException($"{wish}: {string.Join('\n', Read(text, wish).Diagnostics)}");
        HousingUnderCheck housing = HousingPipeline.Draw(file);
        return string.Join('\n',
            CheckRun.Run(housing, [rule])
                .Select(finding =>
                    $"{finding.Rule} {finding.Severity} {finding.Subject} {finding.Message} {finding.Measured} {finding.Limit} "
                        + $"{finding.Accepted}"));
    }

    // A file that the reader refuses names the key by its place: that is told, too.
    private static BoardReadResult Read(string text, string? wish) =>
        BoardFileReader.Read("board.yaml", text, WrittenBoard.Shipped, wish is null ? [] : [SetOverride.Parse(wish)]);

    private static void Collect(JsonNode schema, string path, SortedSet<string> all)
    {
        foreach (JsonNode? option in schema["anyOf"]?.AsArray() ?? [])
        {
            Collect(option!, path, all);
        }

        if (schema["items"] is JsonObject items)
        {
            Collect(items, path, all);
        }

        foreach ((string key, JsonNode? own) in schema["properties"]?.AsObject() ?? [])
        {
            string name = path.Length == 0 ? key : $"{path}.{key}";
            all.Add(name);
            Collect(own!, name, all);
        }
    }
}
