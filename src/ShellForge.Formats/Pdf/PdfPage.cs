using System.Text;
using static ShellForge.Formats.Pdf.PdfDocument;

namespace ShellForge.Formats.Pdf;

/// <summary>A page. What is drawn later lies above.</summary>
public sealed class PdfPage
{
    private readonly PdfDocument _document;
    private readonly StringBuilder _content = new();

    internal PdfPage(PdfDocument document) => _document = document;

    /// <summary>What is drawn, in the language of the format.</summary>
    internal string Content => _content.ToString();

    /// <summary>A line of text.</summary>
    /// <param name="x">Its left end, mm.</param>
    /// <param name="y">Its base line, mm.</param>
    /// <param name="text">The text; letters that the standard faces lack become question marks.</param>
    /// <param name="font">Face.</param>
    /// <param name="size">Font size, mm.</param>
    public void Text(double x, double y, string text, PdfFont font, double size) =>
        _content.Append($"BT /F{(int)font} {Points(size)} Tf {Points(x)} {Points(Height - y)} Td {Literal(text)} Tj ET\n");

    /// <summary>A straight line.</summary>
    public void Line(double fromX, double fromY, double toX, double toY, double thickness) =>
        _content.Append($"{Points(thickness)} w {Points(fromX)} {Points(Height - fromY)} m {Points(toX)} {Points(Height - toY)} l S\n");

    /// <summary>The outline of a rectangle.</summary>
    public void Frame(double x, double y, double width, double height, double thickness) =>
        _content.Append($"{Points(thickness)} w {Points(x)} {Points(Height - y - height)} {Points(width)} {Points(height)} re S\n");

    /// <summary>Adds operators of the format.</summary>
    internal void Add(string operators) => _content.Append(operators);

    /// <summary>A picture.</summary>
    public void Picture(double x, double y, double width, double height, PdfPicture picture) =>
        _content.Append(
            $"q {Points(width)} 0 0 {Points(height)} {Points(x)} {Points(Height - y - height)} cm /P{_document.NumberOf(picture)} Do Q\n");
}
