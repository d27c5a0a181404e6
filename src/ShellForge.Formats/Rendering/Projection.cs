using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Rendering;

/// <summary>Parallel projection of a scene onto samples: x to the right, y down, z in mm towards the viewer.</summary>
internal sealed class Projection
{
    // Share of the picture left free round the parts.
    private const double Margin = 0.05;

    private readonly Point3 _right;
    private readonly Point3 _up;
    private readonly double _centreX;
    private readonly double _centreY;
    private readonly double _middleX;
    private readonly double _middleY;

    private Projection(View view, Box2 shown, int width, int height)
    {
        Towards = view.Towards;
        _right = view.Right;
        _up = view.Up;
        _middleX = width / 2.0;
        _middleY = height / 2.0;
        Point2 size = shown.Size;
        PerMillimetre = (1 - (2 * Margin)) * Math.Min(width / Math.Max(size.X, Tiny), height / Math.Max(size.Y, Tiny));
        _centreX = shown.IsEmpty ? 0 : shown.Centre.X;
        _centreY = shown.IsEmpty ? 0 : shown.Centre.Y;
    }

    /// <summary>Towards the viewer.</summary>
    public Point3 Towards { get; }

    /// <summary>Samples a mm.</summary>
    public double PerMillimetre { get; }

    // The smallest extent that fills a picture, in mm: without it a scene of one point would have no scale.
    private static double Tiny => Lattice.Step;

    /// <summary>A projection that shows the frame, or else all parts.</summary>
    public static Projection Fit(Scene scene, int samples)
    {
        Box2 shown = Box2.Empty;
        Point3 right = scene.View.Right;
        Point3 up = scene.View.Up;
        IEnumerable<Point3> points = scene.Frame is { } frame
            ? Enumerable.Range(0, 8).Select(i => new Point3(
                (i & 1) == 0 ? frame.Min.X : frame.Max.X,
                (i & 2) == 0 ? frame.Min.Y : frame.Max.Y,
                (i & 4) == 0 ? frame.Min.Z : frame.Max.Z))
            : scene.Parts.SelectMany(p => p.Mesh.Vertices.Select(v => p.Placement.Apply(v.ToMillimetres())));
        foreach (Point3 p in points)
        {
            shown = shown.Including(new Point2(Point3.Dot(p, right), Point3.Dot(p, up)));
        }

        return new Projection(scene.View, shown, scene.Width * samples, scene.Height * samples);
    }

    /// <summary>A place in mm as samples and nearness.</summary>
    public Point3 ToScreen(Point3 p) => new(
        _middleX + ((Point3.Dot(p, _right) - _centreX) * PerMillimetre),
        _middleY - ((Point3.Dot(p, _up) - _centreY) * PerMillimetre),
        Point3.Dot(p, Towards));

    /// <summary>The place in mm of a sample at a nearness.</summary>
    public Point3 ToWorld(double x, double y, double near) =>
        ((_centreX + ((x - _middleX) / PerMillimetre)) * _right)
        + ((_centreY - ((y - _middleY) / PerMillimetre)) * _up)
        + (near * Towards);

    /// <summary>The section plane over samples: a x + b y + c near + d is above 0 for what is taken away.</summary>
    public (double X, double Y, double Z, double D) Cut(SectionPlane plane)
    {
        double offset = Point3.Dot(plane.Normal, ToWorld(0, 0, 0) - plane.At);
        return (
            Point3.Dot(plane.Normal, _right) / PerMillimetre,
            -Point3.Dot(plane.Normal, _up) / PerMillimetre,
            Point3.Dot(plane.Normal, Towards),
            offset);
    }

    /// <summary>How fast nearness changes from sample to sample, right and down, on a plane that isn't seen edge on.</summary>
    public (double Right, double Down) Slope(Point3 normal)
    {
        double facing = Point3.Dot(normal, Towards);
        double scale = 1 / (PerMillimetre * (Math.Abs(facing) < Edge ? Math.CopySign(Edge, facing) : facing));
        return (-Point3.Dot(normal, _right) * scale, Point3.Dot(normal, _up) * scale);
    }

    // Sine of the angle under which a face counts as seen edge on.
    private const double Edge = 0.02;
}
