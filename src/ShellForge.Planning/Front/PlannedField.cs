using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Physics.Light;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Front;

/// <summary>
/// How even a diffuser over LEDs that lie anywhere will be lit: the light model on the whole window, with all LEDs on and rims and cell
/// walls as the baffle will have them. Of large fields the ways from LED to LED that can be the worst are looked at: the longest, and those
/// at the rim.
/// </summary>
/// <param name="input">All that decides it.</param>
internal sealed class PlannedField(PlannedField.Given input) : PlannedLight
{
    // Cells of the grid as in the checks, mm; of windows with more cells than this twice as wide, which still are many from LED to LED.
    private const double Step = 0.5;
    private const double MostCells = 80_000;

    // So many ways of each kind are looked at, and so far to their sides, in deviations of the sheet's spread.
    private const int Ways = 12;
    private const double Deviations = 2;

    private readonly bool _cells = input.Round.Cells;
    private readonly Region _window = input.Window;
    private readonly BaffleSection _section = input.Round.Section;
    private readonly LedFieldPlan _field = input.Field;
    private readonly (PixelCircle Circle, Pixel Pixel)[] _leds =
        [.. input.Round.Circles.Things.Select(circle => circle.Circle)
            .SelectMany(circle => circle.Pixels.Select(pixel => (circle, pixel)))];

    private Region? _walls;

    /// <summary>What decides the light over a field of LEDs.</summary>
    /// <param name="Round">LEDs, plastics and walls.</param>
    /// <param name="Field">The LEDs as neighbours.</param>
    /// <param name="Window">The lit window.</param>
    public sealed record Given(LitSurroundings Round, LedFieldPlan Field, Region Window);

    /// <inheritdoc />
    public override string JudgedAlong => "from LED to LED";

    /// <inheritdoc />
    protected override object Input => input;

    /// <inheritdoc />
    protected override double MinimumOverMean(double distance)
    {
        PitchLine line = FieldLines.Judged(_field, _window, _cells ? _section.Wall : null).Only(Telling);
        if (_leds.Length == 0 || line.Stretches.IsEmpty)
        {
            return 1;
        }

        double tallest = _leds.Max(led => led.Circle.Led.Height.Value);
        DiffuserOptics optics = DiffuserOptics.Printed(input.Round.Thickness, input.Round.Sheet);
        PixelCircle[] circles = [.. _leds.Select(led => led.Circle).Distinct()];
        double step = _window.Bounds.Size.X * _window.Bounds.Size.Y > MostCells * Step * Step ? 2 * Step : Step;
        ReceiverGrid face = ReceiverGrid.Flat(_window, distance, step);
        var scene = new LightScene
        {
            Leds =
            [
                .. _leds.Select(led => new LedSource(
                    new Point3(led.Pixel.At.X, led.Pixel.At.Y, led.Circle.Led.Height - tallest), new Point3(0, 0, 1),
                    led.Circle.Led.ViewingAngleDegrees, led.Circle.Led.WindowWidth)),
            ],
            Solids = Solids(circles, distance, tallest),
            Materials =
            [
                new SurfaceOptics(input.Round.BaffleReflectance, 0), new SurfaceOptics(SurfaceOptics.BoardReflectance, 0),
                .. circles.Select(each => new SurfaceOptics(each.Led.BodyReflectance, 0)),
            ],
            Face = face,
            Diffuser = optics,
            Cells = _cells,
            OnlyAll = true,
        };
        double beside = (Deviations * optics.Spread) + face.Step;
        ReceiverGrid judged = _cells ? line.OnlyOf(face, optics.Spread) : face.Finer(1, at => line.IsNear(at, beside));
        return Evenness.Along(LightModel.MapPart(scene, judged), line).MinimumOverMean;
    }

    // The longest ways, the ones farthest out, and some in the middle, which a field is bright in.
    private IEnumerable<PitchStretch> Telling(IReadOnlyCollection<PitchStretch> all)
    {
        Point2 middle = _window.Bounds.Centre;
        PitchStretch[] outward = [.. all.OrderByDescending(way => Point2.Distance(way.Middle, middle))];
        return all.OrderByDescending(way => Math.Round(way.Along.Length, 3)).Take(Ways).Concat(outward.Take(Ways))
            .Concat(outward.TakeLast(Ways)).Distinct();
    }

    private ShadowTree Solids(PixelCircle[] circles, double distance, double tallest)
    {
        var builder = new ShadowTreeBuilder();
        double top = distance - _section.TopGap;
        if (top <= -tallest)
        {
            return builder.Build();
        }

        Box2 box = _window.Bounds.Grown(_section.Wall);
        (Point2 right, Point2 left) = (new Point2(box.Max.X, box.Min.Y), new Point2(box.Min.X, box.Max.Y));
        builder.Add(Up(box.Min, -tallest), Up(right, -tallest), Up(box.Max, -tallest), 1);
        builder.Add(Up(box.Min, -tallest), Up(box.Max, -tallest), Up(left, -tallest), 1);
        foreach ((PixelCircle circle, Pixel pixel) in _leds)
        {
            Point2 x = Point2.Polar(circle.Led.Length / 2, pixel.Rotation);
            Point2 y = Point2.Polar(circle.Led.Width / 2, pixel.Rotation + Angle.FromDegrees(90));
            double z = circle.Led.Height - tallest;
            int material = 2 + Array.IndexOf(circles, circle);
            builder.Add(Up(pixel.At - x - y, z), Up(pixel.At + x - y, z), Up(pixel.At + x + y, z), material);
            builder.Add(Up(pixel.At - x - y, z), Up(pixel.At + x + y, z), Up(pixel.At - x + y, z), material);
        }

        _walls ??= _cells
            ? _window.Offset(_section.Wall).Less(_window).And(LedCells.Walls(_field, _window, _section.Wall))
            : _window.Offset(_section.Wall).Less(_window);
        foreach (var loop in _walls.Loops)
        {
            for (int i = 0; i < loop.Length; i++)
            {
                Quad(builder, loop[i], loop[(i + 1) % loop.Length], -tallest, top);
            }
        }

        return builder.Build();
    }
}
