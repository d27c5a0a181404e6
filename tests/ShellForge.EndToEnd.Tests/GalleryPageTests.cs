using System.Globalization;
using System.Net;
using ShellForge.Board.Description;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

/// <summary>
/// The page of boards of many kinds shows the boards as they are planned now. Its pictures take half a minute to make: they are made by
/// hand, with the command in DEVELOPERS.md.
/// </summary>
public class GalleryPageTests
{
    private static readonly string Page = File.ReadAllText(Repository.At("out-samples", "gallery", "index.html"));

    public static TheoryData<string> Boards =>
        [.. Directory.EnumerateFiles(Repository.At("tests", "boards", "gallery"), "*.yaml")
            .Select(path => Path.GetFileNameWithoutExtension(path)!)];

    [Theory]
    [MemberData(nameof(Boards))]
    public void A_board_of_the_gallery_stands_on_its_page_with_the_size_that_is_planned(string name)
    {
        BoardFile board = WrittenBoard.At(Repository.At("tests", "boards", "gallery", name + ".yaml"));
        HousingPlan plan = HousingPlanner.Plan(board);
        string size = string.Create(CultureInfo.InvariantCulture,
            $"{plan.Shell.Footprint.Bounds.Size.X:0.#} x {plan.Shell.Footprint.Bounds.Size.Y:0.#} x {plan.Stack.Front:0.#} mm; print it");

        Assert.Contains($"<h2>{WebUtility.HtmlEncode(board.Name)}</h2>\n<p>{size}", Page, StringComparison.Ordinal);
        Assert.All(["-apart.png", "-light.png", "-section.svg"],
            end => Assert.True(File.Exists(Repository.At("out-samples", "gallery", name + end)), name + end));
    }
}
