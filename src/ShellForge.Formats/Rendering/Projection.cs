using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Rendering;

/// <summary>Parallel projection of a scene onto samples: x to the right, y down, z in mm towards the viewer.</summary>
internal sealed class Projection
{
    // Share of the picture left free round the parts.
    private const double Margin = 0.05;

    private readonly double _centreX;
    private readonly double _centreY;
    private readonly double _middleX;
    private readonly double _middleY;

    private Projection(View view, Box2 shown, int width, int height)
    {
        Towards = view.Towards;
        Right = view.Right;
        Up = view.Up;
        _middleX = width / 2.0;
        _middleY = height / 2.0;
        Point2 size = shown.Size;
        PerMillimetre = (1 - (2 * Margin)) * Math.Min(width / Math.Max(size.X, Tiny), height / Math.Max(size.Y, Tiny));
        _centreX = shown.IsEmpty ? 0 : shown.Centre.X;
        _centreY = shown.IsEmpty ? 0 : shown.Centre.Y;
    }

    /// <summary>Towards the viewer.</summary>
    public Point3 Towards { get; }

    /// <summary>To the right in the picture, of length 1.</summary>
    public Point3 Right { get; }

    /// <summary>Up in the picture, of length 1.</summary>
    public Point3 Up { get; }

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

    /// <summary>A projection that shows all pictures of a series at one scale.</summary>
    public static Projection Fit(PictureSeries series, int samples)
    {
        Box2 shown = Box2.Empty;
        Point3 right = series.View.Right;
        Point3 up = series.View.Up;
        for (int i = 0; i < series.Things.Length; i++)
        {
            int[] lifts = [.. series.Shots.SelectMany(shot => shot.Shown).Where(each => each.Thing == i).Select(each => each.Lifts)];
            if (lifts.Length == 0)
            {
                continue;
            }

            Box2 thing = Box2.Empty;
            foreach (PicturedPart part in series.Things[i])
            {
                foreach (LatticePoint3 vertex in part.Mesh.Vertices)
                {
                    Point3 p = part.Placement.Apply(vertex.ToMillimetres());
                    thing = thing.Including(new Point2(Point3.Dot(p, right), Point3.Dot(p, up)));
                }
            }

            if (!thing.IsEmpty)
            {
                double lift = Math.Max(0, lifts.Max()) * series.Lift * up.Z;
                shown = shown.Including(thing.Min).Including(thing.Max + new Point2(0, lift));
            }
        }

        return new Projection(series.View, shown, series.Width * samples, series.Height * samples);
    }

    /// <summary>A place in mm as samples and nearness.</summary>
    public Point3 ToScreen(Point3 p) => new(
        _middleX + ((Point3.Dot(p, Right) - _centreX) * PerMillimetre),
        _middleY - ((Point3.Dot(p, Up) - _centreY) * PerMillimetre),
        Point3.Dot(p, Towards));

    /// <summary>The place in mm of a sample at a nearness.</summary>
    public Point3 ToWorld(double x, double y, double near) =>
        ((_centreX + ((x - _middleX) / PerMillimetre)) * Right)
        + ((_centreY - ((y - _middleY) / PerMillimetre)) * Up)
        + (near * Towards);

    /// <summary>The section plane over samples: a x + b y + c near + d is above 0 for what is taken away.</summary>
    public (double X, double Y, double Z, double D) Cut(SectionPlane plane)
    {
        double offset = Point3.Dot(plane.Normal, ToWorld(0, 0, 0) - plane.At);
        return (
            Point3.Dot(plane.Normal, Right) / PerMillimetre,
            -Point3.Dot(plane.Normal, Up) / PerMillimetre,
            Point3.Dot(plane.Normal, Towards),
            offset);
    }

    /// <summary>How fast nearness changes from sample to sample, right and down, on a plane that isn't seen edge on.</summary>
    public (double Right, double Down) Slope(Point3 normal)
    {
        double facing = Point3.Dot(normal, Towards);
        double scale = 1 / (PerMillimetre * (Math.Abs(facing) < Edge ? Math.CopySign(Edge, facing) : facing));
        return (-Point3.Dot(normal, Right) * scale, Point3.Dot(normal, Up) * scale);
    }

    // Sine of the angle under which a face counts as seen edge on.
    private const double Edge = 0.02;
}
