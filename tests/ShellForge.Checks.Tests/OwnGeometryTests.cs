using System.Collections.Immutable;
using ShellForge.Board.Yaml;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.Print;
using ShellForge.Geometry.Measuring;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests;

/// <summary>
/// No rule on printing finds fault with what only the housing has: boards drawn by a seed ask for nothing that can't be printed.
/// </summary>
public class OwnGeometryTests
{
    private static readonly ImmutableArray<IRule> Rules = [new NothingBelow(), new FeatureVanishes(), new WallBetweenLines(),
        new SkinTooThin()];

    // Among them those whose baffle had roofs in the air: beside a gap (19, 35), longer than a bridge (39, 58).
    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 48), 58];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_housing_prints_without_a_word_about_itself(int seed)
    {
        string text = RandomBoards.Text(seed);
        BoardReadResult read = BoardFileReader.Read("board.yaml", text, WrittenBoard.Shipped, []);
        Assert.True(read.File is not null, string.Join('\n', read.Diagnostics) + "\n" + text);
        PrintsWithoutAWord(BuiltHousings.Of(read.File), text);
    }

    [Fact]
    public void A_seat_that_comes_near_the_wall_at_a_slant_leaves_no_wedge_that_closes()
    {
        string path = Repository.At("tests", "boards", "any", "seat-beside-slanted-wall.yaml");
        Assert.Empty(new GapCloses().Check(BuiltHousings.Of(WrittenBoard.At(path))));
    }

    /// <summary>Every part is closed and one body.</summary>
    internal static void IsOfWholeParts(HousingUnderCheck housing) => Assert.All(housing.Parts, part =>
    {
        Assert.True(part.IsSound, $"{part.Name}: {part.InPrint.Defect}");
        Assert.Equal(1, Measure.Shells(part.PrintMesh.Mesh));
    });

    /// <summary>No rule on printing says a word about the housing.</summary>
    internal static void PrintsWithoutAWord(HousingUnderCheck housing, string board)
    {
        Finding[] found = [.. CheckRun.Run(housing, Rules)];
        Assert.True(found.Length == 0, string.Join('\n', found.Select(finding => finding.ToString())) + "\n" + board);
    }
}
