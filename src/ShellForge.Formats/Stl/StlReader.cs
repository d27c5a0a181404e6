using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ShellForge.Formats.Soup;

namespace ShellForge.Formats.Stl;

/// <summary>
/// Reads binary and text STL that anyone may have written. Memory and time follow the length of the file, never a number that
/// stands in it.
/// </summary>
public static class StlReader
{
    /// <summary>Reads a whole file.</summary>
    /// <returns>All triangles that are there, and everything that is wrong; never throws on content.</returns>
    public static SoupFile Read(ReadOnlySpan<byte> content)
    {
        if (content.Length == 0)
        {
            return Failed("STL", "empty-file", "the file is empty");
        }

        // A binary file may begin with the word "solid" too: a count that fits the length decides first.
        if (CountFits(content) || !LooksLikeText(content))
        {
            return ReadBinary(content);
        }

        return StlTextReader.Read(content);
    }

    private static bool CountFits(ReadOnlySpan<byte> content) =>
        content.Length >= StlWriter.HeaderLength + 4
        && content.Length == StlWriter.HeaderLength + 4 + ((long)DeclaredCount(content) * StlWriter.TriangleLength);

    private static uint DeclaredCount(ReadOnlySpan<byte> content) =>
        BinaryPrimitives.ReadUInt32LittleEndian(content[StlWriter.HeaderLength..]);

    private static bool LooksLikeText(ReadOnlySpan<byte> content)
    {
        ReadOnlySpan<byte> start = content.StartsWith("\uFEFF"u8) ? content[3..] : content;
        start = start.TrimStart(" \t\r\n"u8);
        if (start.Length < 5 || !Ascii.EqualsIgnoreCase(start[..5], "solid"u8))
        {
            return false;
        }

        ReadOnlySpan<byte> sample = start[..Math.Min(start.Length, 512)];
        return sample.IndexOf((byte)0) < 0;
    }

    private static SoupFile ReadBinary(ReadOnlySpan<byte> content)
    {
        const string kind = "binary STL";
        const int start = StlWriter.HeaderLength + 4;
        if (content.Length < start)
        {
            return Failed(kind, "truncated", $"the file ends after {content.Length} bytes, within the {start} bytes of its head");
        }

        var faults = ImmutableArray.CreateBuilder<FileFault>();
        uint declared = DeclaredCount(content);
        int whole = (content.Length - start) / StlWriter.TriangleLength;
        long rest = content.Length - start - ((long)declared * StlWriter.TriangleLength);
        if (rest < 0)
        {
            faults.Add(new FileFault(
                "truncated",
                $"the head says {declared} triangles, the file ends at byte {content.Length} within triangle {whole + 1}"));
        }
        else if (rest > 0)
        {
            faults.Add(new FileFault(
                "wrong-count", $"the head says {declared} triangles, and {rest} more bytes follow the last of them"));
        }

        int count = (int)Math.Min(declared, (uint)whole);
        if (count == 0)
        {
            faults.Add(new FileFault("no-triangle", "the file holds no triangle"));
            return new SoupFile(kind, [], faults.ToImmutable());
        }

        var body = new SoupBuilder("");
        Span<float> corners = stackalloc float[SoupBuilder.NumbersPerTriangle];
        for (int t = 0; t < count; t++)
        {
            ReadOnlySpan<byte> record = content.Slice(start + (t * StlWriter.TriangleLength) + 12, 36);
            for (int i = 0; i < corners.Length; i++)
            {
                corners[i] = BinaryPrimitives.ReadSingleLittleEndian(record[(4 * i)..]);
            }

            body.Add(corners, string.Create(CultureInfo.InvariantCulture, $"triangle {t + 1}"));
        }

        return SoupBuilder.Finish(kind, [body], faults);
    }

    private static SoupFile Failed(string kind, string code, string message) =>
        new(kind, [], [new FileFault(code, message)]);
}
