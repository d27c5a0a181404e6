using System.Text;

namespace ShellForge.Formats.ThreeMf;

/// <summary>
/// The text of a part of a package, in which no tag is longer than any that is meant: a reader of XML keeps a whole tag with all its
/// values in memory, and a small archive may unpack to a tag of any length.
/// </summary>
internal sealed class BoundedText(Stream inner) : TextReader
{
    private const int LongestRun = 1 << 20;
    private readonly StreamReader _text = new(inner, Encoding.UTF8, detectEncodingFromByteOrderMarks: true);
    private int _run;

    public override int Peek() => _text.Peek();

    public override int Read()
    {
        Span<char> one = stackalloc char[1];
        return Read(one) == 0 ? -1 : one[0];
    }

    public override int Read(char[] buffer, int index, int count) => Read(buffer.AsSpan(index, count));

    public override int Read(Span<char> buffer)
    {
        int read = _text.Read(buffer);
        for (ReadOnlySpan<char> rest = buffer[..read]; rest.Length > 0;)
        {
            int tag = rest.IndexOf('<');
            _run += tag < 0 ? rest.Length : tag;
            if (_run > LongestRun)
            {
                throw new InvalidDataException($"a tag or a text in it has more than {LongestRun >> 10} KiB");
            }

            _run = tag < 0 ? _run : 0;
            rest = tag < 0 ? default : rest[(tag + 1)..];
        }

        return read;
    }

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            _text.Dispose();
        }

        base.Dispose(disposing);
    }
}
