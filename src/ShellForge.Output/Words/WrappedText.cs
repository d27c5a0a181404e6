using System.Text;

namespace ShellForge.Output.Words;

/// <summary>Text in lines of a width, the second and all further lines set in.</summary>
public static class WrappedText
{
    /// <summary>Writes the lines, without blanks at their ends.</summary>
    /// <param name="writer">Where to.</param>
    /// <param name="text">See <see cref="Lines"/>.</param>
    /// <param name="width">See <see cref="Lines"/>.</param>
    /// <param name="first">See <see cref="Lines"/>.</param>
    /// <param name="indent">See <see cref="Lines"/>.</param>
    public static void Write(TextWriter writer, string text, int width, string first = "", int indent = 0)
    {
        foreach (string line in Lines(text, width, first, indent))
        {
            writer.Write(line.TrimEnd() + "\n");
        }
    }

    /// <summary>Lines of at most <paramref name="width"/> columns; a word that is longer than a line stands alone on its own.</summary>
    /// <param name="text">Words with blanks between them.</param>
    /// <param name="width">Columns of a line, its indent included.</param>
    /// <param name="first">What stands before the first line; counts towards the width.</param>
    /// <param name="indent">Blanks before every further line.</param>
    public static IEnumerable<string> Lines(string text, int width, string first = "", int indent = 0)
    {
        var line = new StringBuilder(first);
        bool empty = true;
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (!empty && line.Length + 1 + word.Length > width)
            {
                yield return line.ToString();
                line.Clear().Append(' ', indent);
                empty = true;
            }

            line.Append(empty ? "" : " ").Append(word);
            empty = false;
        }

        yield return line.ToString();
    }
}
