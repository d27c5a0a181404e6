using System.Collections.Immutable;
using ShellForge.Board.Yaml;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
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

    // Over a low notch beside a gap the baffle's rim still ends in the air: known, and the only fault that is left.
    private static readonly int[] HangingRims = [19, 35, 39];

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 48)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_housing_prints_without_a_word_about_itself(int seed)
    {
        string text = RandomBoards.Text(seed);
        BoardReadResult read = BoardFileReader.Read("board.yaml", text, WrittenBoard.Shipped, []);
        Assert.True(read.File is not null, string.Join('\n', read.Diagnostics) + "\n" + text);
        PrintsWithoutAWord(BuiltHousings.Of(read.File), HangingRims.Contains(seed), text);
    }

    /// <summary>No rule on printing says a word about the housing, but that something hangs in the air where that is known.</summary>
    internal static void PrintsWithoutAWord(HousingUnderCheck housing, bool isKnownToHang, string board)
    {
        Finding[] found = [.. CheckRun.Run(housing, Rules)];
        string told = string.Join('\n', found.Select(finding => finding.ToString())) + "\n" + board;
        Assert.True(isKnownToHang ? found.Length > 0 && found.All(finding => finding.Rule == "nothing-below") : found.Length == 0, told);
    }
}
