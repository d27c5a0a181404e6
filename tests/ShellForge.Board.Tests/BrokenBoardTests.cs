using ShellForge.Board.Yaml;

namespace ShellForge.Board.Tests;

/// <summary>
/// Each broken board file has a sidecar: a line for each fault, "line:column code: what the message holds". Lines that start with
/// # are comments. All faults must be there, and no other.
/// </summary>
public class BrokenBoardTests
{
    private static readonly string[] Names =
    [
        .. Directory.GetFiles(BoardTexts.Folder("tests", "boards", "broken"), "*.yaml")
            .Select(f => Path.GetFileNameWithoutExtension(f)!)
            .Order(StringComparer.Ordinal),
    ];

    public static TheoryData<string> Cases() => new(Names);

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_broken_file_is_told_with_its_place(string name)
    {
        BoardReadResult read = Read(name);
        string[] expected = [.. File.ReadAllLines(Sidecar(name)).Where(l => l.Length > 0 && l[0] != '#')];
        string[] found =
            [.. read.Diagnostics.Select(d => $"{d.Line}:{d.Column} {d.Code}: {d.Message}{(d.Nearest is null ? "" : $" -> {d.Nearest}")}")];

        Assert.Equal(expected, found);
        Assert.Null(read.File);
        Assert.Contains(read.Diagnostics, d => d.IsError);
        Assert.All(read.Diagnostics, d => Assert.StartsWith($"board.yaml:{d.Line}:{d.Column}: ", d.ToString(), StringComparison.Ordinal));
    }

    [Fact]
    public void Twenty_kinds_of_fault_at_least_are_held() =>
        Assert.True(Names.SelectMany(n => Read(n).Diagnostics).Where(d => d.IsError).Select(d => d.Code).Distinct().Count() >= 20);

    [Fact]
    public void The_boards_they_were_made_from_are_fine() =>
        Assert.Empty(BoardTexts.Read(File.ReadAllText(BoardTexts.Folder("tests", "boards", "valid", "ring-92.yaml"))).Diagnostics);

    [Fact]
    public void The_starter_board_reads_without_a_word()
    {
        BoardReadResult read = BoardTexts.Read(StarterBoard.Text("Harbour \"north\" \\ light\n"));

        Assert.Empty(read.Diagnostics.Select(d => d.ToString()));
        Assert.Equal("Harbour \"north\" \\ light", read.File!.Name);
    }

    private static BoardReadResult Read(string name) =>
        BoardTexts.Read(File.ReadAllText(BoardTexts.Folder("tests", "boards", "broken", name + ".yaml")));

    private static string Sidecar(string name) => BoardTexts.Folder("tests", "boards", "broken", name + ".expect");
}
