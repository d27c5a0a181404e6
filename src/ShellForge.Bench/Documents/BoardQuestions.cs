using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ShellForge.Board.Description;
using ShellForge.Board.Json;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml;
using ShellForge.Import.Writing;

namespace ShellForge.Bench.Documents;

/// <summary>What a board file still leaves open, as questions that a person can answer one after the other.</summary>
/// <param name="Questions">In the order of the file.</param>
internal sealed record BoardQuestions(ImmutableArray<BoardQuestion> Questions)
{
    // More than a person answers; files of strangers may hold a hundred thousand such lines.
    private const int MostAsked = 200;

    private static readonly ImmutableArray<string> UsualThicknesses = ["0.8", "1", "1.2", "1.6", "2"];
    private static readonly ImmutableArray<string> UsualAngles = ["0", "90", "180", "270"];

    /// <summary>The questions of a text.</summary>
    /// <param name="text">The text of a board file.</param>
    /// <param name="profiles">The profiles that it can name.</param>
    public static BoardQuestions Of(string text, ProfileLibrary profiles)
    {
        ImmutableArray<TodoLine> lines = [.. TodoLine.FindAll(text).DistinctBy(line => line.Path).Take(MostAsked)];

        // Only where a question needs the board: reading it takes longer than finding the lines.
        CircuitBoard? board = lines.Any(line => line.Path == CablePath)
            ? BoardFileReader.Read("board", text, profiles, []).File?.Board : null;
        return new BoardQuestions([.. lines.Select(line => Of(line, board, profiles))]);
    }

    /// <summary>As it is told to the page.</summary>
    public byte[] Bytes() => JsonText.Bytes(this, BoardQuestionsContext.Default.BoardQuestions);

    private const string CablePath = "housing.cable";

    private static BoardQuestion Of(TodoLine line, CircuitBoard? board, ProfileLibrary profiles)
    {
        string? part = PartOf(line.Path);
        ImmutableArray<QuestionField> fields = line.Path switch
        {
            "board.thickness" => [new(line.Path, "Thickness", "mm", Plain(UsualThicknesses))],
            "housing.insert" => [new(line.Path, "Insert", "", Plain(profiles.Inserts.Names))],
            CablePath => [new(line.Path, "Cable", "", Cables(board))],
            _ when part is not null && line.Path.EndsWith("].height", StringComparison.Ordinal) => [new(line.Path, "Height", "mm", [])],
            _ when part is not null && line.Path.EndsWith("].faces", StringComparison.Ordinal) =>
            [
                new(line.Path, "Angle", "degrees", Plain(UsualAngles)) { Instead = "rotation" },
                new(line.Path.Replace("].faces", "].past-edge", StringComparison.Ordinal), "Past the edge", "mm", []),
            ],

            // A part that is not in the file can't be given a value.
            _ when part is not null => [],
            "board.holes" => [new(line.Path, "Holes", "", []) { IsList = true }],
            "board.pixels" => [new(line.Path, "LEDs", "", Suggested(line.What))],
            _ => [new(line.Path, "Value", "", [])],
        };
        return new BoardQuestion(line.Line, line.Path, line.What, part, fields, line.Others);
    }

    private static string? PartOf(string path)
    {
        const string parts = "board.parts[";
        int end = path.IndexOf(']', StringComparison.Ordinal);
        return path.StartsWith(parts, StringComparison.Ordinal) && end > 0 ? path[parts.Length..end] : null;
    }

    private static ImmutableArray<FieldChoice> Plain(ImmutableArray<string> values) =>
        [.. values.Select(each => new FieldChoice(each, each, null))];

    // A pattern that was found stands in the sentence as it would stand in the file, up to the name of the LED.
    private static ImmutableArray<FieldChoice> Suggested(string what)
    {
        int from = what.IndexOf('{', StringComparison.Ordinal);
        int to = what.LastIndexOf('}');
        return from < 0 || to < from || !what.Contains(BoardFileWriter.PatternFound, StringComparison.Ordinal) ? []
            : Plain([what[from..(to + 1)]]);
    }

    private static ImmutableArray<FieldChoice> Cables(CircuitBoard? board) =>
    [
        .. (board?.Parts ?? []).Where(each => each.Mouth is not null)
            .Select(each => new FieldChoice($"{{part: {each.Ref}}}", each.Ref, each.Ref)),
        new("none", "none: no cable", null),
    ];
}

/// <summary>A question.</summary>
/// <param name="Line">Line of the file that asks it, from 1.</param>
/// <param name="Path">The value that is missing.</param>
/// <param name="What">What to do, in one sentence.</param>
/// <param name="Part">The part that it is about; null for none.</param>
/// <param name="Fields">What can be said to it; empty where only a look at the board settles it.</param>
/// <param name="Others">Other parts that the same answer settles.</param>
internal sealed record BoardQuestion(
    int Line, string Path, string What, string? Part, ImmutableArray<QuestionField> Fields, ImmutableArray<string> Others);

/// <summary>A value that answers a question.</summary>
/// <param name="Path">Where it goes.</param>
/// <param name="Label">What it is called.</param>
/// <param name="Unit">Its unit; empty for a word.</param>
/// <param name="Choices">Usual values.</param>
internal sealed record QuestionField(string Path, string Label, string Unit, ImmutableArray<FieldChoice> Choices)
{
    /// <summary>A key beside it that can't stand there any more; null for none.</summary>
    public string? Instead { get; init; }

    /// <summary>Whether the value is a list, of which one entry may be said alone.</summary>
    public bool IsList { get; init; }
}

/// <summary>A usual value.</summary>
/// <param name="Value">As it stands in a board file.</param>
/// <param name="Label">As it is shown.</param>
/// <param name="Part">The part that it means; null for none.</param>
internal sealed record FieldChoice(string Value, string Label, string? Part);

/// <summary>How they are written.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(BoardQuestions))]
internal sealed partial class BoardQuestionsContext : JsonSerializerContext;
