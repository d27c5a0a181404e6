using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Physics.Light;
using ShellForge.Planning.Draft;

namespace ShellForge.Planning.Front;

/// <summary>
/// How even a diffuser over circles of LEDs will be lit: the light model on one LED's share of the window, with all LEDs on and rims and
/// cell walls as the baffle will have them, and on one side of that LED what joins the rims.
/// </summary>
/// <param name="input">All that decides it.</param>
internal sealed class PlannedBand(PlannedBand.Given input) : PlannedLight
{
    // Cells of the grid as in the checks, mm.
    private const double Step = 0.5;

    // What is judged lies this far inside of the looked-at field, mm: light spreads in the sheet.
    private const double Margin = 2.0;

    // So many single LEDs of each kind are looked at.
    private const int OfEach = 2;

    // A LED no farther from the axis than this is on it, mm.
    private const double OnAxis = 0.05;

    // Sides that stand for a rim.
    private const int RimSides = 120;

    private readonly PixelCircle[] _circles = [.. input.Round.Circles.Things.Select(circle => circle.Circle)];
    private readonly bool _cells = input.Round.Cells;
    private readonly LitBand _band = input.Band;
    private readonly BaffleSection _section = input.Round.Section;

    /// <summary>What decides the light over circles of LEDs.</summary>
    /// <param name="Round">LEDs, plastics and walls.</param>
    /// <param name="Band">The lit window.</param>
    /// <param name="Bars">Whether bars behind the diffuser stand on some of the walls between LEDs.</param>
    /// <param name="Bridge">Top of the bridges between rims where there are no cells, mm above the LEDs' windows.</param>
    public sealed record Given(LitSurroundings Round, LitBand Band, bool Bars, double Bridge);

    /// <inheritdoc />
    public override string JudgedAlong => "along the pitch circle";

    /// <inheritdoc />
    protected override object Input => input;

    /// <inheritdoc />
    protected override double MinimumOverMean(double distance) =>
        _circles.Length == 0 ? 1 : Telling(_circles).Min(circle => MinimumOverMean(circle, distance));

    // Every circle; of many single LEDs those that can be the darkest: the loneliest, and those farthest out and farthest in.
    private static PixelCircle[] Telling(PixelCircle[] all)
    {
        PixelCircle[] single = [.. all.Where(circle => circle.Count == 1)];
        if (single.Length <= 3 * OfEach)
        {
            return all;
        }

        Point2[] at = [.. all.SelectMany(circle => circle.Pixels.Select(pixel => pixel.At))];
        PixelCircle[] lonely =
            [.. single.OrderByDescending(one => Math.Round(at.Where(other => other != one.Pixels[0].At)
                .Min(other => Point2.Distance(other, one.Pixels[0].At)), 3))];
        PixelCircle[] outward = [.. single.OrderByDescending(one => Math.Round(one.Diameter, 3))];
        PixelCircle[] telling = [.. lonely.Take(OfEach), .. outward.Take(OfEach), .. outward.TakeLast(OfEach)];
        return [.. all.Where(circle => circle.Count > 1 || telling.Contains(circle))];
    }

    private double MinimumOverMean(PixelCircle circle, double distance)
    {
        // The LED that is looked at is turned onto the x axis.
        Point2 at = circle.Pixels[0].At;
        Angle turn = -1 * Angle.Of(at);
        double tallest = _circles.Max(each => each.Led.Height.Value);
        double radius = at.Length;
        double half = (circle.Pitch / 2) + Margin;
        bool single = circle.Count == 1;
        Box2 box = single
            ? new Box2(new Point2(radius - half, -half), new Point2(radius + half, half))
            : new Box2(new Point2(Math.Max(0, _band.Inner), -half), new Point2(_band.Outer, half));
        ReceiverGrid face = ReceiverGrid.Flat(box, distance, Step, place => place.Length >= _band.Inner && place.Length <= _band.Outer);
        PitchLine line = single
            ? PitchLine.Row([new Point2(radius, 0)], circle.Pitch)
            : PitchLine.Circle([new Point2(radius, 0)], circle.Count);
        DiffuserOptics optics = DiffuserOptics.Printed(input.Round.Thickness, input.Round.Sheet);
        var scene = new LightScene
        {
            Leds =
            [
                .. _circles.SelectMany(each => each.Pixels.Select(pixel =>
                {
                    Point2 place = pixel.At.Turned(turn);
                    return new LedSource(
                        new Point3(place.X, place.Y, each.Led.Height - tallest), new Point3(0, 0, 1), each.Led.ViewingAngleDegrees,
                        each.Led.WindowWidth);
                })),
            ],
            Solids = Walls(circle, turn, distance, tallest),
            Materials =
            [
                new SurfaceOptics(input.Round.BaffleReflectance, 0), new SurfaceOptics(SurfaceOptics.BoardReflectance, 0),
                .. _circles.Select(each => new SurfaceOptics(each.Led.BodyReflectance, 0)),
            ],
            Face = face,
            Diffuser = optics,
            Cells = _cells,
            Sectors = Sectors(),
            OnlyAll = true,
        };
        LightMap map = _cells ? LightModel.MapPart(scene, line.OnlyOf(face, optics.Spread)) : LightModel.Map(scene);
        return Evenness.Along(map, _cells ? line.InCells(circle.Pitch, _section.Wall) : line).MinimumOverMean;
    }

    // Full circles of equal count look the same in every sector; of unequal ones in each of the greatest common divisor. A LED on the axis
    // looks the same from all of them.
    private int Sectors()
    {
        int common = 0;
        foreach (PixelCircle circle in _circles.Where(circle => circle.Pixels.Any(pixel => pixel.At.Length > OnAxis)))
        {
            int own = circle.Pixels.Length == circle.Count ? circle.Count : 1;
            (int a, int b) = (Math.Max(common, own), Math.Min(common, own));
            while (b > 0)
            {
                (a, b) = (b, a % b);
            }

            common = a;
        }

        // The looked-at field is one LED's share of the outermost circle.
        return Math.Max(1, common);
    }

    private ShadowTree Walls(PixelCircle circle, Angle turn, double distance, double tallest)
    {
        var builder = new ShadowTreeBuilder();
        double top = distance - _section.TopGap;
        if (top <= -tallest)
        {
            return builder.Build();
        }

        Floor(builder, turn, tallest);
        Rim(builder, _band.Outer, -tallest, top, facingIn: true);
        if (_band.Inner > 0)
        {
            Rim(builder, _band.Inner, -tallest, top, facingIn: false);
        }

        if (_cells && circle.Count > 1)
        {
            for (int i = 0; i < circle.Count; i++)
            {
                Spoke(builder, Between(i), -tallest, input.Bars && i == 0 ? distance : top);
            }
        }
        else if (!_cells && _band.Inner > 0)
        {
            Spoke(builder, Between(0), -tallest, Math.Min(top, input.Bridge));
        }

        return builder.Build();

        Angle Between(int i) => turn + Angle.Of(circle.Pixels[0].At) + Angle.FromDegrees((i + 0.5) * 360 / circle.Count);
    }

    private static void Rim(ShadowTreeBuilder builder, double radius, double bottom, double top, bool facingIn)
    {
        for (int i = 0; i < RimSides; i++)
        {
            Point2 a = Point2.Polar(radius, Angle.FromDegrees(360.0 * i / RimSides));
            Point2 b = Point2.Polar(radius, Angle.FromDegrees(360.0 * (i + 1) / RimSides));
            Quad(builder, facingIn ? b : a, facingIn ? a : b, bottom, top);
        }
    }

    // The board, and on it the upper faces of LEDs: both throw light back.
    private void Floor(ShadowTreeBuilder builder, Angle turn, double tallest)
    {
        Point3 middle = new(0, 0, -tallest);
        for (int i = 0; i < RimSides; i++)
        {
            Point2 a = Point2.Polar(_band.Outer, Angle.FromDegrees(360.0 * i / RimSides));
            Point2 b = Point2.Polar(_band.Outer, Angle.FromDegrees(360.0 * (i + 1) / RimSides));
            builder.Add(middle, Up(a, -tallest), Up(b, -tallest), 1);
        }

        for (int k = 0; k < _circles.Length; k++)
        {
            foreach (Pixel pixel in _circles[k].Pixels)
            {
                Point2 at = pixel.At.Turned(turn);
                Point2 x = Point2.Polar(_circles[k].Led.Length / 2, pixel.Rotation + turn);
                Point2 y = Point2.Polar(_circles[k].Led.Width / 2, pixel.Rotation + turn + Angle.FromDegrees(90));
                double z = _circles[k].Led.Height - tallest;
                builder.Add(Up(at - x - y, z), Up(at + x - y, z), Up(at + x + y, z), 2 + k);
                builder.Add(Up(at - x - y, z), Up(at + x + y, z), Up(at - x + y, z), 2 + k);
            }
        }
    }

    private void Spoke(ShadowTreeBuilder builder, Angle at, double bottom, double top)
    {
        Point2 aside = (_section.Wall / 2) * Point2.Polar(1, at + Angle.FromDegrees(90));
        Point2 inner = Point2.Polar(_band.Inner, at);
        Point2 outer = Point2.Polar(_band.Outer, at);
        Quad(builder, outer + aside, inner + aside, bottom, top);
        Quad(builder, inner - aside, outer - aside, bottom, top);
        builder.Add(Up(inner + aside, top), Up(inner - aside, top), Up(outer - aside, top), 0);
        builder.Add(Up(inner + aside, top), Up(outer - aside, top), Up(outer + aside, top), 0);
    }
}
