using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Rendering;

/// <summary>
/// For every sample of a picture the nearest triangle and how near it is. Coordinates are samples to the right and down, and mm
/// towards the viewer.
/// </summary>
internal sealed class DepthBuffer
{
    private readonly float[] _near;
    private readonly int[] _face;

    public DepthBuffer(int width, int height)
    {
        Width = width;
        Height = height;
        _near = new float[width * height];
        _face = new int[width * height];
        Array.Fill(_near, float.NegativeInfinity);
        Array.Fill(_face, -1);
    }

    /// <summary>Samples in a row.</summary>
    public int Width { get; }

    /// <summary>Rows.</summary>
    public int Height { get; }

    /// <summary>How near the surface is at a sample, in mm towards the viewer; minus infinity where there is none.</summary>
    public float Near(int x, int y) => _near[(y * Width) + x];

    /// <summary>The face at a sample, -1 where there is none.</summary>
    public int Face(int x, int y) => _face[(y * Width) + x];

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
        double inverse = 1 / area;
        for (int y = top; y < bottom; y++)
        {
            double py = y + 0.5;
            for (int x = left; x < right; x++)
            {
                double px = x + 0.5;
                double u = (((b.X - px) * (c.Y - py)) - ((b.Y - py) * (c.X - px))) * inverse;
                double v = (((c.X - px) * (a.Y - py)) - ((c.Y - py) * (a.X - px))) * inverse;
                double w = 1 - u - v;
                if (u < 0 || v < 0 || w < 0)
                {
                    continue;
                }

                float near = (float)((u * a.Z) + (v * b.Z) + (w * c.Z));
                int i = (y * Width) + x;
                bool isCut = cut is { } p && (p.X * px) + (p.Y * py) + (p.Z * near) + p.D > 0;
                if (near > _near[i] && !isCut)
                {
                    _near[i] = near;
                    _face[i] = face;
                }
            }
        }
    }

    private static int Clamp(double value, int most) => (int)Math.Clamp(value, 0, most);
}
