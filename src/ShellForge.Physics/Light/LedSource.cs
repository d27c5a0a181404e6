using ShellForge.Geometry.Numerics;

namespace ShellForge.Physics.Light;

/// <summary>
/// One LED as a square window that shines with a cosine-power lobe. Its whole flux counts 1, so every irradiance is a share of one
/// LED's flux in a square millimetre.
/// </summary>
public sealed record LedSource
{
    // Below this the axis has no direction, mm.
    private const double LeastAxis = 1e-9; // a millionth of a micrometre: only the zero vector is shorter

    /// <summary>An LED.</summary>
    /// <param name="at">Middle of its window, mm.</param>
    /// <param name="axis">Where it looks; any length but zero.</param>
    /// <param name="viewingAngleDegrees">Full angle at half intensity, above 0 and below 180.</param>
    /// <param name="windowWidth">Side of its square window, mm; 0 for a point.</param>
    /// <exception cref="ArgumentOutOfRangeException">An angle, a width or an axis that can't be.</exception>
    public LedSource(Point3 at, Point3 axis, double viewingAngleDegrees, double windowWidth)
    {
        if (!(axis.Length > LeastAxis))
        {
            throw new ArgumentOutOfRangeException(nameof(axis), "An LED looks somewhere.");
        }

        ArgumentOutOfRangeException.ThrowIfNegative(windowWidth);
        At = at;
        Axis = (1 / axis.Length) * axis;
        WindowWidth = windowWidth;
        Lobe = new Lobe(viewingAngleDegrees);
    }

    /// <summary>Middle of the window, mm.</summary>
    public Point3 At { get; }

    /// <summary>Where it looks, of length 1.</summary>
    public Point3 Axis { get; }

    /// <summary>Side of the square window, mm.</summary>
    public double WindowWidth { get; }

    /// <summary>How the light spreads about the axis.</summary>
    public Lobe Lobe { get; }

    /// <summary>
    /// The window as 2 x 2 point sources where Gauss's quadrature of a square puts them, or its middle alone for a point.
    /// </summary>
    internal Point3[] Emitters()
    {
        if (WindowWidth == 0)
        {
            return [At];
        }

        Point3 first = Perpendicular(Axis);
        Point3 second = Point3.Cross(Axis, first);
        double off = WindowWidth / (2 * Math.Sqrt(3));
        return
        [
            At + (off * (first + second)), At + (off * (first - second)),
            At + (off * (second - first)), At - (off * (first + second)),
        ];
    }

    /// <summary>Some direction of length 1 square to another of length 1.</summary>
    internal static Point3 Perpendicular(Point3 to)
    {
        Point3 other = Math.Abs(to.X) < Math.Abs(to.Y)
            ? Math.Abs(to.X) < Math.Abs(to.Z) ? new Point3(1, 0, 0) : new Point3(0, 0, 1)
            : Math.Abs(to.Y) < Math.Abs(to.Z) ? new Point3(0, 1, 0) : new Point3(0, 0, 1);
        Point3 square = Point3.Cross(to, other);
        return (1 / square.Length) * square;
    }
}
