using System.Buffers;
using System.Globalization;
using System.Text;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace ShellForge.Cli.Printing;

/// <summary>
/// What may be shown of texts that others wrote (names, reasons, messages in their reports): no sign that steers a terminal or turns the
/// order of what is read.
/// </summary>
internal static class SafeText
{
    private const char Mark = '\uFFFD';

    // Directions within a line: what is read is another text than what is there.
    private const string Turning = "\u202A\u202B\u202C\u202D\u202E\u2066\u2067\u2068\u2069";

    // Behind the last of the control signs, U+0000 to U+001F and U+007F to U+009F.
    private const char AfterControls = '\u00A0';

    private static readonly SearchValues<char> Steering = SearchValues.Create(
        [.. Enumerable.Range(0, AfterControls).Select(code => (char)code).Where(sign => char.IsControl(sign) && sign is not ('\n' or '\t')),
            .. Turning]);

    /// <summary>A text with a mark in place of each such sign; ends of lines and tabs stay.</summary>
    public static string Of(string text) => Steers(text) ? string.Concat(text.Select(sign => Steers(sign) ? Mark : sign)) : text;

    /// <summary>JSON in which such signs are escaped, as the same text.</summary>
    public static string OfJson(string json) => Steers(json)
        ? string.Concat(json.Select(sign => Steers(sign) ? string.Create(CultureInfo.InvariantCulture, $"\\u{(int)sign:x4}") : $"{sign}"))
        : json;

    /// <summary>A writer for what is shown, before one that shows all that it is given.</summary>
    public static TextWriter Before(TextWriter shown) => new Writer(shown);

    /// <summary>The same for a console that has colours of its own.</summary>
    public static void Guard(IAnsiConsole console) => console.Pipeline.Attach(new Hook());

    private static bool Steers(char sign) => Steering.Contains(sign);

    private static bool Steers(string text) => text.AsSpan().ContainsAny(Steering);

    private sealed class Writer : TextWriter
    {
        private readonly TextWriter _shown;

        public Writer(TextWriter shown)
            : base(CultureInfo.InvariantCulture) => (_shown, CoreNewLine) = (shown, ['\n']);

        public override Encoding Encoding => _shown.Encoding;

        public override void Write(char value) => _shown.Write(Steers(value) ? Mark : value);

        public override void Write(string? value) => _shown.Write(Of(value ?? ""));

        public override void Write(char[] buffer, int index, int count) => Write(new string(buffer, index, count));

        public override void WriteLine() => _shown.WriteLine();

        public override void WriteLine(string? value) => _shown.WriteLine(Of(value ?? ""));

        public override void Flush() => _shown.Flush();
    }

    private sealed class Hook : IRenderHook
    {
        public IEnumerable<IRenderable> Process(RenderOptions options, IEnumerable<IRenderable> renderables) =>
            renderables.Select(each => new Cleaned(each));
    }

    private sealed class Cleaned(IRenderable inner) : IRenderable
    {
        public Measurement Measure(RenderOptions options, int maxWidth) => inner.Measure(options, maxWidth);

        public IEnumerable<Segment> Render(RenderOptions options, int maxWidth) => inner.Render(options, maxWidth).Select(segment =>
            segment.IsControlCode || segment.IsLineBreak || !Steers(segment.Text)
                ? segment
                : new Segment(Of(segment.Text), segment.Style));
    }
}
