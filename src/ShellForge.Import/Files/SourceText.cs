using System.Text;

namespace ShellForge.Import.Files;

/// <summary>A file's text with its lines, decoded once. Lines are given as spans of the one string; nothing is copied.</summary>
internal sealed class SourceText
{
    private readonly List<int> _lineStarts = [0];

    public SourceText(string file, string text)
    {
        File = file;
        Text = text;
        for (int i = 0; i < text.Length; i++)
        {
            if (text[i] == '\n' || (text[i] == '\r' && (i + 1 >= text.Length || text[i + 1] != '\n')))
            {
                if (_lineStarts.Count >= EcadLimits.Lines)
                {
                    HasTooManyLines = true;
                    break;
                }

                _lineStarts.Add(i + 1);
            }
        }
    }

    public string File { get; }

    public string Text { get; }

    /// <summary>Whether lines beyond the limit were not counted any more.</summary>
    public bool HasTooManyLines { get; }

    public int LineCount => _lineStarts.Count;

    /// <summary>The text of a line, from 1, without its end.</summary>
    public ReadOnlySpan<char> Line(int number)
    {
        int start = _lineStarts[number - 1];
        int end = number < _lineStarts.Count ? _lineStarts[number] : Text.Length;
        return Text.AsSpan(start, end - start).TrimEnd('\n').TrimEnd('\r');
    }

    /// <summary>Line, from 1, of a character offset.</summary>
    public int LineOf(int offset)
    {
        int index = _lineStarts.BinarySearch(offset);
        return index >= 0 ? index + 1 : ~index;
    }

    /// <summary>Text in UTF-8, UTF-16 of either order with or without a mark, or, where bytes are no UTF-8, one character a byte.</summary>
    public static SourceText Decode(EcadFile file)
    {
        ReadOnlySpan<byte> bytes = file.Bytes.Span;
        string text = bytes switch
        {
            [0xFF, 0xFE, ..] => Encoding.Unicode.GetString(bytes[2..]),
            [0xFE, 0xFF, ..] => Encoding.BigEndianUnicode.GetString(bytes[2..]),
            [0xEF, 0xBB, 0xBF, ..] => Encoding.UTF8.GetString(bytes[3..]),
            _ when ZerosAt(bytes, 1) => Encoding.Unicode.GetString(bytes),
            _ when ZerosAt(bytes, 0) => Encoding.BigEndianUnicode.GetString(bytes),
            _ when System.Text.Unicode.Utf8.IsValid(bytes) => Encoding.UTF8.GetString(bytes),
            _ => Encoding.Latin1.GetString(bytes),
        };
        return new SourceText(file.Name, text);
    }

    // Western text in UTF-16 has a zero in every second byte; other texts have none at all.
    private static bool ZerosAt(ReadOnlySpan<byte> bytes, int phase)
    {
        int pairs = Math.Min(bytes.Length / 2, 200);
        int zeros = 0;
        int others = 0;
        for (int i = 0; i < pairs; i++)
        {
            zeros += bytes[(2 * i) + phase] == 0 ? 1 : 0;
            others += bytes[(2 * i) + 1 - phase] == 0 ? 1 : 0;
        }

        return pairs >= 4 && zeros * 10 >= pairs * 8 && others == 0;
    }
}
