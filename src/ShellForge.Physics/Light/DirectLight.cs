using ShellForge.Geometry.Numerics;

namespace ShellForge.Physics.Light;

/// <summary>
/// Light that reaches a place straight from an LED: E = I(a) cos(b) / d2, a from the LED's axis and b from the surface's normal, where
/// nothing lies between. Source: inverse square law of a point source. Windows count as 2 x 2 points nearby and as one from afar.
/// </summary>
internal sealed class DirectLight
{
    // Rays keep this far from both ends, mm: LEDs stand on boards and receivers lie on faces.
    private const double Lift = 0.01;

    private readonly ShadowTree _solids;
    private readonly Emitter[] _emitters;
    private readonly SheetEntry _entry;

    public DirectLight(LightScene scene)
    {
        _solids = scene.Solids;
        _entry = new SheetEntry(scene.Diffuser);
        _emitters = [.. scene.Leds.Select(led => new Emitter(
            led.At, led.Axis, led.Lobe, led.Emitters()))];
    }

    /// <summary>How many LEDs there are.</summary>
    public int Count => _emitters.Length;

    /// <summary>Irradiance from the middle of an LED's window, shadows left out.</summary>
    public LightOnSheet Unshadowed(int led, Point3 at, Point3 normal)
    {
        Emitter emitter = _emitters[led];
        return Brings(emitter, emitter.At, at, normal);
    }

    /// <summary>Irradiance that an LED brings to a place, shadows included.</summary>
    /// <param name="led">Number of the LED.</param>
    /// <param name="at">The place, mm.</param>
    /// <param name="normal">The side that is lit, of length 1.</param>
    public LightOnSheet Irradiance(int led, Point3 at, Point3 normal) => Irradiance(led, at, [], normal);

    /// <summary>
    /// Mean irradiance over places near to each other, shadows included: each point of the LED's window looks at one of them, so that the
    /// edge of a shadow is as fine as the places at the price of one.
    /// </summary>
    /// <param name="led">Number of the LED.</param>
    /// <param name="middle">The middle of the places, mm: what the one point of a window without width looks at.</param>
    /// <param name="places">The places, mm: as many as a window has points, or none.</param>
    /// <param name="normal">The side that is lit, of length 1.</param>
    public LightOnSheet Irradiance(int led, Point3 middle, ReadOnlySpan<Point3> places, Point3 normal)
    {
        Emitter emitter = _emitters[led];
        LightOnSheet sum = default;
        for (int i = 0; i < emitter.Points.Length; i++)
        {
            Point3 point = emitter.Points[i];
            Point3 at = places.Length == emitter.Points.Length ? places[i] : middle;
            LightOnSheet light = Brings(emitter, point, at, normal);
            if (light.Falls > 0 && !_solids.Blocks(point + (Lift * emitter.Axis), at + (Lift * normal)))
            {
                sum += light;
            }
        }

        return 1.0 / emitter.Points.Length * sum;
    }

    /// <summary>Whether the middle of an LED's window sees a place.</summary>
    public bool Sees(int led, Point3 at, Point3 normal) =>
        !_solids.Blocks(_emitters[led].At + (Lift * _emitters[led].Axis), at + (Lift * normal));

    private LightOnSheet Brings(Emitter emitter, Point3 from, Point3 at, Point3 normal)
    {
        Point3 ray = at - from;
        double squared = Point3.Dot(ray, ray);
        double incoming = -Point3.Dot(ray, normal);
        double outgoing = Point3.Dot(ray, emitter.Axis);
        if (incoming <= 0 || outgoing <= 0)
        {
            return default;
        }

        double distance = Math.Sqrt(squared);
        double falls = emitter.Lobe.Intensity(outgoing / distance) * incoming / (squared * distance);
        return new LightOnSheet(falls, falls * _entry.Of(incoming / distance));
    }

    private sealed record Emitter(Point3 At, Point3 Axis, Lobe Lobe, Point3[] Points);
}
