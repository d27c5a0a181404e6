namespace ShellForge.Geometry.Planar;

/// <summary>
/// A side of an outline between two lattice points that are not one, in steps; numbers of up to 26 bits, so products fit in 64.
/// </summary>
internal readonly struct LatticeSide
{
    private readonly int _x0;
    private readonly int _y0;
    private readonly int _x1;
    private readonly int _y1;

    /// <param name="from">Number of the corner that it starts at.</param>
    /// <param name="a">Its start.</param>
    /// <param name="b">Its end.</param>
    public LatticeSide(int from, (int X, int Y) a, (int X, int Y) b) => (From, _x0, _y0, _x1, _y1) = (from, a.X, a.Y, b.X, b.Y);

    /// <summary>Number of the corner that it starts at.</summary>
    public int From { get; }

    /// <summary>Its leftmost x.</summary>
    public int MinX => Math.Min(_x0, _x1);

    /// <summary>Its rightmost x.</summary>
    public int MaxX => Math.Max(_x0, _x1);

    /// <summary>Its lowest y.</summary>
    public int MinY => Math.Min(_y0, _y1);

    /// <summary>Its highest y.</summary>
    public int MaxY => Math.Max(_y0, _y1);

    private long Dx => (long)_x1 - _x0;

    private long Dy => (long)_y1 - _y0;

    /// <summary>All pairs of sides whose boxes share a point, each once. The sides are put in the order of their left ends.</summary>
    public static IEnumerable<(LatticeSide First, LatticeSide Second)> Pairs(LatticeSide[] sides)
    {
        Array.Sort(sides, (a, b) => a.MinX != b.MinX ? a.MinX.CompareTo(b.MinX) : a.From.CompareTo(b.From));
        int[] lefts = Array.ConvertAll(sides, side => side.MinX);
        var heights = new HeightSpans(sides.Length, i => (sides[i].MinY, sides[i].MaxY));
        for (int i = 0; i < sides.Length; i++)
        {
            LatticeSide side = sides[i];
            int end = FirstBeyond(lefts, i + 1, side.MaxX);
            for (int j = heights.Next(i + 1, end, side.MinY, side.MaxY); j < end; j = heights.Next(j + 1, end, side.MinY, side.MaxY))
            {
                yield return (side, sides[j]);
            }
        }
    }

    /// <summary>Whether two sides whose boxes share a point share one themselves.</summary>
    public bool Meets(LatticeSide other)
    {
        long a = SideOf(other._x0, other._y0);
        long b = SideOf(other._x1, other._y1);
        if ((a > 0 && b > 0) || (a < 0 && b < 0))
        {
            return false;
        }

        long c = other.SideOf(_x0, _y0);
        long d = other.SideOf(_x1, _y1);
        return !((c > 0 && d > 0) || (c < 0 && d < 0));
    }

    /// <summary>Whether the side that goes on from this one's end lies back on it.</summary>
    public bool TurnsBack(LatticeSide next) => SideOf(next._x1, next._y1) == 0 && (Dx * next.Dx) + (Dy * next.Dy) < 0;

    /// <summary>The lattice point nearest to where two sides cross between their ends, halves going up; null where they don't.</summary>
    public (int X, int Y)? Crossing(LatticeSide other)
    {
        long a = SideOf(other._x0, other._y0);
        long b = SideOf(other._x1, other._y1);
        if (a == 0 || b == 0 || (a > 0) == (b > 0))
        {
            return null;
        }

        long c = other.SideOf(_x0, _y0);
        long d = other.SideOf(_x1, _y1);
        if (c == 0 || d == 0 || (c > 0) == (d > 0))
        {
            return null;
        }

        // This side is crossed at the share c / (c - d) of its way.
        return (Rounded(_x0, Dx, c, c - d), Rounded(_y0, Dy, c, c - d));
    }

    /// <summary>
    /// Whether it passes the square of one step round a lattice point other than its ends; left and lower sides belong to the square.
    /// </summary>
    public bool Passes((int X, int Y) pixel)
    {
        if (pixel == (_x0, _y0) || pixel == (_x1, _y1) || pixel.X < MinX || pixel.X > MaxX || pixel.Y < MinY || pixel.Y > MaxY)
        {
            return false;
        }

        // Twice the distance from the line times its length, at the middle and, from there, at the corners.
        long middle = 2 * SideOf(pixel.X, pixel.Y);
        long reach = Math.Abs(Dx) + Math.Abs(Dy);
        return Math.Abs(middle) < reach || middle + Dy - Dx == 0;
    }

    /// <summary>The order of two points along it that it passes.</summary>
    public int Compare((int X, int Y) a, (int X, int Y) b)
    {
        int across = (Dx < 0 ? -1 : 1) * a.X.CompareTo(b.X);
        int up = (Dy < 0 ? -1 : 1) * a.Y.CompareTo(b.Y);
        return Math.Abs(Dx) >= Math.Abs(Dy) ? (across != 0 ? across : up) : (up != 0 ? up : across);
    }

    // Mostly a few steps on: sides are short.
    private static int FirstBeyond(int[] rising, int from, int value)
    {
        int reach = 1;
        while (from + reach < rising.Length && rising[from + reach] <= value)
        {
            reach *= 2;
        }

        int low = from + (reach / 2);
        int high = Math.Min(rising.Length, from + reach);
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = rising[middle] <= value ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    // Positive left of it, 0 on its line.
    private long SideOf(int x, int y) => (Dx * ((long)y - _y0)) - (Dy * ((long)x - _x0));

    private static int Rounded(int from, long along, long share, long whole)
    {
        if (whole < 0)
        {
            (share, whole) = (-share, -whole);
        }

        Int128 twice = ((Int128)2 * along * share) + whole;
        Int128 quotient = twice / (2 * (Int128)whole);
        return from + (int)(twice < 0 && quotient * 2 * whole != twice ? quotient - 1 : quotient);
    }
}
