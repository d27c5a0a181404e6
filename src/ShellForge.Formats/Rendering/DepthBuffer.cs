using System.Buffers;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Rendering;

/// <summary>
/// For every sample of a picture the nearest triangle and how near it is. Coordinates are samples to the right and down, and mm
/// towards the viewer.
/// </summary>
internal sealed class DepthBuffer : IDisposable
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

        // Lent, since large new arrays make the collector go through everything that lives.
        _near = ArrayPool<float>.Shared.Rent(width * height);
        _face = ArrayPool<int>.Shared.Rent(width * height);
        Clear();
    }

    /// <summary>Samples in a row.</summary>
    public int Width { get; }

    /// <summary>Rows.</summary>
    public int Height { get; }

    /// <summary>How near the surface is at each sample, in mm towards the viewer; minus infinity where there is none.</summary>
    public ReadOnlySpan<float> Near => _near.AsSpan(0, Width * Height);

    /// <summary>The face at each sample, -1 where there is none.</summary>
    public ReadOnlySpan<int> Face => _face.AsSpan(0, Width * Height);

    /// <summary>
    /// Draws a triangle where it is nearer than what is there and not cut away; the first of two equally near ones stays. A sample on
    /// an edge may be taken by both neighbours: they are equally near there.
    /// </summary>
    /// <param name="face">Its number.</param>
    /// <param name="a">A corner.</param>
    /// <param name="b">A corner.</param>
    /// <param name="c">A corner.</param>
    /// <param name="cut">Sets the height of the section plane above a sample as ax + by + c z + d; above 0 is taken away. Null: no
    /// section.</param>
    /// <returns>Whether it shows at any sample.</returns>
    public bool Draw(int face, Point3 a, Point3 b, Point3 c, (double X, double Y, double Z, double D)? cut)
    {
        // Most triangles of a small picture lie between the samples: what tells that comes first.
        int top = First(Math.Min(a.Y, Math.Min(b.Y, c.Y)), Height);
        int bottom = End(Math.Max(a.Y, Math.Max(b.Y, c.Y)), Height);
        int left = First(Math.Min(a.X, Math.Min(b.X, c.X)), Width);
        int right = End(Math.Max(a.X, Math.Max(b.X, c.X)), Width);
        double area = ((b.X - a.X) * (c.Y - a.Y)) - ((b.Y - a.Y) * (c.X - a.X));
        if (top >= bottom || left >= right || area == 0)
        {
            return false;
        }

        double inverse = 1 / area;
        double du = (b.Y - c.Y) * inverse;
        double dv = (c.Y - a.Y) * inverse;
        double dw = 0 - du - dv;
        (double perU, double perV, double perW) = (1 / du, 1 / dv, 1 / dw);
        double dNear = (du * a.Z) + (dv * b.Z) + (dw * c.Z);
        double px = left + 0.5;
        bool shows = false;
        for (int y = top; y < bottom; y++)
        {
            double py = y + 0.5;
            double u = (((b.X - px) * (c.Y - py)) - ((b.Y - py) * (c.X - px))) * inverse;
            double v = (((c.X - px) * (a.Y - py)) - ((c.Y - py) * (a.X - px))) * inverse;
            double w = 1 - u - v;
            double from = 0;
            double to = right - left - 1;
            if (!Narrow(u, du, perU, ref from, ref to) || !Narrow(v, dv, perV, ref from, ref to) || !Narrow(w, dw, perW, ref from, ref to))
            {
                continue;
            }

            int first = Above(from);
            int count = (int)to + 1 - first;
            if (count > 0)
            {
                int at = (y * Width) + left + first;
                var run = new Run(first, (u * a.Z) + (v * b.Z) + (w * c.Z), dNear);
                Span<float> near = _near.AsSpan(at, count);
                Span<int> faces = _face.AsSpan(at, count);
                shows |= cut is { } plane
                    ? DrawRun(near, faces, face, run, (plane.Z, (plane.X * px) + (plane.Y * py) + plane.D, plane.X))
                    : DrawRun(near, faces, face, run);
            }
        }

        if (shows)
        {
            _top = Math.Min(_top, top);
            _bottom = Math.Max(_bottom, bottom);
            _left = Math.Min(_left, left);
            _right = Math.Max(_right, right);
        }

        return shows;
    }

    /// <summary>Takes everything away.</summary>
    public void Clear()
    {
        _near.AsSpan(0, Width * Height).Fill(float.NegativeInfinity);
        _face.AsSpan(0, Width * Height).Fill(-1);
        (_top, _bottom, _left, _right) = (int.MaxValue, 0, int.MaxValue, 0);
    }

    /// <summary>Gives its memory back: it is not to be used after that.</summary>
    public void Dispose()
    {
        ArrayPool<float>.Shared.Return(_near);
        ArrayPool<int>.Shared.Return(_face);
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

    // A stretch of a row, from the first-th sample of the triangle's box on; how near the box's left edge lies, and how that changes from
    // sample to sample.
    private readonly record struct Run(int First, double Start, double PerSample)
    {
        public float Near(int sample) => (float)(Start + ((First + sample) * PerSample));
    }

    private static bool DrawRun(Span<float> near, Span<int> faces, int face, in Run run)
    {
        bool shows = false;
        for (int k = 0; k < near.Length; k++)
        {
            float here = run.Near(k);
            if (here > near[k])
            {
                near[k] = here;
                faces[k] = face;
                shows = true;
            }
        }

        return shows;
    }

    // The same where a section plane takes away what lies above it.
    private static bool DrawRun(
        Span<float> near, Span<int> faces, int face, in Run run, (double PerNear, double Constant, double PerSample) cut)
    {
        bool shows = false;
        for (int k = 0; k < near.Length; k++)
        {
            float here = run.Near(k);
            if (here > near[k] && (cut.PerSample * (run.First + k)) + cut.Constant + (cut.PerNear * here) <= 0)
            {
                near[k] = here;
                faces[k] = face;
                shows = true;
            }
        }

        return shows;
    }

    // Where along a row a share that changes evenly is not below zero.
    private static bool Narrow(double share, double change, double perChange, ref double from, ref double to)
    {
        if (change > 0)
        {
            from = Math.Max(from, (0 - Overlap - share) * perChange);
        }
        else if (change < 0)
        {
            to = Math.Min(to, (0 - Overlap - share) * perChange);
        }
        else
        {
            return share >= -Overlap;
        }

        return from <= to;
    }

    // The first sample at or after a place, and the one after the last before it; samples lie in the middle of their cells.
    private static int First(double place, int most) => place <= 0.5 ? 0 : Math.Min(Above(place - 0.5), most);

    private static int End(double place, int most) => place < 0.5 ? 0 : Math.Min((int)(place - 0.5) + 1, most);

    // The whole number at or above one that is not below 0.
    private static int Above(double value)
    {
        int whole = (int)value;
        return whole < value ? whole + 1 : whole;
    }
}
