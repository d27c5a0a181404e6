using ShellForge.Geometry.Numerics;

namespace ShellForge.Physics.Light;

/// <summary>
/// To each open cell of the grid the LED that lies nearest to it, and how much each LED brings into the sheet of each zone: the matrix
/// from which crosstalk is read.
/// </summary>
internal sealed class LedZones
{
    public LedZones(LightScene scene)
    {
        Flux = new ZoneFlux(scene.Leds.Length);
        Of = new int[scene.Face.Count];
        Cells = new int[scene.Leds.Length];
        for (int i = 0; i < Of.Length; i++)
        {
            Of[i] = -1;
            if (scene.Face.Open[i])
            {
                Point2 middle = scene.Face.Middle(i);
                Of[i] = Nearest(scene, scene.Face.At(middle.X, middle.Y).At);
                Cells[Of[i]]++;
            }
        }
    }

    /// <summary>The LED nearest to each cell; -1 for closed cells.</summary>
    public int[] Of { get; }

    /// <summary>How many cells belong to each LED.</summary>
    public int[] Cells { get; }

    /// <summary>The LED nearest to a place.</summary>
    public static int Nearest(LightScene scene, Point3 at)
    {
        int nearest = 0;
        double least = double.PositiveInfinity;
        for (int k = 0; k < scene.Leds.Length; k++)
        {
            Point3 apart = scene.Leds[k].At - at;
            double squared = Point3.Dot(apart, apart);
            if (squared < least)
            {
                (nearest, least) = (k, squared);
            }
        }

        return nearest;
    }

    /// <summary>What LEDs bring to zones.</summary>
    public ZoneFlux Flux { get; }

    /// <summary>Mean of what an LED's light brings into the sheet in a zone.</summary>
    public double Mean(int led, int zone) => Cells[zone] == 0 ? 0 : Flux.Of(led, zone) / Cells[zone];
}

/// <summary>How much each LED brings to the sheet: irradiance times cells.</summary>
internal sealed class ZoneFlux(int leds)
{
    private readonly double[] _sums = new double[leds * leds];
    private readonly double[] _falls = new double[leds];

    /// <summary>What of an LED's light enters the sheet in a zone.</summary>
    public double Of(int led, int zone) => _sums[(led * leds) + zone];

    /// <summary>What of an LED's light falls on the sheet in all zones.</summary>
    public double FallsOf(int led) => _falls[led];

    /// <summary>Adds what an LED brings to a zone, times cells.</summary>
    public void Add(int led, int zone, in LightOnSheet light)
    {
        _sums[(led * leds) + zone] += light.Enters;
        _falls[led] += light.Falls;
    }

    /// <summary>Adds all that another part of the grid gets.</summary>
    public void Add(ZoneFlux other)
    {
        for (int i = 0; i < _sums.Length; i++)
        {
            _sums[i] += other._sums[i];
        }

        for (int i = 0; i < _falls.Length; i++)
        {
            _falls[i] += other._falls[i];
        }
    }
}
