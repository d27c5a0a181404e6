using System.Globalization;
using System.IO.Compression;
using System.Text;

namespace ShellForge.Formats.Pdf;

/// <summary>
/// A document of text, lines and pictures as PDF 1.4 (ISO 32000-1). Nothing in it tells when or where it was made, so the same content
/// gives the same bytes. Places are mm from the upper left corner of a page, y down.
/// </summary>
/// <param name="title">Title for readers.</param>
public sealed class PdfDocument(string title)
{
    /// <summary>Width of a page, mm: A4.</summary>
    public const double Width = 210;

    /// <summary>Height of a page, mm.</summary>
    public const double Height = 297;

    private const double PointsPerMillimetre = 72 / 25.4;

    // Catalog, page tree, two fonts, facts; then pictures and pages.
    private const int FirstFree = 6;

    private readonly List<PdfPicture> _pictures = [];
    private readonly List<PdfPage> _pages = [];

    /// <summary>Begins a page.</summary>
    public PdfPage AddPage()
    {
        var page = new PdfPage(this);
        _pages.Add(page);
        return page;
    }

    /// <summary>Points of a length.</summary>
    internal static string Points(double millimetres) =>
        (millimetres * PointsPerMillimetre).ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>Number of a picture among the document's; the same picture is kept once.</summary>
    internal int NumberOf(PdfPicture picture)
    {
        int at = _pictures.FindIndex(each => ReferenceEquals(each, picture));
        if (at < 0)
        {
            _pictures.Add(picture);
            at = _pictures.Count - 1;
        }

        return at;
    }

    /// <summary>A text as the standard faces can write it, with its marks made safe.</summary>
    internal static string Literal(string text)
    {
        var literal = new StringBuilder("(");
        foreach (char letter in text)
        {
            switch (letter)
            {
                case '(' or ')' or '\\':
                    literal.Append('\\').Append(letter);
                    break;
                case >= ' ' and <= '~':
                    literal.Append(letter);
                    break;

                // Windows Latin agrees with Unicode in this block.
                case >= '\u00a0' and <= '\u00ff':
                    literal.Append('\\').Append(Convert.ToString(letter, 8));
                    break;
                default:
                    literal.Append('?');
                    break;
            }
        }

        return literal.Append(')').ToString();
    }

    /// <summary>The whole file.</summary>
    public byte[] ToBytes()
    {
        using var stream = new MemoryStream();
        var places = new List<long>();
        Write(stream, "%PDF-1.4\n%\u00e2\u00e3\u00cf\u00d3\n");
        int firstPage = FirstFree + _pictures.Count;
        string kids = string.Join(' ', _pages.Select((_, i) => $"{firstPage + (2 * i)} 0 R"));
        string pictures = string.Concat(_pictures.Select((_, i) => $"/P{i} {FirstFree + i} 0 R "));
        Add("<</Type/Catalog/Pages 2 0 R/Lang(en)/ViewerPreferences<</DisplayDocTitle true>>>>");
        Add($"<</Type/Pages/Kids[{kids}]/Count {_pages.Count}/MediaBox[0 0 {Points(Width)} {Points(Height)}]/Resources<</Font<</F0 3 0 "
            + $"R/F1 4 0 R>>/XObject<<{pictures}>>>>>>");
        Add("<</Type/Font/Subtype/Type1/BaseFont/Helvetica/Encoding/WinAnsiEncoding>>");
        Add("<</Type/Font/Subtype/Type1/BaseFont/Helvetica-Bold/Encoding/WinAnsiEncoding>>");
        Add($"<</Title{Literal(title)}/Producer(ShellForge)>>");
        foreach (PdfPicture picture in _pictures)
        {
            AddStream(
                $"/Type/XObject/Subtype/Image/Width {picture.Width}/Height "
                    + $"{picture.Height}/ColorSpace{ColourSpace(picture)}/BitsPerComponent 8/Filter/FlateDecode/DecodeParms<</Predictor "
                    + $"15/Colors {(picture.Palette.Length > 0 ? 1 : 3)}/BitsPerComponent 8/Columns {picture.Width}>>",
                picture.Data);
        }

        for (int i = 0; i < _pages.Count; i++)
        {
            Add($"<</Type/Page/Parent 2 0 R/Contents {firstPage + (2 * i) + 1} 0 R>>");
            AddStream("/Filter/FlateDecode", Deflated(_pages[i].Content));
        }

        long table = stream.Position;
        Write(stream, $"xref\n0 {places.Count + 1}\n0000000000 65535 f \n");
        foreach (long place in places)
        {
            Write(stream, $"{place.ToString("D10", CultureInfo.InvariantCulture)} 00000 n \n");
        }

        Write(stream, $"trailer\n<</Size {places.Count + 1}/Root 1 0 R/Info 5 0 R>>\nstartxref\n{table}\n%%EOF\n");
        return stream.ToArray();

        void Add(string content)
        {
            places.Add(stream.Position);
            Write(stream, $"{places.Count} 0 obj\n{content}\nendobj\n");
        }

        void AddStream(string facts, byte[] data)
        {
            places.Add(stream.Position);
            Write(stream, $"{places.Count} 0 obj\n<<{facts}/Length {data.Length}>>\nstream\n");
            stream.Write(data);
            Write(stream, "\nendstream\nendobj\n");
        }
    }

    private static string ColourSpace(PdfPicture picture) => picture.Palette.Length == 0
        ? "/DeviceRGB"
        : $"[/Indexed/DeviceRGB {(picture.Palette.Length / 3) - 1}<{Convert.ToHexString(picture.Palette)}>]";

    private static void Write(Stream stream, string text) => stream.Write(Encoding.Latin1.GetBytes(text));

    private static byte[] Deflated(string content)
    {
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            zlib.Write(Encoding.Latin1.GetBytes(content));
        }

        return packed.ToArray();
    }
}
