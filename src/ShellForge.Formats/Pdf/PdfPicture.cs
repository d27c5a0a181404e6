using System.Buffers.Binary;

namespace ShellForge.Formats.Pdf;

/// <summary>A picture as a document holds it: the rows of a PNG, which both formats pack in one way.</summary>
public sealed class PdfPicture
{
    private const int SignatureLength = 8;
    private const byte ColourKindRgb = 2;
    private const byte ColourKindPalette = 3;

    private PdfPicture(int width, int height, byte[] palette, byte[] data)
    {
        Width = width;
        Height = height;
        Palette = palette;
        Data = data;
    }

    /// <summary>Pixels in a row.</summary>
    public int Width { get; }

    /// <summary>Rows.</summary>
    public int Height { get; }

    /// <summary>Red, green and blue of each colour; empty where pixels carry their own.</summary>
    internal byte[] Palette { get; }

    /// <summary>The packed rows.</summary>
    internal byte[] Data { get; }

    /// <summary>Takes a PNG of 8-bit RGB or palette numbers without interlacing, as <see cref="Png.PngWriter"/> writes it.</summary>
    /// <exception cref="ArgumentException">It is of another kind.</exception>
    public static PdfPicture OfPng(ReadOnlySpan<byte> png)
    {
        int width = 0;
        int height = 0;
        byte[] palette = [];
        using var rows = new MemoryStream();
        ReadOnlySpan<byte> rest = png[SignatureLength..];
        while (rest.Length >= 12)
        {
            int length = BinaryPrimitives.ReadInt32BigEndian(rest);
            ReadOnlySpan<byte> kind = rest[4..8];
            ReadOnlySpan<byte> data = rest.Slice(8, length);
            if (kind.SequenceEqual("IHDR"u8))
            {
                width = BinaryPrimitives.ReadInt32BigEndian(data);
                height = BinaryPrimitives.ReadInt32BigEndian(data[4..]);
                if (data[8] != 8 || data[9] is not (ColourKindRgb or ColourKindPalette) || data[12] != 0)
                {
                    throw new ArgumentException("not a plain picture of 8 bits", nameof(png));
                }
            }
            else if (kind.SequenceEqual("PLTE"u8))
            {
                palette = data.ToArray();
            }
            else if (kind.SequenceEqual("IDAT"u8))
            {
                rows.Write(data);
            }

            rest = rest[(12 + length)..];
        }

        return new PdfPicture(width, height, palette, rows.ToArray());
    }
}
