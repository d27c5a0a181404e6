using ShellForge.Benchmarks.Promises;
using ShellForge.Board.Yaml;
using ShellForge.Housing;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests;

/// <summary>
/// Whatever a board file says within the schema, no part of its housing ends in an exception, a broken mesh or loose pieces.
/// </summary>
public class AnyBoardTests
{
    private static readonly string Cases = Repository.At("tests", "boards", "any");

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 12)];

    /// <summary>
    /// Drawn boards that once ended in an exception, in a broken mesh or in pieces, named by what was special about them.
    /// </summary>
    public static TheoryData<string> Names =>
        [.. Directory.GetFiles(Cases, "*.yaml").Select(path => Path.GetFileNameWithoutExtension(path)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_board_drawn_over_the_whole_schema_is_refused_in_words_or_made_of_whole_parts(int seed) =>
        RefusedOrWhole(AnyBoards.Text(seed), 0);

    [Theory]
    [MemberData(nameof(Names))]
    public void A_board_that_once_broke_is_made_of_whole_parts(string name) =>
        RefusedOrWhole(File.ReadAllText(Path.Combine(Cases, name + ".yaml")), 1);

    private static void RefusedOrWhole(string text, int least)
    {
        BoardReadResult read = BoardFileReader.Read("board.yaml", text, WrittenBoard.Shipped, []);
        Assert.True(read.File is not null ^ read.Diagnostics.Any(diagnostic => diagnostic.IsError), text);
        Assert.True(read.File is not null || least == 0, string.Join('\n', read.Diagnostics));
        if (read.File is null)
        {
            return;
        }

        HousingPlan plan = HousingPlanner.Plan(read.File);
        string[] unsound = [.. HousingPromises.Unsound(PartMaker.Make(plan))];
        Assert.True(unsound.Length == 0, $"{string.Join("; ", unsound)}\n{text}");
    }
}
