using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Overriding;

/// <summary>One step of a path into the file.</summary>
/// <param name="Key">A key of a mapping; null for a step into a list.</param>
/// <param name="Entry">What stands in brackets: a number from 0, a designator or name, or + for a new entry.</param>
/// <param name="Place">Where the step is written.</param>
internal sealed record PathStep(string? Key, string? Entry, FilePlace Place)
{
    private const int MostSteps = 24;

    /// <summary>Reads a path such as board.parts[J1].past-edge; null when it is none, which then has been told.</summary>
    public static ImmutableArray<PathStep>? Parse(string path, FilePlace start, DiagnosticSink sink)
    {
        ImmutableArray<PathStep>.Builder steps = ImmutableArray.CreateBuilder<PathStep>();
        int i = 0;
        while (i < path.Length && steps.Count < MostSteps)
        {
            FilePlace place = start with { Column = start.Column + i };
            int end;
            if (path[i] == '[')
            {
                end = path.IndexOf(']', i);
                if (end <= i + 1)
                {
                    break;
                }

                steps.Add(new PathStep(null, path[(i + 1)..end], place));
                end++;
            }
            else
            {
                end = path.IndexOfAny(['.', '['], i);
                end = end < 0 ? path.Length : end;
                if (end == i)
                {
                    break;
                }

                steps.Add(new PathStep(path[i..end], null, place));
            }

            // After a step the path ends, goes on with a bracket, or with a point and a key.
            bool goesOn = end < path.Length && path[end] == '.' && end + 1 < path.Length && path[end + 1] is not ('[' or '.');
            if (end < path.Length && path[end] != '[' && !goesOn)
            {
                break;
            }

            i = end + (goesOn ? 1 : 0);
        }

        if (i >= path.Length && steps.Count > 0)
        {
            return steps.ToImmutable();
        }

        sink.Error(
            start with { Column = start.Column + Math.Min(i, path.Length - 1) },
            "bad-override",
            $"'{path}' is no path",
            "expected keys joined by points, entries in brackets: board.parts[J1].height");
        return null;
    }

    /// <summary>The place in a list of so many entries, or null when the step names none by number.</summary>
    public int? Index =>
        int.TryParse(Entry, NumberStyles.None, CultureInfo.InvariantCulture, out int index) ? index : null;
}
