using ShellForge.Board.Profiles;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;
using Region = ShellForge.Geometry.Planar.Region;

namespace ShellForge.Checks.Gauges;

/// <summary>
/// The largest overmould of a mating plug, as a body: a rounded prism along the connector's direction. u runs along that direction from
/// the housing's axis, v to its left, z up.
/// </summary>
internal sealed class PlugEnvelope
{
    // Bodies end 256 mm from the axis; so far out a plug's corners stay within, whichever way it points.
    private const double FarthestEnd = 248;

    private PlugEnvelope(PortPlan port, double fromU, double toU, SurfaceTree surface) =>
        (Port, FromU, ToU, Surface) = (port, fromU, toU, surface);

    /// <summary>The port that it comes to.</summary>
    public PortPlan Port { get; }

    /// <summary>u of its front face, mm.</summary>
    public double FromU { get; }

    /// <summary>u of its end, mm.</summary>
    public double ToU { get; }

    /// <summary>Its surface in the assembled frame.</summary>
    public SurfaceTree Surface { get; }

    /// <summary>u of the connector's mouth.</summary>
    public static double MouthU(PortPlan port) => Point2.Dot(port.Face, Point2.Polar(1, port.Faces));

    /// <summary>
    /// The overmould as deep as walls let it in, and the room behind it through which it comes straight.
    /// </summary>
    /// <param name="port">The port.</param>
    /// <param name="way">Length of the way behind it that is looked at, mm.</param>
    public static PlugEnvelope Of(PortPlan port, double way)
    {
        // A hair in front of the face that stops it: that face is another rule's.
        const double hair = 0.05;
        MouthProfile mouth = port.Mouth;
        double from = MouthU(port) + Math.Max(port.MouthBehind, mouth.SeatDepthWarn) + hair;
        double to = Math.Min(MouthU(port) + mouth.PlugLength + way, FarthestEnd);
        double smaller = Math.Min(mouth.PlugWidth, mouth.PlugHeight);
        Region across = Region.RoundedRectangle(
            Point2.Origin, mouth.PlugWidth, mouth.PlugHeight, Math.Floor(1000 * Math.Min(mouth.PlugCornerRadius, smaller / 2)) / 1000);
        Solid body = Shapes.Extrude(across, from, to).Moved(Frame(port));
        return new PlugEnvelope(port, from, to, new SurfaceTree(SolidEvaluator.Evaluate(body).Require().Mesh));
    }

    // v, z, u of the port's own frame onto x, y, z.
    private static Transform3 Frame(PortPlan port)
    {
        Point2 along = Point2.Polar(1, port.Faces);
        var left = new Point2(0 - along.Y, along.X);
        double v = Point2.Dot(port.Face, left);
        return new Transform3(
            left.X, 0, along.X, v * left.X,
            left.Y, 0, along.Y, v * left.Y,
            0, 1, 0, port.AxisZ);
    }
}
