using ShellForge.Geometry.Numerics;
using ShellForge.Physics.Light;
using ShellForge.Planning.Remembering;

namespace ShellForge.Planning.Front;

/// <summary>
/// How even a diffuser will be lit, before there are solids: the light model that the checks judge by, on walls as the baffle will have
/// them.
/// </summary>
internal abstract class PlannedLight
{
    // Distances that come into question, and their step, mm.
    private const double Least = 1;
    private const double StepOfDistance = 0.1;

    // Asked for above the wish: parts and screws that are placed later shade a little.
    private const double Reserve = 0.03;

    /// <summary>
    /// The least distance from the LEDs' windows at which all light is as even as asked, mm; the most even one when none is.
    /// </summary>
    public (double Distance, bool IsEnough) DistanceFor(double minimumOverMean, double most, WorkMemory memory) => LeastDistance.For(
        distance => MinimumOverMean(distance, memory), Math.Min(1, minimumOverMean + Reserve), Least, most, StepOfDistance);

    /// <summary>Where light is judged, for people: "along the pitch circle".</summary>
    public abstract string JudgedAlong { get; }

    /// <summary>Smallest over mean at a distance in mm, 0 to 1; 1 without LEDs.</summary>
    public double MinimumOverMean(double distance, WorkMemory memory) =>
        memory.Of(new PlannedEvenness(Input, distance), () => MinimumOverMean(distance), _ => 0);

    /// <summary>All that decides the light but the distance: a record that compares by its content.</summary>
    protected abstract object Input { get; }

    /// <summary>Smallest over mean at a distance in mm, worked out.</summary>
    protected abstract double MinimumOverMean(double distance);

    /// <summary>An upright face that looks to the right of the way from a to b.</summary>
    protected static void Quad(ShadowTreeBuilder builder, Point2 a, Point2 b, double bottom, double top)
    {
        builder.Add(Up(a, bottom), Up(b, bottom), Up(b, top), 0);
        builder.Add(Up(a, bottom), Up(b, top), Up(a, top), 0);
    }

    /// <summary>A point of the plan at a height.</summary>
    protected static Point3 Up(Point2 point, double z) => new(point.X, point.Y, z);

    private sealed record PlannedEvenness(object Input, double Distance);
}
