using System.Buffers;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Rendering;

/// <summary>
/// Turns a depth buffer into colours: light from two sides, shade where other surfaces stand close (as skylight gives it), dark
/// lines at creases and outlines, hatching on cuts. A sample whose nearest surface is seen from behind looks into a body that
/// the section plane has opened: the cut face is what shows there.
/// </summary>
internal sealed class Shading
{
    /// <summary>Samples a pixel and direction: lines come out about one and a half pixels wide and edges smooth.</summary>
    public const int Samples = 2;

    // Cosine of the turn between neighbouring faces from which a crease is drawn: 24 degrees, twice the turn of a 32-sided pin.
    private const double Crease = 0.9135;

    // A step in depth is drawn from this many samples on.
    private const double StepSamples = 3;

    // How far skylight shade reaches, as a share of the picture's height, and how deep it gets.
    private const double ShadeReach = 0.03;
    private const float ShadeDepth = 0.75f;
    private const int ShadePlaces = 12;

    // Cosine of the turn up to which neighbouring faces are in one light from the sky: 8 degrees.
    private const double NearlyAlike = 0.99;

    // Pixels along a side of a block within which skylight shade on a face is looked up once: it changes slowly.
    private const int Block = 2;

    private const double HatchPitch = 14;
    private const double HatchWidth = 2.2;

    private static readonly Rgb Ink = new(28, 32, 38);
    private static readonly Point2[] ShadeOffsets = Spiral(ShadePlaces);

    private readonly DepthBuffer _buffer;
    private readonly FaceLook[] _looks;
    private readonly int _width;
    private readonly int _height;
    private readonly float _stepLimit;
    private readonly float _fade;
    private readonly (int Right, int Down, float PerHeight)[] _places;
    private readonly FaceLook[]? _cuts;
    private readonly (double X, double Y, double Z, double D) _cut;

    /// <summary>Prepares the shading.</summary>
    /// <param name="looks">The faces that the buffer's numbers mean.</param>
    /// <param name="projection">The projection that the buffer was drawn with.</param>
    /// <param name="buffer">What is nearest.</param>
    /// <param name="cuts">How each part's cut face looks, and where the plane lies; null where none is seen.</param>
    public Shading(
        FaceLook[] looks, Projection projection, DepthBuffer buffer,
        (FaceLook[] Looks, (double X, double Y, double Z, double D) Plane)? cuts = null)
    {
        _buffer = buffer;
        _looks = looks;
        _width = buffer.Width;
        _height = buffer.Height;
        _stepLimit = (float)(StepSamples / projection.PerMillimetre);
        double reach = ShadeReach * buffer.Height;
        double reachMillimetres = reach / projection.PerMillimetre;
        _fade = (float)(1 / (2 * reachMillimetres));
        _places =
        [
            .. ShadeOffsets.Select(at => (
                (int)Math.Floor(0.5 + (at.X * reach)), (int)Math.Floor(0.5 + (at.Y * reach)),
                (float)(1 / Math.Max(at.Length * reachMillimetres, 1 / projection.PerMillimetre)))),
        ];
        if (cuts is { } seen)
        {
            (_cuts, _cut) = seen;
        }
    }

    // The samples of one block that show one face share its colour, and faces of one part that look nearly the same way their skylight.
    private record struct Shaded(int FaceAndOne, Rgb Colour, float Open);

    /// <summary>The picture, a square of samples averaged to each pixel.</summary>
    public Picture ToPicture(Rgb background)
    {
        bool[] lines = Lines();
        var picture = new Picture(_width / Samples, _height / Samples, background);
        Parallel.For(0, (picture.Height + Block - 1) / Block, rows =>
        {
            var known = new Shaded[(picture.Width + Block - 1) / Block];
            for (int y = rows * Block; y < Math.Min(picture.Height, (rows + 1) * Block); y++)
            {
                DrawRow(picture, y, background, lines, known);
            }
        });
        ArrayPool<bool>.Shared.Return(lines);
        return picture;
    }

    private void DrawRow(Picture picture, int y, Rgb background, bool[] lines, Shaded[] known)
    {
        ReadOnlySpan<int> face = _buffer.Face;
        for (int x = 0; x < picture.Width; x++)
        {
            int first = (Samples * y * _width) + (Samples * x);
            int second = first + _width;
            // Most pixels show one thing, and most of those what their neighbour shows.
            int here = face[first];
            if (here == face[first + 1] && here == face[second] && here == face[second + 1]
                && !(lines[first] || lines[first + 1] || lines[second] || lines[second + 1]))
            {
                if (here < 0)
                {
                    continue;
                }

                if (_cuts is null && known[x / Block].FaceAndOne == here + 1)
                {
                    picture[x, y] = known[x / Block].Colour;
                    continue;
                }
            }

            int r = 0;
            int g = 0;
            int b = 0;
            for (int down = 0; down < Samples; down++)
            {
                for (int right = 0; right < Samples; right++)
                {
                    int i = first + (down * _width) + right;
                    Rgb colour = lines[i] ? Ink
                        : face[i] < 0 ? background
                        : ColourAt((Samples * x) + right, (Samples * y) + down, face[i], ref known[x / Block]);
                    r += colour.R;
                    g += colour.G;
                    b += colour.B;
                }
            }

            const int all = Samples * Samples;
            picture[x, y] = new Rgb((byte)((r + (all / 2)) / all), (byte)((g + (all / 2)) / all), (byte)((b + (all / 2)) / all));
        }
    }

    // Directions and distances that cover a disc evenly; the golden angle keeps them from lining up.
    private static Point2[] Spiral(int count) =>
        [.. Enumerable.Range(0, count).Select(i => Point2.Polar(Math.Sqrt((i + 0.5) / count), Angle.FromDegrees(137.50776 * i)))];

    // Both samples of a pair between which a line runs are drawn dark. Each pair is looked at once. The array is lent.
    private bool[] Lines()
    {
        bool[] lines = ArrayPool<bool>.Shared.Rent(_width * _height);
        lines.AsSpan().Clear();
        ReadOnlySpan<int> face = _buffer.Face;
        for (int y = 0; y < _height; y++)
        {
            ReadOnlySpan<int> row = face.Slice(y * _width, _width);
            ReadOnlySpan<int> next = y + 1 < _height ? face.Slice((y + 1) * _width, _width) : row;
            int before = -1;
            for (int x = 0; x < row.Length; x++)
            {
                int here = row[x];
                if (here != before && x > 0 && IsLine(before, here, (y * _width) + x - 1, 1, 0))
                {
                    lines[(y * _width) + x - 1] = lines[(y * _width) + x] = true;
                }

                if (here != next[x] && IsLine(here, next[x], (y * _width) + x, 0, 1))
                {
                    lines[(y * _width) + x] = lines[((y + 1) * _width) + x] = true;
                }

                before = here;
            }
        }

        // The picture's border cuts off what reaches it.
        for (int x = 0; x < _width; x++)
        {
            lines[x] |= face[x] >= 0;
            lines[face.Length - 1 - x] |= face[^(x + 1)] >= 0;
        }

        for (int i = 0; i < face.Length; i += _width)
        {
            lines[i] |= face[i] >= 0;
            lines[i + _width - 1] |= face[i + _width - 1] >= 0;
        }

        return lines;
    }

    private bool IsCut(int face) => _cuts is not null && _looks[face].IsBack;

    private ref readonly FaceLook Look(int face) => ref IsCut(face) ? ref _cuts![_looks[face].Part] : ref _looks[face];

    // How near what shows at a sample is: on a cut, the cut.
    private float NearAt(int i)
    {
        int face = _buffer.Face[i];
        return face >= 0 && IsCut(face)
            ? (float)(-((_cut.X * ((i % _width) + 0.5)) + (_cut.Y * ((i / _width) + 0.5)) + _cut.D) / _cut.Z)
            : _buffer.Near[i];
    }

    // Whether a line runs between a sample and its neighbour to the right or below, which show two faces.
    private bool IsLine(int one, int other, int i, int right, int down)
    {
        if (one < 0 || other < 0)
        {
            return true;
        }

        ref readonly FaceLook a = ref Look(one);
        ref readonly FaceLook b = ref Look(other);
        if (a.Part != b.Part || IsCut(one) != IsCut(other) || Point3.Dot(a.Normal, b.Normal) < Crease)
        {
            return true;
        }

        // A step: neither surface, drawn on, reaches the other.
        float step = NearAt(i + right + (down * _width)) - NearAt(i);
        return Math.Abs(step - (right * a.SlopeRight) - (down * a.SlopeDown)) > _stepLimit
            && Math.Abs(step - (right * b.SlopeRight) - (down * b.SlopeDown)) > _stepLimit;
    }

    private Rgb ColourAt(int x, int y, int face, ref Shaded last)
    {
        ref readonly FaceLook look = ref Look(face);
        if (IsCut(face))
        {
            double open = 1 - (ShadeDepth * Shade(x, y, look));
            return (IsHatch(x, y, look.Part) ? look.Colour.Towards(Ink, 0.55) : look.Colour.Towards(Rgb.White, 0.35)).Lit(0.6
                + (0.4 * open));
        }

        if (last.FaceAndOne != face + 1)
        {
            bool alike = last.FaceAndOne > 0 && _looks[last.FaceAndOne - 1].Part == look.Part
                && Point3.Dot(_looks[last.FaceAndOne - 1].Normal, look.Normal) > NearlyAlike;
            float open = alike ? last.Open : 1 - (ShadeDepth * Shade(x, y, look));
            last = new Shaded(face + 1, look.Colour.Lit(look.Light + (look.LightOfSky * open)), open);
        }

        return last.Colour;
    }

    // How much of the sky near surfaces take away, from 0 to 1: looks how far the neighbourhood stands above the face's plane.
    private float Shade(int x, int y, in FaceLook look)
    {
        float here = NearAt((y * _width) + x);
        float taken = 0;
        foreach ((int right, int down, float perHeight) in _places)
        {
            int sx = x + right;
            int sy = y + down;
            if (sx < 0 || sy < 0 || sx >= _width || sy >= _height)
            {
                continue;
            }

            float near = _cuts is null ? _buffer.Near[(sy * _width) + sx] : NearAt((sy * _width) + sx);
            float above = (near - here - (look.SlopeRight * right) - (look.SlopeDown * down)) * look.Facing;
            if (above > 0)
            {
                // What stands far in front is not near: it takes no skylight from here.
                taken += Math.Min(1, above * perHeight) * Math.Clamp(2 - (above * _fade), 0, 1);
            }
        }

        return Math.Min(1, taken / _places.Length);
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
