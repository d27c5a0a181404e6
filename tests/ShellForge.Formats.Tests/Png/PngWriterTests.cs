using System.Buffers.Binary;
using System.IO.Compression;
using ShellForge.Formats.Png;
using ShellForge.Formats.Rendering;

namespace ShellForge.Formats.Tests.Png;

public sealed class PngWriterTests
{
    [Theory]
    [InlineData(1, 1)]
    [InlineData(7, 5)]
    [InlineData(64, 33)]
    public void What_is_written_is_read_back_pixel_by_pixel(int width, int height)
    {
        var random = new Random(width);
        var picture = new Picture(width, height, Rgb.White);
        for (int i = 0; i < width * height; i++)
        {
            // Runs, slopes and noise, so that each filter is the best of some row.
            int x = i % width;
            int y = i / width;
            picture[x, y] = (y % 3) switch
            {
                0 => new Rgb((byte)(3 * x), (byte)(x + y), 7),
                1 => new Rgb(200, (byte)(y * 5), 9),
                _ => new Rgb((byte)random.Next(256), (byte)random.Next(256), (byte)random.Next(256)),
            };
        }

        byte[] file = PngWriter.ToBytes(picture);
        byte[] pixels = Decode(file, out int readWidth, out int readHeight);
        Assert.Equal((width, height), (readWidth, readHeight));
        for (int i = 0; i < width * height; i++)
        {
            Assert.Equal(picture[i % width, i / width], new Rgb(pixels[3 * i], pixels[(3 * i) + 1], pixels[(3 * i) + 2]));
        }

        Assert.Equal(file, PngWriter.ToBytes(picture));
    }

    [Fact]
    public void A_few_colours_are_near_to_the_true_ones_and_come_back_from_a_palette()
    {
        var slope = new Picture(96, 96, Rgb.White);
        for (int i = 0; i < 96 * 96; i++)
        {
            slope[i % 96, i / 96] = i < 96 ? new Rgb(0, 0, 0)
                : i < 192 ? Rgb.White : new Rgb((byte)(2 * (i % 96)), (byte)(2 * (i / 96)), 90);
        }

        Picture few = slope.WithFewColours();
        var colours = new HashSet<Rgb>();
        for (int i = 0; i < 96 * 96; i++)
        {
            Rgb a = slope[i % 96, i / 96];
            Rgb b = few[i % 96, i / 96];
            colours.Add(b);
            Assert.InRange(Math.Max(Math.Abs(a.R - b.R), Math.Max(Math.Abs(a.G - b.G), Math.Abs(a.B - b.B))), 0, 8);
        }

        Assert.InRange(colours.Count, 65, 256);
        Assert.Equal((new Rgb(0, 0, 0), Rgb.White), (few[5, 0], few[5, 1]));
        byte[] pixels = Decode(PngWriter.ToBytes(few), out _, out _);
        Assert.Equal(few[70, 50],
            new Rgb(pixels[3 * ((50 * 96) + 70)], pixels[(3 * ((50 * 96) + 70)) + 1], pixels[(3 * ((50 * 96) + 70)) + 2]));
    }

    // A reader of our own after the specification; checks lengths, order and checksums.
    private static byte[] Decode(byte[] file, out int width, out int height)
    {
        Assert.Equal([0x89, 0x50, 0x4E, 0x47, 13, 10, 26, 10], file[..8]);
        var data = new MemoryStream();
        var names = new List<string>();
        byte[]? palette = null;
        int kind = 0;
        (width, height) = (0, 0);
        for (int at = 8; at < file.Length;)
        {
            int length = BinaryPrimitives.ReadInt32BigEndian(file.AsSpan(at));
            string name = System.Text.Encoding.ASCII.GetString(file, at + 4, 4);
            ReadOnlySpan<byte> body = file.AsSpan(at + 8, length);
            Assert.Equal(SlowCrc(file.AsSpan(at + 4, length + 4)), BinaryPrimitives.ReadUInt32BigEndian(file.AsSpan(at + 8 + length)));
            names.Add(name);
            if (name == "IHDR")
            {
                width = BinaryPrimitives.ReadInt32BigEndian(body);
                height = BinaryPrimitives.ReadInt32BigEndian(body[4..]);
                kind = body[9];
                Assert.Contains(kind, new[] { 2, 3 });
                Assert.Equal([8, 0, 0, 0], new[] { body[8], body[10], body[11], body[12] });
            }
            else if (name == "PLTE")
            {
                palette = body.ToArray();
            }
            else if (name == "IDAT")
            {
                data.Write(body);
            }

            at += length + 12;
        }

        Assert.Equal(kind == 3 ? ["IHDR", "sRGB", "PLTE", "IDAT", "IEND"] : ["IHDR", "sRGB", "IDAT", "IEND"], names);
        data.Position = 0;
        using var zlib = new ZLibStream(data, CompressionMode.Decompress);
        var raw = new MemoryStream();
        zlib.CopyTo(raw);
        byte[] read = Unfilter(raw.ToArray(), width, height, kind == 3 ? 1 : 3);
        return palette is null ? read : [.. read.SelectMany(number => palette[(3 * number)..((3 * number) + 3)])];
    }

    private static byte[] Unfilter(byte[] raw, int width, int height, int depth)
    {
        int stride = depth * width;
        Assert.Equal(height * (stride + 1), raw.Length);
        byte[] pixels = new byte[height * stride];
        for (int y = 0; y < height; y++)
        {
            for (int i = 0; i < stride; i++)
            {
                int a = i < depth ? 0 : pixels[(y * stride) + i - depth];
                int b = y == 0 ? 0 : pixels[((y - 1) * stride) + i];
                int c = i < depth || y == 0 ? 0 : pixels[((y - 1) * stride) + i - depth];
                int p = a + b - c;
                int paeth = Math.Abs(p - a) <= Math.Abs(p - b) && Math.Abs(p - a) <= Math.Abs(p - c) ? a
                    : Math.Abs(p - b) <= Math.Abs(p - c) ? b : c;
                int guess = raw[y * (stride + 1)] switch { 0 => 0, 1 => a, 2 => b, 3 => (a + b) / 2, _ => paeth };
                pixels[(y * stride) + i] = (byte)(raw[(y * (stride + 1)) + 1 + i] + guess);
            }
        }

        return pixels;
    }

    private static uint SlowCrc(ReadOnlySpan<byte> data)
    {
        uint crc = 0xFFFFFFFF;
        foreach (byte value in data)
        {
            crc ^= value;
            for (int i = 0; i < 8; i++)
            {
                crc = (crc >> 1) ^ (0xEDB88320u & (0u - (crc & 1)));
            }
        }

        return ~crc;
    }
}
