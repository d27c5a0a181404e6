using ShellForge.Board.Yaml;
using ShellForge.Geometry.Measuring;
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
    // Drawn ones, and those that once ended in an exception or in crumbs: a label longer than any floor, a window as wide as the largest
    // board, the bead at an inner corner.
    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 10), 138, 219, 276];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_board_drawn_over_the_whole_schema_is_refused_in_words_or_made_of_whole_parts(int seed)
    {
        string text = AnyBoards.Text(seed);
        BoardReadResult read = BoardFileReader.Read("board.yaml", text, WrittenBoard.Shipped, []);
        Assert.True(read.File is not null ^ read.Diagnostics.Any(diagnostic => diagnostic.IsError), text);
        if (read.File is null)
        {
            return;
        }

        HousingPlan plan = HousingPlanner.Plan(read.File);
        bool fused = plan.Diffuser.Fit == DiffuserFit.PrintedIn;
        Assert.All(PartMaker.Make(plan), part =>
        {
            Assert.True(part.IsSound && !part.PrintMesh.IsEmpty, $"{part.Name}: {part.InPrint.Defect}\n{text}");
            Assert.True(
                (fused && part.Name is PartNames.Cover or PartNames.Diffuser) || Measure.Shells(part.PrintMesh.Mesh) == 1,
                $"the {part.Name} is in pieces\n{text}");
        });
    }
}
