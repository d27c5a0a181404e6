namespace ShellForge.Formats.Pdf;

/// <summary>Faces that every reader has (the standard fonts of ISO 32000-1, 9.6.2.2), so that none has to travel in the file.</summary>
public enum PdfFont
{
    /// <summary>Plain.</summary>
    Plain,

    /// <summary>Bold.</summary>
    Bold,
}

/// <summary>Widths of letters, for breaking lines.</summary>
public static class PdfFontWidths
{
    private const int FirstLetter = 32;

    // A letter outside of ASCII is taken as wide as a digit: few stand in a text, and a line has slack.
    private const int UsualWidth = 556;

    // Thousandths of the font size for codes 32 to 126. Source: Adobe's metrics of the standard faces.
    private static readonly short[] PlainWidths =
    [
        278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556, 556, 556, 556,
        278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778, 722, 667,
        611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833,
        556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
    ];

    private static readonly short[] BoldWidths =
    [
        278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556, 556, 556, 556,
        333, 333, 584, 584, 584, 611, 975, 722, 722, 722, 722, 667, 611, 778, 722, 278, 556, 722, 611, 833, 722, 778, 667, 778, 722, 667,
        611, 722, 667, 944, 667, 667, 611, 333, 278, 333, 584, 556, 333, 556, 611, 556, 611, 556, 333, 611, 611, 278, 278, 556, 278, 889,
        611, 611, 611, 611, 389, 556, 333, 611, 556, 778, 556, 556, 500, 389, 280, 389, 584,
    ];

    /// <summary>Width of a text at a size, in the size's unit.</summary>
    public static double Of(string text, PdfFont font, double size)
    {
        short[] widths = font == PdfFont.Bold ? BoldWidths : PlainWidths;
        return text.Sum(letter =>
        {
            int place = letter - FirstLetter;
            return place >= 0 && place < widths.Length ? widths[place] : UsualWidth;
        }) * size / 1000;
    }

    /// <summary>Breaks a text into lines between its words; a word that is too long for a line stands alone on one.</summary>
    public static IEnumerable<string> Lines(string text, PdfFont font, double size, double width)
    {
        string line = "";
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            string longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length > 0 && Of(longer, font, size) > width)
            {
                yield return line;
                longer = word;
            }

            line = longer;
        }

        if (line.Length > 0)
        {
            yield return line;
        }
    }
}
