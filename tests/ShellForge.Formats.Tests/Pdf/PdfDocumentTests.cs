using FsCheck;
using FsCheck.Xunit;
using PdfSharp.Pdf;
using PdfSharp.Pdf.Content;
using PdfSharp.Pdf.Content.Objects;
using PdfSharp.Pdf.IO;
using ShellForge.Formats.Pdf;
using ShellForge.Formats.Png;
using ShellForge.Formats.Rendering;
using Ours = ShellForge.Formats.Pdf.PdfDocument;

namespace ShellForge.Formats.Tests.Pdf;

public class PdfDocumentTests
{
    private static byte[] Written()
    {
        var picture = new Picture(7, 5, new Rgb(200, 10, 30)) { [3, 2] = new Rgb(1, 2, 3) };
        PdfPicture packed = PdfPicture.OfPng(PngWriter.ToBytes(picture));
        var document = new Ours("Lamp (rev. \u00d6) \\ 1");
        for (int i = 0; i < 3; i++)
        {
            Formats.Pdf.PdfPage page = document.AddPage();
            page.Text(20, 30, "Set (4) inserts \\ 235 \u00b0C \u2192", PdfFont.Bold, 4);
            page.Line(10, 40, 50, 40, 0.3);
            page.Frame(10, 50, 20, 5, 0.3);
            page.Picture(20, 60, 28, 20, packed);
        }

        return document.ToBytes();
    }

    [Fact]
    public void A_foreign_reader_finds_pages_text_and_picture()
    {
        using var read = PdfReader.Open(new MemoryStream(Written()), PdfDocumentOpenMode.Import);

        Assert.Equal(3, read.PageCount);
        Assert.Equal("Lamp (rev. \u00d6) \\ 1", read.Info.Title);
        Assert.Equal(210, read.Pages[0].Width.Millimeter, 1);
        Assert.Equal(297, read.Pages[0].Height.Millimeter, 1);
        CSequence content = ContentReader.ReadContent(read.Pages[2]);
        COperator shown = Assert.Single(content.OfType<COperator>(), each => each.Name == "Tj");
        Assert.Equal("Set (4) inserts \\ 235 \u00b0C ?", ((CString)shown.Operands[0]).Value);
        Assert.Contains(content.OfType<COperator>(), each => each.Name == "Do");

        PdfDictionary picture =
            read.Internals.GetAllObjects().OfType<PdfDictionary>().Single(each => each.Elements.GetName("/Subtype") == "/Image");
        Assert.Equal(7, picture.Elements.GetInteger("/Width"));
        Assert.Equal(5, picture.Elements.GetInteger("/Height"));
    }

    [Fact]
    public void The_table_points_at_the_objects()
    {
        byte[] file = Written();
        string text = System.Text.Encoding.Latin1.GetString(file);
        int table = int.Parse(text[(text.LastIndexOf("startxref\n", StringComparison.Ordinal) + 10)..].Split('\n')[0],
            System.Globalization.CultureInfo.InvariantCulture);
        string[] lines = text[table..].Split('\n');

        Assert.Equal("xref", lines[0]);
        int count = int.Parse(lines[1].Split(' ')[1], System.Globalization.CultureInfo.InvariantCulture);
        Assert.True(count > 9);
        for (int i = 1; i < count; i++)
        {
            // Each entry has 20 bytes, its end of line counted.
            Assert.Equal(19, lines[2 + i].Length);
            int place = int.Parse(lines[2 + i][..10], System.Globalization.CultureInfo.InvariantCulture);
            Assert.StartsWith($"{i} 0 obj\n", text[place..], StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_same_content_gives_the_same_bytes() => Assert.Equal(Written(), Written());

    [Property]
    public void Broken_lines_keep_every_word_and_stay_within_their_width(NonNull<string>[] words, PositiveInt width)
    {
        string text = string.Join(' ', words.Select(word => word.Get.Replace(' ', 'x')));
        string[] lines = [.. PdfFontWidths.Lines(text, PdfFont.Plain, 3.5, width.Get)];

        Assert.Equal(text.Split(' ', StringSplitOptions.RemoveEmptyEntries), lines.SelectMany(line => line.Split(' ')));
        Assert.All(lines,
            line => Assert.True(!line.Contains(' ', StringComparison.Ordinal) || PdfFontWidths.Of(line, PdfFont.Plain, 3.5) <= width.Get));
    }
}
