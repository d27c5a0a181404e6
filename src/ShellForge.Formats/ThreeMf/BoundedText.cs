using System.Text;

namespace ShellForge.Formats.ThreeMf;

/// <summary>
/// The text of a part of a package, in which no tag and no text is longer than any that is meant: a reader of XML keeps a whole tag with
/// all its values in memory, and a whole section of text (CDATA), and a small archive may unpack to one of any length.
/// </summary>
internal sealed class BoundedText(Stream inner) : TextReader
{
    private const int LongestRun = 1 << 20;
    private const string Section = "![CDATA[";
    private const string Comment = "!--";

    // What stands twice before the '>' that ends a section of text or a comment, and once before the one that ends an instruction.
    private const char SectionMark = ']';
    private const char CommentMark = '-';
    private const char InstructionMark = '?';

    private readonly StreamReader _text = new(inner, Encoding.UTF8, detectEncodingFromByteOrderMarks: true);
    private int _run;

    // Behind a '<': what may have begun there, and how much of it has been met; -1 elsewhere.
    private string _opening = Section;
    private int _met = -1;

    // Within a section, a comment or an instruction: its mark, and how many of it stand in a row; none elsewhere.
    private char? _mark;
    private int _marks;

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
        for (int i = 0; i < read; i++)
        {
            if (_mark is null && _met < 0)
            {
                int tag = buffer[i..read].IndexOf('<');
                int passed = tag < 0 ? read - i : tag;
                Count(passed);
                i += passed;
            }

            if (i < read)
            {
                Follow(buffer[i]);
            }
        }

        return read;
    }

    // Only what is kept whole is counted whole: a '<' begins a new run but in a section, where it is text.
    private void Follow(char sign)
    {
        bool ends = sign == '>' && _marks >= (_mark == InstructionMark ? 1 : 2);
        if (ends || (sign == '<' && _mark != SectionMark))
        {
            _run = 0;
        }
        else
        {
            Count(1);
        }

        if (_mark is not null)
        {
            _marks = sign == _mark ? _marks + 1 : 0;
            _mark = ends ? null : _mark;
        }
        else if (sign == '<')
        {
            _met = 0;
        }
        else
        {
            Open(sign);
        }
    }

    private void Open(char sign)
    {
        if (_met == 0 && sign == InstructionMark)
        {
            _mark = InstructionMark;
            _met = -1;
            return;
        }

        // Both begin with the same sign.
        _opening = _met > 1 ? _opening : sign == CommentMark ? Comment : Section;
        _met = sign == _opening[_met] ? _met + 1 : -1;
        if (_met == _opening.Length)
        {
            _mark = _opening == Comment ? CommentMark : SectionMark;
            _met = -1;
        }
    }

    private void Count(int signs)
    {
        _run += signs;
        if (_run > LongestRun)
        {
            throw new InvalidDataException($"a tag or a text in it has more than {LongestRun >> 10} KiB");
        }
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
