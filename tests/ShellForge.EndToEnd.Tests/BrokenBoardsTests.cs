using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

/// <summary>Kinds of broken board file: exit status 2, the right line, and an output folder that nobody has touched.</summary>
public class BrokenBoardsTests
{
    // The line that is wrong in the shipped board of the tide lamp, what stands there instead, and a word of the answer.
    public static TheoryData<string, string, string> Mistakes => new()
    {
        { "format: shellforge/1", "format: shellforge/7", "shellforge/1" },
        { "name: Tide lamp", "nmae: Tide lamp", "name" },
        { "  thickness: 1.6", "  thickness: 1.6 stone", "stone" },
        { "  thickness: 1.6", "  thickness: -1.6", "1.6" },
        { "  thickness: 1.6", "  thickness: .nan", "thickness" },
        { "  thickness: 1.6", "  thickness: [1.6]", "thickness" },
        { "  thickness: 1.6", "  thickness: 1.6\n  thickness: 1.6", "thickness" },
        { "  outline: {ring: {outer: 92, bore: 46}}", "  outline: {ring: {outer: 46, bore: 92}}", "bore" },
        { "  outline: {ring: {outer: 92, bore: 46}}", "  outline: {ring: {outer: 92}}", "bore" },
        { "  outline: {ring: {outer: 92, bore: 46}}", "  outline: {disc: 40000}", "40000" },
        { "  outline: {ring: {outer: 92, bore: 46}}", "  outline: {ring: {outer: 92, bore: 46}", "" },
        { "  insert: m2.5x4-od4.6", "  insert: m2.5x4-od4.7", "did you mean 'm2.5x4-od4." },
        { "  closure: snap", "  closure: rivets", "snap" },
        { "  walls: 4", "  walls: 0", "expected a count" },
        { "  cable: {part: J1}", "  cable: {part: J9}", "J9" },
    };

    [Theory]
    [MemberData(nameof(Mistakes))]
    public void A_mistake_is_told_with_its_line_and_nothing_is_touched(string line, string instead, string word)
    {
        using var folder = new TemporaryFolder();
        string[] lines = File.ReadAllLines(Repository.At("out-samples", "tide-lamp", "board.yaml"));
        int at = Array.FindIndex(lines, l => l.StartsWith(line, StringComparison.Ordinal));
        Assert.True(at >= 0, $"the sample has no line '{line}'");
        lines[at] = instead;
        folder.Write("board.yaml", string.Join('\n', lines));
        folder.Write("out/tub.stl", "from an earlier run");
        IReadOnlyDictionary<string, string> before = folder.Snapshot();

        (int exit, string told) = CommandRun.Run(folder.Path, "make", "board.yaml", "-o", "out");

        Assert.Equal(2, exit);
        int wrong = at + 1 + instead.Count(c => c == '\n');
        bool syntax = word.Length == 0;
        Assert.Contains(
            told.Split('\n'),
            l => l.StartsWith("board.yaml:", StringComparison.Ordinal)
                && (syntax || l.StartsWith($"board.yaml:{wrong}:", StringComparison.Ordinal))
                && l.Contains(word, StringComparison.Ordinal));
        Assert.Equal(before.OrderBy(f => f.Key), folder.Snapshot().OrderBy(f => f.Key));
    }

    [Fact]
    public void All_mistakes_of_a_file_are_told_at_once()
    {
        using var folder = new TemporaryFolder();
        string board = File.ReadAllText(Repository.At("out-samples", "tide-lamp", "board.yaml"))
            .Replace("closure: snap", "closure: snpa", StringComparison.Ordinal)
            .Replace("walls: 4", "walls: four", StringComparison.Ordinal)
            .Replace("thickness: 1.6", "thicknes: 1.6", StringComparison.Ordinal);
        folder.Write("board.yaml", board);

        (int exit, string told) = CommandRun.Run(folder.Path, "check", "board.yaml");

        Assert.Equal(2, exit);
        Assert.Contains("snap", told, StringComparison.Ordinal);
        Assert.Contains("four", told, StringComparison.Ordinal);
        Assert.Contains("thicknes", told, StringComparison.Ordinal);
    }
}
