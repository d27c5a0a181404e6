using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Rendering;

/// <summary>
/// For every sample of a picture the nearest triangle and how near it is. Coordinates are samples to the right and down, and mm
/// towards the viewer.
/// </summary>
internal sealed class DepthBuffer
{
    // How far a triangle reaches over its edges, as a share of its height over the edge: rounding leaves no gap between neighbours.
    private const double Overlap = 1e-7;

    private readonly float[] _near;
    private readonly int[] _face;

    // What has been drawn lies within these.
    private int _top = int.MaxValue;
    private int _bottom;
    private int _left = int.MaxValue;
    private int _right;

    public DepthBuffer(int width, int height)
    {
        Width = width;
        Height = height;
        _near = new float[width * height];
        _face = new int[width * height];
        Clear();
    }

    /// <summary>Samples in a row.</summary>
    public int Width { get; }

    /// <summary>Rows.</summary>
    public int Height { get; }

    /// <summary>How near the surface is at each sample, in mm towards the viewer; minus infinity where there is none.</summary>
    public ReadOnlySpan<float> Near => _near;

    /// <summary>The face at each sample, -1 where there is none.</summary>
    public ReadOnlySpan<int> Face => _face;

    /// <summary>
    /// Draws a triangle where it is nearer than what is there and not cut away; the first of two equally near ones stays. A sample on
    /// an edge may be taken by both neighbours: they are equally near there.
    /// </summary>
    /// <param name="face">Its number.</param>
    /// <param name="a">A corner.</param>
    /// <param name="b">A corner.</param>
    /// <param name="c">A corner.</param>
    /// <param name="cut">Sets the height of the section plane above a sample as ax + by + c z + d; above 0 is taken away. Null: no section.</param>
    public void Draw(int face, Point3 a, Point3 b, Point3 c, (double X, double Y, double Z, double D)? cut)
    {
        double area = ((b.X - a.X) * (c.Y - a.Y)) - ((b.Y - a.Y) * (c.X - a.X));
        if (area == 0)
        {
            return;
        }

        int top = Clamp(Math.Ceiling(Math.Min(a.Y, Math.Min(b.Y, c.Y)) - 0.5), Height);
        int bottom = Clamp(Math.Floor(Math.Max(a.Y, Math.Max(b.Y, c.Y)) - 0.5) + 1, Height);
        int left = Clamp(Math.Ceiling(Math.Min(a.X, Math.Min(b.X, c.X)) - 0.5), Width);
        int right = Clamp(Math.Floor(Math.Max(a.X, Math.Max(b.X, c.X)) - 0.5) + 1, Width);
        if (top >= bottom || left >= right)
        {
            return;
        }

        _top = Math.Min(_top, top);
        _bottom = Math.Max(_bottom, bottom);
        _left = Math.Min(_left, left);
        _right = Math.Max(_right, right);
        double inverse = 1 / area;
        double du = (b.Y - c.Y) * inverse;
        double dv = (c.Y - a.Y) * inverse;
        double dw = 0 - du - dv;
        double dNear = (du * a.Z) + (dv * b.Z) + (dw * c.Z);
        double px = left + 0.5;
        for (int y = top; y < bottom; y++)
        {
            double py = y + 0.5;
            double u = (((b.X - px) * (c.Y - py)) - ((b.Y - py) * (c.X - px))) * inverse;
            double v = (((c.X - px) * (a.Y - py)) - ((c.Y - py) * (a.X - px))) * inverse;
            double w = 1 - u - v;
            double from = 0;
            double to = right - left - 1;
            if (!Narrow(u, du, ref from, ref to) || !Narrow(v, dv, ref from, ref to) || !Narrow(w, dw, ref from, ref to))
            {
                continue;
            }

            double start = (u * a.Z) + (v * b.Z) + (w * c.Z);
            int row = (y * Width) + left;
            for (int k = (int)Math.Ceiling(from); k <= to; k++)
            {
                float near = (float)(start + (k * dNear));
                if (near > _near[row + k] && !(cut is { } p && (p.X * (px + k)) + (p.Y * py) + (p.Z * near) + p.D > 0))
                {
                    _near[row + k] = near;
                    _face[row + k] = face;
                }
            }
        }
    }

    /// <summary>Takes everything away.</summary>
    public void Clear()
    {
        Array.Fill(_near, float.NegativeInfinity);
        Array.Fill(_face, -1);
        (_top, _bottom, _left, _right) = (int.MaxValue, 0, int.MaxValue, 0);
    }

    /// <summary>Lays another buffer of the same size over this one.</summary>
    /// <param name="layer">The other.</param>
    /// <param name="rows">How many rows higher it stands.</param>
    /// <param name="nearer">How much nearer, mm.</param>
    public void Lay(DepthBuffer layer, int rows, float nearer)
    {
        int top = Math.Max(layer._top, rows);
        int bottom = Math.Min(layer._bottom, Height + rows);
        for (int y = top; y < bottom; y++)
        {
            int from = y * Width;
            int to = from - (rows * Width);
            for (int x = layer._left; x < layer._right; x++)
            {
                float near = layer._near[from + x] + nearer;
                if (near > _near[to + x])
                {
                    _near[to + x] = near;
                    _face[to + x] = layer._face[from + x];
                }
            }
        }
    }

    // Where along a row a share that changes evenly is not below zero.
    private static bool Narrow(double share, double change, ref double from, ref double to)
    {
        if (change > 0)
        {
            from = Math.Max(from, (0 - Overlap - share) / change);
        }
        else if (change < 0)
        {
            to = Math.Min(to, (0 - Overlap - share) / change);
        }
        else
        {
            return share >= -Overlap;
        }

        return from <= to;
    }

    private static int Clamp(double value, int most) => (int)Math.Clamp(value, 0, most);
}
