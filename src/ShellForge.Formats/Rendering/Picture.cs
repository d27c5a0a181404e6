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

    /// <summary>
    /// The same picture with at most 256 colours, so that a shaded one packs half as small: channels are rounded to steps of two, four and so
    /// on until that is enough. Black and white stay what they are.
    /// </summary>
    public Picture WithFewColours()
    {
        var colours = new HashSet<int>();
        for (int step = 1; ; step *= 2)
        {
            byte[] rounded = [.. Enumerable.Range(0, 256).Select(value => (byte)Math.Min(255, (value + (step / 2)) / step * step))];
            colours.Clear();
            int last = -1;
            for (int i = 0; i < Bytes.Length && colours.Count <= FewColours; i += 3)
            {
                int colour = (rounded[Bytes[i]] << 16) | (rounded[Bytes[i + 1]] << 8) | rounded[Bytes[i + 2]];
                if (colour != last)
                {
                    colours.Add(colour);
                    last = colour;
                }
            }

            if (colours.Count <= FewColours)
            {
                var picture = new Picture(Width, Height, Rgb.White);
                for (int i = 0; i < Bytes.Length; i++)
                {
                    picture.Bytes[i] = rounded[Bytes[i]];
                }

                return picture;
            }
        }
    }

    /// <summary>All pixels, row by row from the top: red, green, blue.</summary>
    internal byte[] Bytes { get; }
}
