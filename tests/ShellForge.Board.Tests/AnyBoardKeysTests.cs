using System.Text.Json.Nodes;
using ShellForge.Board.Schema;
using ShellForge.Testing;
using YamlDotNet.RepresentationModel;

namespace ShellForge.Board.Tests;

/// <summary>The boards that the fuzzers draw say everything that a board file can say.</summary>
public class AnyBoardKeysTests
{
    private const int Boards = 1500;

    [Fact]
    public void Drawn_boards_set_every_key_of_the_schema_and_every_word_of_a_key()
    {
        var missing = new SortedSet<string>(SchemaDraws.Paths(JsonNode.Parse(BoardSchema.Json())!), StringComparer.Ordinal);
        Assert.True(missing.Count > 200, $"{missing.Count} keys and words");
        for (int seed = 1; seed <= Boards; seed++)
        {
            var stream = new YamlStream();
            stream.Load(new StringReader(AnyBoards.Text(seed)));
            missing.ExceptWith(SchemaDraws.Paths(stream.Documents[0].RootNode));
        }

        Assert.True(missing.Count == 0, string.Join(", ", missing));
    }

    [Fact]
    public void More_drawn_boards_are_read_than_refused_and_those_with_odd_keys_are_among_them()
    {
        int read = Enumerable.Range(1, Boards / 2).Count(seed => BoardTexts.Read(AnyBoards.Text(seed)).File is not null);
        Assert.True(read > Boards / 2 * 0.6, $"{read} of {Boards / 2}");
    }
}
