using System.Collections.Immutable;

namespace ShellForge.Board.Yaml;

/// <summary>
/// A line of a board file that says what is still missing: <c># TODO path: what</c>, on a line of its own. People delete it
/// when it is done; until then whoever reads the file is told.
/// </summary>
/// <param name="Path">The value that is missing or guessed, as overrides spell it: <c>board.parts[J1].height</c>.</param>
/// <param name="What">What to do, in one sentence.</param>
/// <param name="Line">Line of the file, from 1.</param>
/// <param name="Column">Column of the number sign, from 1.</param>
public sealed record TodoLine(string Path, string What, int Line = 0, int Column = 0)
{
    private const string Mark = "# TODO ";
    private const string SameFor = "; the same for ";
    private const string AndMore = ", ...";

    // A board file takes a thousand parts; a line need not name them all to be understood.
    private const int MostOthers = 8;

    /// <summary>The end of a sentence that settles other parts by the same value; empty for none.</summary>
    public static string AlsoFor(IReadOnlyCollection<string> others) => others.Count == 0 ? ""
        : $"{SameFor}{string.Join(", ", others.Take(MostOthers))}{(others.Count > MostOthers ? AndMore : "")}";

    /// <summary>Parts that the same value settles, as far as the line names them.</summary>
    public ImmutableArray<string> Others
    {
        get
        {
            int at = What.IndexOf(SameFor, StringComparison.Ordinal);
            return at < 0 ? []
                : [.. What[(at + SameFor.Length)..].Replace(AndMore, "", StringComparison.Ordinal).Split(", ").Take(MostOthers)];
        }
    }

    /// <summary>The line without indentation and line end.</summary>
    public string Text => $"{Mark}{Path}: {What}";

    /// <summary>All such lines of a board file, in order. Lines that only look like it, without a path and a colon, are none.</summary>
    public static ImmutableArray<TodoLine> FindAll(string text)
    {
        var found = ImmutableArray.CreateBuilder<TodoLine>();
        int number = 0;
        foreach (ReadOnlySpan<char> line in text.AsSpan().EnumerateLines())
        {
            number++;
            ReadOnlySpan<char> trimmed = line.TrimStart();
            if (!trimmed.StartsWith(Mark, StringComparison.Ordinal))
            {
                continue;
            }

            ReadOnlySpan<char> rest = trimmed[Mark.Length..];
            int colon = rest.IndexOf(": ", StringComparison.Ordinal);
            if (colon > 0 && !rest[..colon].Contains(' '))
            {
                found.Add(new TodoLine(rest[..colon].ToString(), rest[(colon + 2)..].Trim().ToString(), number,
                    line.Length - trimmed.Length + 1));
            }
        }

        return found.ToImmutable();
    }

    /// <summary>Whether an override "path=value" gives the missing value, or one above or below it.</summary>
    public bool IsSettledBy(string setting)
    {
        int equals = setting.IndexOf('=', StringComparison.Ordinal);
        string path = (equals < 0 ? setting : setting[..equals]).Trim();
        return path.Length > 0 && (Covers(path, Path) || Covers(Path, path));
    }

    private static bool Covers(string outer, string inner) =>
        inner.StartsWith(outer, StringComparison.Ordinal) && (inner.Length == outer.Length || inner[outer.Length] is '.' or '[');
}
