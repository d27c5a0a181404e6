using ShellForge.Board.Description;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Tests.Light;

/// <summary>
/// Light by brute force on the meshes as they are printed: photons leave every LED and are followed through all their reflections, on
/// plastic, board, LED bodies and screw heads, and collision by collision through the diffuser. For round housings with one circle of LEDs
/// that look up and a printed-in diffuser. It shares no code with the model of light.
/// </summary>
internal sealed class FullTracer
{
    public const int PlacesAlong = 24;
    public const int PlacesAcross = 22;

    private const double HalfBand = 0.5;
    private const double Board = 0.2;

    private readonly Photons _photons;
    private readonly TriangleGrid _grid = new();
    private readonly List<double> _reflectances = [];
    private readonly ScatteringSheet _sheet;
    private readonly PixelCircle _circle;
    private readonly double _top;

    public FullTracer(HousingUnderCheck housing, int seed, double ledBody)
    {
        var dice = new Random(seed);
        _photons = new Photons(dice);
        HousingPlan plan = housing.Plan;
        _circle = Assert.Single(housing.Board.Board.PixelCircles);
        _top = plan.Stack.BoardTop + _circle.Led.Height;
        int sheetMaterial = -1;
        foreach (MadePart part in housing.Parts)
        {
            _grid.Add(part.AssembledMesh, _reflectances.Count);
            sheetMaterial = part.Name == PartNames.Diffuser ? _reflectances.Count : sheetMaterial;
            _reflectances.Add(part.Plan.Filament.Reflectance);
        }

        Add(Shapes.Extrude(housing.Board.Board.Outline.Region, plan.Stack.BoardBottom, plan.Stack.BoardTop), Board);
        foreach (Pixel pixel in _circle.Pixels)
        {
            Point2 x = Point2.Polar(_circle.Led.Length / 2, pixel.Rotation);
            Point2 y = Point2.Polar(_circle.Led.Width / 2, pixel.Rotation + Angle.FromDegrees(90));
            _grid.AddPrism([pixel.At - x - y, pixel.At + x - y, pixel.At + x + y, pixel.At - x + y], plan.Stack.BoardTop + 0.001,
                _top - 0.001, _reflectances.Count);
        }

        _reflectances.Add(ledBody);
        _grid.Sort();
        SheetMaterial = sheetMaterial;
        Assert.True(sheetMaterial >= 0 && plan.Diffuser.Lap is not null);
        double[] radii = [.. plan.Cover.Window.Loops.Select(loop => loop.Average(at => at.Length)).Order()];
        Window = radii.Length == 1 ? (0, radii[0]) : (radii[0], radii[1]);
        _sheet = new ScatteringSheet(dice)
        {
            Window = Window,
            Faces = (plan.Stack.DiffuserInner, plan.Stack.DiffuserOuter),
            Collar = (plan.Diffuser.Lap!.Thickness, plan.Diffuser.Lap.Inset, 1.5),
        };
    }

    public (double Inner, double Outer) Window { get; }

    /// <summary>Share of the light that meets the window before anything else.</summary>
    public double Direct { get; private set; }

    /// <summary>Share that leaves in front.</summary>
    public double Seen { get; private set; }

    /// <summary>Share that the room throws on the sheet, each time it comes there counted.</summary>
    public double Landed { get; private set; }

    /// <summary>
    /// Light that is seen along the circle, between one LED and the next, the first place halfway to the one before; all LEDs together.
    /// </summary>
    public double[] Along { get; } = new double[PlacesAlong];

    /// <summary>Light that is seen across the window, from its inner edge to its outer, per area.</summary>
    public double[] Across { get; } = new double[PlacesAcross];

    /// <summary>Light that is seen before an LED's own place, the next one's and so on.</summary>
    public double[] Apart { get; private set; } = [];

    private int SheetMaterial { get; }

    /// <summary>Follows photons.</summary>
    public void Run(int photons)
    {
        int n = _circle.Pixels.Length;
        Apart = new double[n];
        for (int i = 0; i < photons; i++)
        {
            Pixel pixel = _circle.Pixels[i % n];
            Follow(pixel, i % n, 1.0 / photons);
        }

        double width = (Window.Outer - Window.Inner) / PlacesAcross;
        for (int k = 0; k < PlacesAcross; k++)
        {
            Across[k] /= Window.Inner + ((k + 0.5) * width);
        }
    }

    private void Follow(Pixel pixel, int led, double unit)
    {
        (Point3 from, Point3 along) = _photons.Leaving(_circle.Led, pixel, _top);
        double weight = 1;
        for (int flight = 0; ; flight++)
        {
            (double distance, Point3 normal, int material) = _grid.First(from, along);
            if (material < 0)
            {
                return;
            }

            Point3 hit = from + (distance * along);
            Point3 facing = Point3.Dot(normal, along) < 0 ? normal : -1 * normal;
            if (material == SheetMaterial)
            {
                Direct += flight == 0 ? unit : 0;
                Landed += weight * unit;
                (double px, double py, double pz) = (hit.X, hit.Y, hit.Z);
                (double dx, double dy, double dz) = (along.X, along.Y, along.Z);
                (int side, double left) = _sheet.Follow(ref px, ref py, ref pz, ref dx, ref dy, ref dz, weight);
                if (side > 0)
                {
                    Count(px, py, led, left * unit);
                }

                if (side >= 0)
                {
                    return;
                }

                (weight, along) = (left, new Point3(dx, dy, dz));
                from = new Point3(px, py, pz) + (1e-4 * along);
                continue;
            }

            if (!_photons.Bounces(_reflectances[material], facing, ref weight, ref along))
            {
                return;
            }

            from = hit + (1e-6 * facing);
        }
    }

    private void Count(double x, double y, int led, double light)
    {
        Seen += light;
        (double share, int apart) = Place(new Point2(x, y), led);
        Apart[apart] += light;
        double r = Math.Sqrt((x * x) + (y * y));
        if (Math.Abs(r - (_circle.Diameter / 2)) < HalfBand)
        {
            Along[(int)(share * PlacesAlong)] += light;
        }

        int k = (int)((r - Window.Inner) / (Window.Outer - Window.Inner) * PlacesAcross);
        if (k is >= 0 and < PlacesAcross)
        {
            Across[k] += light;
        }
    }

    /// <summary>Where a place is between an LED's half way to its neighbours, 0 to 1, and how many LEDs that one is off another.</summary>
    public (double Share, int Apart) Place(Point2 at, int led)
    {
        int n = _circle.Pixels.Length;
        double turn = (Math.Atan2(at.Y, at.X) - Math.Atan2(_circle.Pixels[led].At.Y, _circle.Pixels[led].At.X)) / (2 * Math.PI) * n;
        double nearest = Math.Floor(turn + 0.5);
        return (Math.Min(turn - nearest + 0.5, 0.9999999), (int)(((nearest % n) + n) % n));
    }

    /// <summary>Whether a place counts along the circle.</summary>
    public bool IsAlong(Point2 at) => Math.Abs(at.Length - (_circle.Diameter / 2)) < HalfBand;

    private void Add(Solid solid, double reflectance)
    {
        if (solid is SourceSolid source)
        {
            for (int i = 0; i < source.Triangles.Length; i += 3)
            {
                _grid.Add(
                    source.Vertices[source.Triangles[i]], source.Vertices[source.Triangles[i + 1]],
                    source.Vertices[source.Triangles[i + 2]],
                    _reflectances.Count);
            }
        }

        _reflectances.Add(reflectance);
    }
}
