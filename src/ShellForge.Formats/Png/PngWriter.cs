using System.Buffers.Binary;
using System.IO.Compression;
using System.Numerics;
using ShellForge.Formats.Rendering;

namespace ShellForge.Formats.Png;

/// <summary>
/// Writes pictures as PNG: 8 bits a channel, or a palette where there are at most 256 colours; sRGB, nothing else in the file, so the
/// same picture gives the same bytes on one release of the runtime. Source: PNG specification, third edition (W3C 2023).
/// </summary>
public static class PngWriter
{
    private static ReadOnlySpan<byte> Signature => [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A];

    /// <summary>Writes a picture.</summary>
    /// <param name="stream">Where to.</param>
    /// <param name="picture">What.</param>
    /// <param name="pixelsPerMillimetre">How large it prints, when that matters; 0 leaves it out.</param>
    public static void Write(Stream stream, Picture picture, double pixelsPerMillimetre = 0)
    {
        stream.Write(Signature);
        byte[]? indices = Indexed(picture, out byte[] palette);
        Span<byte> header = stackalloc byte[13];
        BinaryPrimitives.WriteInt32BigEndian(header, picture.Width);
        BinaryPrimitives.WriteInt32BigEndian(header[4..], picture.Height);
        header[8] = 8;
        header[9] = (byte)(indices is null ? 2 : 3);
        header[10..].Clear();
        WriteChunk(stream, "IHDR"u8, header);
        WriteChunk(stream, "sRGB"u8, [0]);
        if (pixelsPerMillimetre > 0)
        {
            Span<byte> size = stackalloc byte[9];
            int perMetre = (int)Math.Floor((pixelsPerMillimetre * 1000) + 0.5);
            BinaryPrimitives.WriteInt32BigEndian(size, perMetre);
            BinaryPrimitives.WriteInt32BigEndian(size[4..], perMetre);
            size[8] = 1;
            WriteChunk(stream, "pHYs"u8, size);
        }

        if (indices is not null)
        {
            WriteChunk(stream, "PLTE"u8, palette);
        }

        WriteChunk(stream, "IDAT"u8, indices is null ? Compressed(picture) : Compressed(indices, picture.Width));
        WriteChunk(stream, "IEND"u8, []);
    }

    /// <summary>The picture as the bytes of a file.</summary>
    public static byte[] ToBytes(Picture picture)
    {
        using var stream = new MemoryStream();
        Write(stream, picture);
        return stream.ToArray();
    }

    // The pixels as numbers of the colours, in the order in which they come; null where there are more than 256.
    private static byte[]? Indexed(Picture picture, out byte[] palette)
    {
        ReadOnlySpan<byte> bytes = picture.Bytes;
        byte[] indices = new byte[picture.Width * picture.Height];
        var numbers = new Dictionary<int, byte>();
        var colours = new List<byte>();
        int last = -1;
        byte number = 0;
        for (int i = 0; i < indices.Length; i++)
        {
            int colour = (bytes[3 * i] << 16) | (bytes[(3 * i) + 1] << 8) | bytes[(3 * i) + 2];
            if (colour != last && !numbers.TryGetValue(colour, out number))
            {
                if (numbers.Count == 256)
                {
                    palette = [];
                    return null;
                }

                number = (byte)numbers.Count;
                numbers.Add(colour, number);
                colours.AddRange([bytes[3 * i], bytes[(3 * i) + 1], bytes[(3 * i) + 2]]);
            }

            last = colour;
            indices[i] = number;
        }

        palette = [.. colours];
        return indices;
    }

    // Numbers of colours have no slope: no filter makes them smaller.
    private static byte[] Compressed(byte[] indices, int width)
    {
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            for (int at = 0; at < indices.Length; at += width)
            {
                zlib.WriteByte(0);
                zlib.Write(indices, at, width);
            }
        }

        return packed.ToArray();
    }

    // Each row is preceded by the filter that leaves the smallest sum of differences: the usual rule of thumb for small files.
    private static byte[] Compressed(Picture picture)
    {
        int stride = 3 * picture.Width;
        using var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            byte[][] tries = [new byte[stride + 1], new byte[stride + 1], new byte[stride + 1]];
            byte[] before = new byte[stride];
            for (int y = 0; y < picture.Height; y++)
            {
                ReadOnlySpan<byte> row = picture.Bytes.AsSpan(y * stride, stride);
                int best = 0;
                long bestSum = long.MaxValue;

                // Pictures drawn with several pixels a cell repeat their rows: nothing does better than no difference.
                for (int k = 0; k < tries.Length && bestSum > 0; k++)
                {
                    long sum = Filter(k, row, before, tries[k]);
                    if (sum < bestSum)
                    {
                        (best, bestSum) = (k, sum);
                    }
                }

                zlib.Write(tries[best]);
                row.CopyTo(before);
            }
        }

        return packed.ToArray();
    }

    // Filters 1 (left), 2 (above) and 4 (Paeth). The sum is that of the distances from 0, either way round.
    private static long Filter(int kind, ReadOnlySpan<byte> row, ReadOnlySpan<byte> before, Span<byte> result)
    {
        result[0] = kind switch { 0 => 1, 1 => 2, _ => 4 };
        Span<byte> differences = result[1..];
        int i = 0;
        for (; i < 3; i++)
        {
            differences[i] = (byte)(row[i] - (kind == 0 ? 0 : before[i]));
        }

        for (; i <= row.Length - Vector<byte>.Count; i += Vector<byte>.Count)
        {
            Vector<byte> guess = kind switch
            {
                0 => new Vector<byte>(row[(i - 3)..]),
                1 => new Vector<byte>(before[i..]),
                _ => Paeth(new Vector<byte>(row[(i - 3)..]), new Vector<byte>(before[i..]), new Vector<byte>(before[(i - 3)..])),
            };
            (new Vector<byte>(row[i..]) - guess).CopyTo(differences[i..]);
        }

        for (; i < row.Length; i++)
        {
            int guess = kind switch
            {
                0 => row[i - 3],
                1 => before[i],
                _ => Paeth(row[i - 3], before[i], before[i - 3]),
            };
            differences[i] = (byte)(row[i] - guess);
        }

        return DistanceFromZero(differences);
    }

    private static long DistanceFromZero(ReadOnlySpan<byte> differences)
    {
        long sum = 0;
        int i = 0;
        Vector<uint> sums = default;
        for (; i <= differences.Length - Vector<byte>.Count; i += Vector<byte>.Count)
        {
            var difference = new Vector<byte>(differences[i..]);
            Vector.Widen(Vector.Min(difference, Vector<byte>.Zero - difference), out Vector<ushort> low, out Vector<ushort> high);
            Vector.Widen(low + high, out Vector<uint> one, out Vector<uint> other);
            sums += one + other;
        }

        for (; i < differences.Length; i++)
        {
            sum += Math.Min((int)differences[i], 256 - differences[i]);
        }

        return sum + Vector.Sum(sums);
    }

    private static int Paeth(int left, int above, int corner)
    {
        int guess = left + above - corner;
        int toLeft = Math.Abs(guess - left);
        int toAbove = Math.Abs(guess - above);
        int toCorner = Math.Abs(guess - corner);
        return toLeft <= toAbove && toLeft <= toCorner ? left : toAbove <= toCorner ? above : corner;
    }

    // The same for many bytes at once, two by two in halves that hold a sign.
    private static Vector<byte> Paeth(Vector<byte> left, Vector<byte> above, Vector<byte> corner)
    {
        Vector.Widen(left, out Vector<ushort> leftLow, out Vector<ushort> leftHigh);
        Vector.Widen(above, out Vector<ushort> aboveLow, out Vector<ushort> aboveHigh);
        Vector.Widen(corner, out Vector<ushort> cornerLow, out Vector<ushort> cornerHigh);
        return Vector.Narrow(Paeth(leftLow, aboveLow, cornerLow), Paeth(leftHigh, aboveHigh, cornerHigh));
    }

    private static Vector<ushort> Paeth(Vector<ushort> left, Vector<ushort> above, Vector<ushort> corner)
    {
        Vector<short> fromCornerUp = (above - corner).As<ushort, short>();
        Vector<short> fromCornerAcross = (left - corner).As<ushort, short>();
        Vector<short> toLeft = Vector.Abs(fromCornerUp);
        Vector<short> toAbove = Vector.Abs(fromCornerAcross);
        Vector<short> toCorner = Vector.Abs(fromCornerUp + fromCornerAcross);
        Vector<short> isLeft = Vector.LessThanOrEqual(toLeft, toAbove) & Vector.LessThanOrEqual(toLeft, toCorner);
        return Vector.ConditionalSelect(
            isLeft.As<short, ushort>(), left,
            Vector.ConditionalSelect(Vector.LessThanOrEqual(toAbove, toCorner).As<short, ushort>(), above, corner));
    }

    private static void WriteChunk(Stream stream, ReadOnlySpan<byte> type, ReadOnlySpan<byte> data)
    {
        Span<byte> number = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(number, data.Length);
        stream.Write(number);
        stream.Write(type);
        stream.Write(data);
        uint crc = Crc(type, data);
        BinaryPrimitives.WriteUInt32BigEndian(number, crc);
        stream.Write(number);
    }

    // CRC-32 with the reflected polynomial of the specification, bit by bit over a table of 256.
    private static uint Crc(ReadOnlySpan<byte> type, ReadOnlySpan<byte> data)
    {
        uint crc = Update(0xFFFFFFFF, type);
        return ~Update(crc, data);
    }

    private static uint Update(uint crc, ReadOnlySpan<byte> data)
    {
        foreach (byte b in data)
        {
            crc = Table[(crc ^ b) & 0xFF] ^ (crc >> 8);
        }

        return crc;
    }

    private static readonly uint[] Table = [.. Enumerable.Range(0, 256).Select(i =>
    {
        uint value = (uint)i;
        for (int bit = 0; bit < 8; bit++)
        {
            value = (value & 1) != 0 ? 0xEDB88320 ^ (value >> 1) : value >> 1;
        }

        return value;
    })];
}
