using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Rendering;

/// <summary>
/// Turns a depth buffer into colours: light from two sides, shade where other surfaces stand close (as skylight gives it), dark
/// lines at creases and outlines, hatching on cuts. A sample whose nearest surface is seen from behind looks into a body that
/// the section plane has opened: the cut face is what shows there.
/// </summary>
internal sealed class Shading
{
    // Cosine of the turn between neighbouring faces from which a crease is drawn: 24 degrees, twice the turn of a 32-sided pin.
    private const double Crease = 0.9135;

    // A step in depth is drawn from this many samples on.
    private const double StepSamples = 3;

    // How far skylight shade reaches, as a share of the picture's height, and how deep it gets.
    private const double ShadeReach = 0.03;
    private const double ShadeDepth = 0.75;

    private const double HatchPitch = 14;
    private const double HatchWidth = 2.2;

    private static readonly Rgb Ink = new(28, 32, 38);
    private static readonly (double X, double Y)[] ShadeOffsets = Spiral(20);

    private readonly Scene _scene;
    private readonly Projection _projection;
    private readonly DepthBuffer _buffer;
    private readonly List<Face> _faces;
    private readonly Point3 _right;
    private readonly Point3 _up;
    private readonly Point3 _cutNormal;
    private readonly (double X, double Y, double Z, double D) _cut;
    private readonly bool _showsCuts;

    public Shading(Scene scene, Projection projection, DepthBuffer buffer, List<Face> faces)
    {
        _scene = scene;
        _right = scene.View.Right;
        _up = scene.View.Up;
        _projection = projection;
        _buffer = buffer;
        _faces = faces;
        if (scene.Section is { } section)
        {
            _cutNormal = (1 / section.Normal.Length) * section.Normal;
            _cut = projection.Cut(section with { Normal = _cutNormal });
            _showsCuts = _cut.Z > 0;
        }
    }

    /// <summary>A triangle as the shading needs it.</summary>
    /// <param name="Part">Number of its part.</param>
    /// <param name="Normal">Outward, of length 1.</param>
    /// <param name="IsBack">Whether it is seen from inside its body.</param>
    internal readonly record struct Face(int Part, Point3 Normal, bool IsBack);

    // Skylight shade changes slowly over a face, so the samples of one pixel that show one face share it.
    private record struct Shaded(int FaceAndOne, double Shade);

    // What shows at a sample.
    private readonly record struct Seen(int Part, bool IsCut, Point3 Normal, double Near);

    /// <summary>The picture, a square of samples averaged to each pixel.</summary>
    public Picture ToPicture(int samples)
    {
        var picture = new Picture(_scene.Width, _scene.Height, _scene.Background);
        Parallel.For(0, _scene.Height, y =>
        {
            for (int x = 0; x < _scene.Width; x++)
            {
                int r = 0;
                int g = 0;
                int b = 0;
                Shaded last = default;
                for (int k = 0; k < samples * samples; k++)
                {
                    Rgb colour = ColourAt((samples * x) + (k % samples), (samples * y) + (k / samples), ref last);
                    r += colour.R;
                    g += colour.G;
                    b += colour.B;
                }

                int all = samples * samples;
                picture[x, y] = new Rgb(
                    (byte)((r + (all / 2)) / all), (byte)((g + (all / 2)) / all), (byte)((b + (all / 2)) / all));
            }
        });
        return picture;
    }

    // Directions and distances that cover a disc evenly; the golden angle keeps them from lining up.
    private static (double X, double Y)[] Spiral(int count) => [.. Enumerable.Range(0, count).Select(i =>
    {
        Point2 p = Point2.Polar(Math.Sqrt((i + 0.5) / count), Angle.FromDegrees(137.50776 * i));
        return (p.X, p.Y);
    })];

    private Seen? At(int x, int y)
    {
        if (x < 0 || y < 0 || x >= _buffer.Width || y >= _buffer.Height || _buffer.Face(x, y) < 0)
        {
            return null;
        }

        Face face = _faces[_buffer.Face(x, y)];
        if (!face.IsBack || !_showsCuts)
        {
            return new Seen(face.Part, false, face.IsBack ? -1 * face.Normal : face.Normal, _buffer.Near(x, y));
        }

        double near = -((_cut.X * (x + 0.5)) + (_cut.Y * (y + 0.5)) + _cut.D) / _cut.Z;
        return new Seen(face.Part, true, _cutNormal, near);
    }

    private Rgb ColourAt(int x, int y, ref Shaded last)
    {
        Seen? here = At(x, y);
        int face = _buffer.Face(x, y);
        if (IsLine(here, face, x, y, 1, 0) || IsLine(here, face, x, y, 0, 1)
            || IsLine(here, face, x, y, -1, 0) || IsLine(here, face, x, y, 0, -1))
        {
            return Ink;
        }

        if (here is not { } seen)
        {
            return _scene.Background;
        }

        Rgb own = _scene.Parts[seen.Part].Colour;
        if (last.FaceAndOne != face + 1)
        {
            last = new Shaded(face + 1, Shade(x, y, seen));
        }

        double open = 1 - (ShadeDepth * last.Shade);
        if (seen.IsCut)
        {
            bool isHatch = IsHatch(x, y, seen.Part);
            return (isHatch ? own.Towards(Ink, 0.55) : own.Towards(Rgb.White, 0.35)).Lit(0.6 + (0.4 * open));
        }

        // A key light from the upper left of the viewer, a weak one from the right, and the sky.
        Point3 n = seen.Normal;
        double facing = Point3.Dot(n, _projection.Towards);
        double toRight = Point3.Dot(n, _right);
        double toUp = Point3.Dot(n, _up);
        double key = Math.Max(0, (0.62 * facing) + (0.58 * toUp) - (0.53 * toRight));
        double fill = Math.Max(0, (0.55 * facing) + (0.8 * toRight) - (0.2 * toUp));
        return own.Lit(((0.5 + (0.12 * n.Z)) * open) + (0.46 * key * (0.5 + (0.5 * open))) + (0.22 * fill * open));
    }

    private bool IsLine(Seen? here, int face, int x, int y, int right, int down)
    {
        // Most neighbours show one face, on which there is neither crease nor step.
        int sx = x + right;
        int sy = y + down;
        bool inside = sx >= 0 && sy >= 0 && sx < _buffer.Width && sy < _buffer.Height;
        return !(inside && _buffer.Face(sx, sy) == face) && IsLine(here, At(sx, sy), right, down);
    }

    private bool IsLine(Seen? here, Seen? there, int right, int down)
    {
        if (here is not { } a || there is not { } b)
        {
            return here.HasValue != there.HasValue;
        }

        if (a.Part != b.Part || a.IsCut != b.IsCut || Point3.Dot(a.Normal, b.Normal) < Crease)
        {
            return true;
        }

        // A step: neither surface, drawn on, reaches the other.
        double step = b.Near - a.Near;
        (double Right, double Down) slopeA = _projection.Slope(a.Normal);
        (double Right, double Down) slopeB = _projection.Slope(b.Normal);
        double limit = StepSamples / _projection.PerMillimetre;
        return Math.Abs(step - (right * slopeA.Right) - (down * slopeA.Down)) > limit
            && Math.Abs(step - (right * slopeB.Right) - (down * slopeB.Down)) > limit;
    }

    // How near what shows at a sample is: on a cut, the cut.
    private double NearAt(int x, int y)
    {
        if (x < 0 || y < 0 || x >= _buffer.Width || y >= _buffer.Height)
        {
            return double.NegativeInfinity;
        }

        int face = _buffer.Face(x, y);
        return face >= 0 && _showsCuts && _faces[face].IsBack
            ? -((_cut.X * (x + 0.5)) + (_cut.Y * (y + 0.5)) + _cut.D) / _cut.Z
            : _buffer.Near(x, y);
    }

    // How much of the sky near surfaces take away, from 0 to 1: looks how far the neighbourhood stands above the face's plane.
    private double Shade(int x, int y, Seen seen)
    {
        double reach = ShadeReach * _buffer.Height;
        double reachMillimetres = reach / _projection.PerMillimetre;
        (double slopeRight, double slopeDown) = _projection.Slope(seen.Normal);
        double facing = Math.Max(0.2, Point3.Dot(seen.Normal, _projection.Towards));
        double taken = 0;
        foreach ((double dx, double dy) in ShadeOffsets)
        {
            int sx = (int)Math.Floor(x + 0.5 + (dx * reach));
            int sy = (int)Math.Floor(y + 0.5 + (dy * reach));
            double otherNear = NearAt(sx, sy);
            if (double.IsNegativeInfinity(otherNear))
            {
                continue;
            }

            double above = (otherNear - seen.Near - (slopeRight * (sx - x)) - (slopeDown * (sy - y))) * facing;
            double away = Math.Sqrt((dx * dx) + (dy * dy)) * reachMillimetres;
            double height = Math.Clamp(above / Math.Max(away, 1 / _projection.PerMillimetre), 0, 1);

            // What stands far in front is not near: it takes no skylight from here.
            taken += height * Math.Clamp(2 - (above / reachMillimetres / 2), 0, 1);
        }

        return Math.Min(1, taken / ShadeOffsets.Length);
    }

    // Lines at 45 degrees in the picture, to the other side for every other part, as drawing standards have it.
    private static bool IsHatch(int x, int y, int part)
    {
        double along = part % 2 == 0 ? x + y : x - y;
        double pitch = HatchPitch + (3 * (part / 2 % 3));
        double rest = along - (Math.Floor(along / pitch) * pitch);
        return rest < HatchWidth;
    }
}
