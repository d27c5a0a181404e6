using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ShellForge.Formats.Soup;

namespace ShellForge.Formats.Stl;

/// <summary>
/// Reads text STL word by word: <c>solid facet normal outer loop vertex endloop endfacet endsolid</c>. Stops at the first word that
/// does not belong there, and tells its line; the facets before it are kept.
/// </summary>
internal ref struct StlTextReader
{
    private const string Kind = "text STL";
    private const int LongestWordShown = 24;
    private readonly ReadOnlySpan<byte> _text;
    private int _at;
    private int _line;
    private bool _endedEarly;

    private StlTextReader(ReadOnlySpan<byte> text)
    {
        _text = text;
        _line = 1;
    }

    public static SoupFile Read(ReadOnlySpan<byte> text) =>
        new StlTextReader(text.StartsWith("\uFEFF"u8) ? text[3..] : text).ReadFile();

    private SoupFile ReadFile()
    {
        var bodies = new List<SoupBuilder>();
        var faults = ImmutableArray.CreateBuilder<FileFault>();
        string? wrong = null;
        while (wrong is null && !AtEnd())
        {
            wrong = Expect("solid");
            if (wrong is null)
            {
                var body = new SoupBuilder(RestOfLine());
                bodies.Add(body);
                wrong = ReadBody(body);
            }
        }

        if (wrong is not null)
        {
            faults.Add(new FileFault(_endedEarly ? "truncated" : "syntax", wrong));
        }

        return SoupBuilder.Finish(Kind, bodies, faults);
    }

    private string? ReadBody(SoupBuilder body)
    {
        Span<float> corners = stackalloc float[SoupBuilder.NumbersPerTriangle];
        while (true)
        {
            if (Accept("endsolid"))
            {
                RestOfLine();
                return null;
            }

            int line = LineOfNext();
            string? wrong = ReadFacet(corners);
            if (wrong is not null)
            {
                return wrong;
            }

            body.Add(corners, $"the facet at line {line}");
        }
    }

    private string? ReadFacet(scoped Span<float> corners)
    {
        string? wrong = Expect("facet") ?? Expect("normal");
        for (int i = 0; i < 3 && wrong is null; i++)
        {
            wrong = Number(out _);
        }

        wrong ??= Expect("outer") ?? Expect("loop");
        for (int corner = 0; corner < 3 && wrong is null; corner++)
        {
            wrong = Expect("vertex");
            for (int axis = 0; axis < 3 && wrong is null; axis++)
            {
                wrong = Number(out corners[(3 * corner) + axis]);
            }
        }

        return wrong ?? Expect("endloop") ?? Expect("endfacet");
    }

    private string? Number(out float value)
    {
        ReadOnlySpan<byte> word = NextWord();
        if (float.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out value))
        {
            return null;
        }

        // "nan" and "inf" have many spellings; they are numbers for the grammar and refused by the builder.
        if (IsNoNumber(word))
        {
            value = float.NaN;
            return null;
        }

        value = 0;
        return Wrong("a number", word);
    }

    private static bool IsNoNumber(ReadOnlySpan<byte> word)
    {
        ReadOnlySpan<byte> bare = word.Length > 0 && word[0] == '-' ? word[1..] : word;
        return bare.Length >= 3
            && (Ascii.EqualsIgnoreCase(bare[..3], "nan") || Ascii.EqualsIgnoreCase(bare[..3], "inf") || bare.StartsWith("1.#"u8));
    }

    private string? Expect(string keyword)
    {
        ReadOnlySpan<byte> word = NextWord();
        return Ascii.EqualsIgnoreCase(word, keyword) ? null : Wrong($"'{keyword}'", word);
    }

    private bool Accept(string keyword)
    {
        int at = _at;
        int line = _line;
        if (Ascii.EqualsIgnoreCase(NextWord(), keyword))
        {
            return true;
        }

        _at = at;
        _line = line;
        return false;
    }

    private string Wrong(string expected, ReadOnlySpan<byte> word)
    {
        if (word.Length == 0)
        {
            _endedEarly = true;
            return $"line {_line}: the file ends where {expected} was expected";
        }

        string shown = Encoding.UTF8.GetString(word[..Math.Min(word.Length, LongestWordShown)]);
        return $"line {_line}: expected {expected}, found '{shown}'";
    }

    private ReadOnlySpan<byte> NextWord()
    {
        SkipBlanks();
        int start = _at;
        while (_at < _text.Length && !IsBlank(_text[_at]))
        {
            _at++;
        }

        return _text[start.._at];
    }

    private string RestOfLine()
    {
        int start = _at;
        while (_at < _text.Length && _text[_at] is not ((byte)'\n' or (byte)'\r'))
        {
            _at++;
        }

        return Encoding.UTF8.GetString(_text[start.._at]).Trim();
    }

    private int LineOfNext()
    {
        SkipBlanks();
        return _line;
    }

    private bool AtEnd()
    {
        SkipBlanks();
        return _at >= _text.Length;
    }

    private void SkipBlanks()
    {
        while (_at < _text.Length && IsBlank(_text[_at]))
        {
            if (_text[_at] == '\n')
            {
                _line++;
            }

            _at++;
        }
    }

    private static bool IsBlank(byte value) => value is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n' or (byte)'\f' or (byte)'\v';
}
