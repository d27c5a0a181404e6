using ShellForge.Board.Description;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Tests.Light;

/// <summary>
/// Light by brute force on the meshes as they are printed, for LEDs that lie anywhere under a printed-in diffuser: photons leave every LED
/// and are followed through all their reflections and collision by collision through the diffuser. It shares no code with the model.
/// </summary>
internal sealed class FieldTracer
{
    private const double Board = 0.2;

    private readonly Photons _photons;
    private readonly TriangleGrid _all = new();
    private readonly List<double> _reflectances = [];
    private readonly SheetInMesh _sheet;
    private readonly int _sheetMaterial;
    private readonly (PixelCircle Circle, Pixel Pixel)[] _leds;
    private readonly double _board;

    public FieldTracer(HousingUnderCheck housing)
    {
        HousingPlan plan = housing.Plan;
        _leds = [.. housing.Board.Board.PixelCircles.SelectMany(circle => circle.Pixels.Select(pixel => (circle, pixel)))];
        _board = plan.Stack.BoardTop;
        var sheet = new TriangleGrid();
        var cover = new TriangleGrid();
        foreach (MadePart part in housing.Parts)
        {
            int material = _reflectances.Count;
            _all.Add(part.AssembledMesh, material);
            if (part.Name == PartNames.Diffuser)
            {
                sheet.Add(part.AssembledMesh, material);
                _sheetMaterial = material;
            }
            else if (part.Name == PartNames.Cover)
            {
                cover.Add(part.AssembledMesh, material);
            }

            _reflectances.Add(part.Plan.Filament.Reflectance);
        }

        Assert.Equal(DiffuserFit.PrintedIn, plan.Diffuser.Fit);
        foreach (var loop in housing.Board.Board.Outline.Region.Loops)
        {
            _all.AddPrism(loop, plan.Stack.BoardBottom, plan.Stack.BoardTop, _reflectances.Count);
        }

        _reflectances.Add(Board);
        foreach ((PixelCircle circle, Pixel pixel) in _leds)
        {
            Point2 x = Point2.Polar(circle.Led.Length / 2, pixel.Rotation);
            Point2 y = Point2.Polar(circle.Led.Width / 2, pixel.Rotation + Angle.FromDegrees(90));
            _all.AddPrism([pixel.At - x - y, pixel.At + x - y, pixel.At + x + y, pixel.At - x + y], _board + 0.001,
                _board + circle.Led.Height - 0.001, _reflectances.Count);
            _reflectances.Add(circle.Led.BodyReflectance);
        }

        _all.Sort();
        sheet.Sort();
        cover.Sort();
        var dice = new Random(7);
        _sheet = new SheetInMesh(dice, sheet, cover);
        _photons = new Photons(dice);
    }

    /// <summary>Share of the light that meets the diffuser before anything else.</summary>
    public double Direct { get; private set; }

    /// <summary>Share that leaves in front.</summary>
    public double Seen { get; private set; }

    /// <summary>Follows photons; what leaves in front is told by its place and weight.</summary>
    public void Run(int photons, Action<Point2, double> seen)
    {
        for (int i = 0; i < photons; i++)
        {
            (PixelCircle circle, Pixel pixel) = _leds[i % _leds.Length];
            Follow(circle.Led, pixel, 1.0 / photons, seen);
        }
    }

    private void Follow(Board.Profiles.LedProfile led, Pixel pixel, double unit, Action<Point2, double> seen)
    {
        (Point3 from, Point3 along) = _photons.Leaving(led, pixel, _board + led.Height);
        double weight = 1;
        for (int flight = 0; ; flight++)
        {
            (double distance, Point3 normal, int material) = _all.First(from, along);
            if (material < 0)
            {
                return;
            }

            Point3 hit = from + (distance * along);
            Point3 facing = Point3.Dot(normal, along) < 0 ? normal : -1 * normal;
            if (material == _sheetMaterial)
            {
                Direct += flight == 0 ? unit : 0;
                (int side, weight) = _sheet.Follow(ref hit, ref along, facing, weight);
                if (side > 0)
                {
                    Seen += weight * unit;
                    seen(new Point2(hit.X, hit.Y), weight * unit);
                }

                if (side >= 0)
                {
                    return;
                }

                from = hit + (1e-4 * along);
                continue;
            }

            if (!_photons.Bounces(_reflectances[material], facing, ref weight, ref along))
            {
                return;
            }

            from = hit + (1e-6 * facing);
        }
    }
}
