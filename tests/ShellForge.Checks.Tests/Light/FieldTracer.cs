using ShellForge.Board.Description;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Tests.Light;

/// <summary>
/// Light by brute force on the meshes as they are printed, for LEDs that lie anywhere under a printed-in diffuser: photons leave every LED
/// and are followed through all their reflections and collision by collision through the diffuser. It shares no code with the model.
/// </summary>
internal sealed class FieldTracer
{
    private const double Board = 0.2;

    private readonly Random _dice = new(7);
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
            Add(part.AssembledMesh, material, _all);
            if (part.Name == PartNames.Diffuser)
            {
                Add(part.AssembledMesh, material, sheet);
                _sheetMaterial = material;
            }
            else if (part.Name == PartNames.Cover)
            {
                Add(part.AssembledMesh, material, cover);
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
        _sheet = new SheetInMesh(_dice, sheet, cover);
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
        double half = led.WindowWidth / 2;
        Point2 x = Point2.Polar(half, pixel.Rotation);
        Point2 y = Point2.Polar(half, pixel.Rotation + Angle.FromDegrees(90));
        Point2 plan = pixel.At + (((2 * _dice.NextDouble()) - 1) * x) + (((2 * _dice.NextDouble()) - 1) * y);
        double m = Math.Log(0.5) / Math.Log(Math.Cos(led.ViewingAngleDegrees / 2 * Math.PI / 180));
        double cosine = Math.Pow(_dice.NextDouble(), 1 / (m + 1));
        double flat = Math.Sqrt(1 - (cosine * cosine));
        double turn = 2 * Math.PI * _dice.NextDouble();
        Point3 from = new(plan.X, plan.Y, _board + led.Height);
        Point3 along = new(flat * Math.Cos(turn), flat * Math.Sin(turn), cosine);
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

            weight *= _reflectances[material];
            if (weight < 0.1)
            {
                if (_dice.NextDouble() > 0.2)
                {
                    return;
                }

                weight *= 5;
            }

            double h = (2 * _dice.NextDouble()) - 1;
            double beside = Math.Sqrt(1 - (h * h));
            turn = 2 * Math.PI * _dice.NextDouble();
            along = facing + new Point3(beside * Math.Cos(turn), beside * Math.Sin(turn), h);
            along = (1 / along.Length) * along;
            from = hit + (1e-6 * facing);
        }
    }

    private static void Add(Mesh mesh, int material, TriangleGrid grid)
    {
        Point3[] corners = [.. mesh.Vertices.Select(vertex => vertex.ToMillimetres())];
        for (int i = 0; i < mesh.Triangles.Length; i += 3)
        {
            grid.Add(corners[mesh.Triangles[i]], corners[mesh.Triangles[i + 1]], corners[mesh.Triangles[i + 2]], material);
        }
    }
}
