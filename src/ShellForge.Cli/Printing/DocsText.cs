using System.Text.RegularExpressions;
using ShellForge.Output.Words;

namespace ShellForge.Cli.Printing;

/// <summary>Prints a page of the docs on a terminal: paragraphs wrapped, tables as rows that hang, pictures left out.</summary>
internal static partial class DocsText
{
    private const int Indent = 6;

    [GeneratedRegex(@"!?\[([^\]]*)\]\([^)]*\)")]
    private static partial Regex Link();

    public static void Write(TextWriter to, string markdown, int width)
    {
        var paragraph = new List<string>();
        string[] lines = markdown.ReplaceLineEndings("\n").Split('\n');
        for (int i = 0; i < lines.Length; i++)
        {
            string line = lines[i];
            if (line.Length == 0 || line[0] is '|' or '#' or '-' or ' ' or '!')
            {
                Flush(to, paragraph, width);
            }

            if (line.StartsWith("    ", StringComparison.Ordinal))
            {
                to.Write(line.TrimEnd() + "\n");
            }
            else if (line.Length == 0)
            {
                to.Write("\n");
            }
            else if (line[0] == '#')
            {
                to.Write($"{Plain(line.TrimStart('#').Trim()).ToUpperInvariant()}\n");
            }
            else if (line[0] == '|')
            {
                // The head of a table says on paper what the order of the cells says here.
                bool isHead = i + 1 < lines.Length && lines[i + 1].StartsWith("| ---", StringComparison.Ordinal);
                if (!isHead && !line.StartsWith("| ---", StringComparison.Ordinal))
                {
                    Row(to, line, width);
                }
            }
            else if (line[0] != '!')
            {
                paragraph.Add(line.Trim());
            }
        }

        Flush(to, paragraph, width);
    }

    private static void Flush(TextWriter to, List<string> paragraph, int width)
    {
        if (paragraph.Count > 0)
        {
            string text = Plain(string.Join(' ', paragraph));
            WrappedText.Write(to, text, width, "", text.StartsWith("- ", StringComparison.Ordinal) ? 2 : 0);
            paragraph.Clear();
        }
    }

    // The first cell leads, the others follow it set in.
    private static void Row(TextWriter to, string line, int width)
    {
        string[] cells = [.. line.Trim('|').Split(" | ").Select(cell => Plain(cell).Replace("\\|", "|", StringComparison.Ordinal))];
        WrappedText.Write(to, string.Join("; ", cells.Take(cells.Length - 1).Where(cell => cell.Length > 0)), width, "  ", 4);
        WrappedText.Write(to, cells[^1], width, new string(' ', Indent), Indent);
    }

    private static string Plain(string text) =>
        Link().Replace(text, "$1").Replace("`", "", StringComparison.Ordinal).Trim();
}
