using System.Collections.Frozen;
using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Planning.Marks;

/// <summary>
/// A single-stroke alphabet of our own for printed lettering, printable ASCII: straight strokes on a grid at most four units wide, capitals
/// six high, small letters four, descenders two below the line. Strokes have round ends, so letters keep their weight at any height.
/// </summary>
internal static class StrokeFont
{
    /// <summary>Height of a capital in grid units.</summary>
    public const double CapHeight = 6;

    /// <summary>Deepest descender in grid units.</summary>
    public const double Descent = 2;

    // From one letter's right edge to the next one's left, and the width of a blank, in grid units.
    private const double Spacing = 2.6;
    private const double Blank = 2;

    // A corner is two characters, x and y; y below the line is a (1) or b (2). Strokes are parted by blanks, a dot is one corner.
    private static readonly FrozenDictionary<char, string> Glyphs = new Dictionary<char, string>
    {
        ['A'] = "0004264440 0242",
        ['B'] = "00063645443303 3342413000",
        ['C'] = "4536160501103041",
        ['D'] = "00062644422000",
        ['E'] = "46060040 0333",
        ['F'] = "460600 0333",
        ['G'] = "45361605011030414323",
        ['H'] = "0006 4046 0343",
        ['I'] = "1016 0626 0020",
        ['J'] = "4641301001",
        ['K'] = "0006 460340",
        ['L'] = "060040",
        ['M'] = "0006234640",
        ['N'] = "00064046",
        ['O'] = "010516364541301001",
        ['P'] = "00063645443303",
        ['Q'] = "010516364541301001 2240",
        ['R'] = "00063645443303 2340",
        ['S'] = "453616050413334241301001",
        ['T'] = "2026 0646",
        ['U'] = "060110304146",
        ['V'] = "062046",
        ['W'] = "0610243046",
        ['X'] = "0046 0640",
        ['Y'] = "062346 2320",
        ['Z'] = "06460040",
        ['a'] = "3324140301102031 3430",
        ['b'] = "0600 0314243331201001",
        ['c'] = "3324140301102031",
        ['d'] = "3630 3324140301102031",
        ['e'] = "023233241403011030",
        ['f'] = "10152636 0424",
        ['g'] = "3324140301102031 343a2b0b",
        ['h'] = "0600 0314243330",
        ['i'] = "0004 06",
        ['j'] = "141a0b 16",
        ['k'] = "0600 340230",
        ['l'] = "060110",
        ['m'] = "0004 03142320 23344340",
        ['n'] = "0004 0314243330",
        ['o'] = "010314243331201001",
        ['p'] = "040b 0314243331201001",
        ['q'] = "343b 3324140301102031",
        ['r'] = "0004 031424",
        ['s'] = "3414031222312000",
        ['t'] = "16112030 0424",
        ['u'] = "0401102031 3430",
        ['v'] = "042044",
        ['w'] = "0410223044",
        ['x'] = "0034 0430",
        ['y'] = "0420 44201b",
        ['z'] = "04340030",
        ['0'] = "010516364541301001 1135",
        ['1'] = "041610 0020",
        ['2'] = "05163645440040",
        ['3'] = "0516364544334241301001 1333",
        ['4'] = "30360242",
        ['5'] = "460603334241301001",
        ['6'] = "4536160501103041423303",
        ['7'] = "064610",
        ['8'] = "13040516364544331302011030414233",
        ['9'] = "0110304145361605041343",
        ['.'] = "00",
        [','] = "000a",
        [':'] = "01 04",
        [';'] = "000a 04",
        ['!'] = "0206 00",
        ['?'] = "05163645442322 20",
        ['-'] = "0333",
        ['_'] = "0040",
        ['+'] = "0343 2125",
        ['='] = "0242 0444",
        ['/'] = "0046",
        ['\\'] = "0640",
        ['\''] = "0506",
        ['"'] = "0506 2526",
        ['`'] = "0615",
        ['('] = "26151120",
        [')'] = "06151100",
        ['['] = "26060020",
        [']'] = "06262000",
        ['{'] = "26151403121120",
        ['}'] = "06151423121100",
        ['<'] = "450341",
        ['>'] = "054301",
        ['|'] = "0a06",
        ['*'] = "1135 1531 2125",
        ['#'] = "1016 3036 0242 0444",
        ['%'] = "0046 06 40",
        ['&'] = "40051626350201102042",
        ['@'] = "4010010516364542322333",
        ['$'] = "453616050413334241301001 2a27",
        ['^'] = "042644",
        ['~'] = "03143243",
    }.ToFrozenDictionary();

    /// <summary>
    /// The strokes of a line of text, in grid units from the left end of its base line; unknown characters leave a blank.
    /// </summary>
    /// <param name="text">Printable ASCII.</param>
    /// <param name="width">Width of the line in grid units.</param>
    public static ImmutableArray<ImmutableArray<Point2>> Strokes(string text, out double width)
    {
        var strokes = ImmutableArray.CreateBuilder<ImmutableArray<Point2>>();
        double left = 0;
        foreach (char letter in text)
        {
            if (!Glyphs.TryGetValue(letter, out string? glyph))
            {
                left += Blank + Spacing;
                continue;
            }

            double right = 0;
            foreach (string stroke in glyph.Split(' '))
            {
                var corners = ImmutableArray.CreateBuilder<Point2>(stroke.Length / 2);
                for (int i = 0; i + 1 < stroke.Length; i += 2)
                {
                    double x = stroke[i] - '0';
                    double y = stroke[i + 1] >= 'a' ? 'a' - 1 - stroke[i + 1] : stroke[i + 1] - '0';
                    corners.Add(new Point2(left + x, y));
                    right = Math.Max(right, x);
                }

                strokes.Add(corners.ToImmutable());
            }

            left += right + Spacing;
        }

        width = Math.Max(0, left - Spacing);
        return strokes.ToImmutable();
    }

    /// <summary>Whether a character has a drawing; a blank has none.</summary>
    public static bool Knows(char letter) => Glyphs.ContainsKey(letter);
}
