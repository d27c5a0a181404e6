namespace ShellForge.Formats.Rendering;

/// <summary>A picture: rows from the top, three bytes a pixel.</summary>
public sealed class Picture
{
    private const int FewColours = 256;

    /// <summary>A picture of one colour.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No pixel, or more than 16384 on a side.</exception>
    public Picture(int width, int height, Rgb background)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(width, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(height, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(width, 16384);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(height, 16384);
        Width = width;
        Height = height;
        Bytes = new byte[3 * width * height];
        for (int i = 0; i < Bytes.Length; i += 3)
        {
            (Bytes[i], Bytes[i + 1], Bytes[i + 2]) = (background.R, background.G, background.B);
        }
    }

    /// <summary>Pixels in a row.</summary>
    public int Width { get; }

    /// <summary>Rows.</summary>
    public int Height { get; }

    /// <summary>The colour of a pixel, counted from the left and from the top.</summary>
    public Rgb this[int x, int y]
    {
        get
        {
            int i = 3 * ((y * Width) + x);
            return new Rgb(Bytes[i], Bytes[i + 1], Bytes[i + 2]);
        }

        set
        {
            int i = 3 * ((y * Width) + x);
            (Bytes[i], Bytes[i + 1], Bytes[i + 2]) = (value.R, value.G, value.B);
        }
    }

    /// <summary>Lays another picture over this one.</summary>
    /// <param name="other">The other.</param>
    /// <param name="left">Where its left column comes to lie.</param>
    /// <param name="top">Where its top row comes to lie.</param>
    /// <exception cref="ArgumentException">It does not fit in there.</exception>
    public void Lay(Picture other, int left, int top)
    {
        if (left < 0 || top < 0 || left + other.Width > Width || top + other.Height > Height)
        {
            throw new ArgumentException(
                $"A picture of {other.Width} x {other.Height} at {left}, {top} does not fit into one of {Width} x {Height}.",
                nameof(other));
        }

        for (int y = 0; y < other.Height; y++)
        {
            other.Bytes.AsSpan(3 * y * other.Width, 3 * other.Width).CopyTo(Bytes.AsSpan(3 * (((top + y) * Width) + left)));
        }
    }

    /// <summary>The picture with each pixel as a square of so many.</summary>
    public Picture Enlarged(int times)
    {
        var picture = new Picture(Width * times, Height * times, Rgb.White);
        int row = 3 * picture.Width;
        for (int y = 0; y < Height; y++)
        {
            Span<byte> first = picture.Bytes.AsSpan(y * times * row, row);
            for (int at = 0, from = 3 * y * Width; at < row; from += 3)
            {
                for (int k = 0; k < times; k++, at += 3)
                {
                    Bytes.AsSpan(from, 3).CopyTo(first[at..]);
                }
            }

            for (int k = 1; k < times; k++)
            {
                first.CopyTo(picture.Bytes.AsSpan(((y * times) + k) * row));
            }
        }

        return picture;
    }

    /// <summary>
    /// The same picture with at most 256 colours, so that a shaded one packs half as small: channels are rounded to steps of two, four and
    /// so on until that is enough. Black and white stay what they are.
    /// </summary>
    public Picture WithFewColours()
    {
        var colours = new HashSet<int>(FewColours + 1);
        ReadOnlySpan<byte> bytes = Bytes;
        for (int step = 1; ; step *= 2)
        {
            byte[] rounded = [.. Enumerable.Range(0, 256).Select(value => (byte)Math.Min(255, (value + (step / 2)) / step * step))];
            colours.Clear();
            int last = -1;
            for (int i = 0; i + 2 < bytes.Length && colours.Count <= FewColours; i += 3)
            {
                // As they are: where they don't change, their rounding does not.
                int colour = (bytes[i] << 16) | (bytes[i + 1] << 8) | bytes[i + 2];
                if (colour != last)
                {
                    colours.Add((rounded[bytes[i]] << 16) | (rounded[bytes[i + 1]] << 8) | rounded[bytes[i + 2]]);
                    last = colour;
                }
            }

            if (colours.Count <= FewColours)
            {
                var picture = new Picture(Width, Height, Rgb.White);
                Span<byte> few = picture.Bytes;
                for (int i = 0; i < few.Length; i++)
                {
                    few[i] = rounded[bytes[i]];
                }

                return picture;
            }
        }
    }

    /// <summary>All pixels, row by row from the top: red, green, blue.</summary>
    internal byte[] Bytes { get; }
}
