using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using ShellForge.Board.Profiles;
using ShellForge.Board.Schema;
using ShellForge.Geometry.Numerics;
using YamlDotNet.RepresentationModel;

namespace ShellForge.Testing;

/// <summary>
/// Board files drawn by a seed over the whole of what a file may say: every kind of outline, arrangement of LEDs, part, wire, mount,
/// closure, cable, printer and filament, with numbers from both ends of their ranges. Every third keeps to what makers write, so that more
/// of them can be printed. Most can be made, some can't, and none may end in an exception.
/// </summary>
public sealed partial class AnyBoards
{
    private static readonly string[] Shapes =
    [
        "disc", "ring", "half", "quarter", "d", "oval", "flats", "star", "gear", "heart", "c", "tail", "l", "bar", "triangle", "holed",
        "random",
    ];

    private static readonly JsonNode Schema = JsonNode.Parse(BoardSchema.Json())!;

    private readonly Random _dice;
    private readonly List<string> _lines = [];
    private readonly List<Point2> _leds = [];
    private Point2[] _edge = [];
    private Point2 _centre;
    private double _size;
    private double _inner;
    private readonly bool _tame;
    private readonly int _seed;
    private const int ApartSecond = 104_729;

    private bool HasSpacers { get; set; }

    private AnyBoards(int seed)
    {
        _dice = new Random(seed);
        _seed = seed;
        _tame = seed % 3 == 0;
    }

    /// <summary>The text of a board file.</summary>
    public static string Text(int seed)
    {
        var drawn = new AnyBoards(seed);
        drawn.Draw(seed);
        string text = string.Join('\n', drawn._lines) + "\n";
        return drawn._tame ? text : drawn.WithMore(text);
    }

    // With keys of the schema that are not said yet: in half of the files a few, in some many.
    private string WithMore(string text)
    {
        double share = _dice.Next(4) switch { 0 or 1 => 0, 2 => 0.03, _ => 0.15 };
        if (share == 0)
        {
            return text;
        }

        var stream = new YamlStream();
        stream.Load(new StringReader(text));
        string[] refs = [.. Designator().Matches(text).Select(match => match.Groups[1].Value)];
        new SchemaDraws(_dice, 0.5 * _size, refs).Add(stream.Documents[0].RootNode, Schema, share);
        var writer = new StringWriter(CultureInfo.InvariantCulture);
        stream.Save(writer, assignAnchors: false);
        return writer.ToString().Replace("\r\n", "\n", StringComparison.Ordinal).Replace("\n...\n", "\n", StringComparison.Ordinal);
    }

    [GeneratedRegex(@"\b(?:ref|name): ([A-Z]+[0-9]+|lead)\b")]
    private static partial Regex Designator();

    private void Draw(int seed)
    {
        _lines.AddRange(["format: shellforge/1", $"name: Any {seed}", $"up: {Pick("0", "90", "90", "37", "-123.5", "720")}"]);
        if (Once(4))
        {
            _lines.Add($"revision: {Pick("B", "rev 12", "m2.5x4-od4.6", "\"\"")}");
        }

        _size = _tame ? Tenths(45, 120) : Once(12) ? Tenths(8, 16) : Once(10) ? Tenths(200, 358) : Tenths(30, 130);
        _inner = 0;
        _lines.Add("board:");
        Outline(Shapes[_dice.Next(Shapes.Length)]);
        _lines.Add($"  thickness: {Sane("1.6", "1.6", "1.0", "0.2", "6")}");
        _lines.Add($"  edge: {Pick("clean", "clean", "tabs", "v-scored")}");
        Holes();
        Spacers();
        Pixels();
        string[] connectors = Parts();
        Wires();
        Housing(connectors);
        Rest();
    }

    private void Cutouts()
    {
        if (Once(5))
        {
            _lines.Add(
                Mm($"  cutouts: [{{circle: {Tenths(1, 12)}, at: [{Tenths(-0.4 * _size, 0.4 * _size)}, {Tenths(-0.4 * _size, 0.4 * _size)}]}}]"));
        }
    }

    private void Holes()
    {
        int kind = _dice.Next(5);
        if (kind == 0)
        {
            return;
        }

        _lines.Add("  holes:");
        string diameter = Sane("2.7", "2.7", "3.2", "2.2", "0.3", "8");
        double outward = _tame ? 0.86 : 0.6 + (0.32 * _dice.NextDouble());
        double circle = Math.Max(1, Math.Round(_inner + ((_size - _inner) * outward), 1));
        double radius = double.Parse(diameter, CultureInfo.InvariantCulture) / 2;
        if (kind <= 2)
        {
            (int count, int from) = (1 + _dice.Next(8), _dice.Next(360));
            string skip = Skip(circle, count, from, 1, radius);
            _lines.Add(skip == "all" ? "    []"
                : Mm($"    - {{circle: {circle}, count: {count}, from: {from}, diameter: {diameter}{skip}}}"));
            return;
        }

        int before = _lines.Count;
        for (int i = 0; i < kind - 1; i++)
        {
            (double x, double y) = Somewhere();
            if (Holds(new Point2(x, y), radius))
            {
                _lines.Add(Mm($"    - {{{Place(x, y, (2 * radius) + 1)}, diameter: {diameter}, for: {Pick("mount", "mount", "wire", "tooling")}}}"));
            }
        }

        if (_lines.Count == before)
        {
            _lines.Add("    []");
        }
    }

    // Holes that a second board hangs from, of some boards that have holes.
    private void Spacers()
    {
        const double apart = 9;
        var dice = new Random(_seed + ApartSecond);
        Point2[] places = [_centre + new Point2(apart, 0), _centre - new Point2(apart, 0)];
        if (dice.Next(6) == 0 && _lines[^1].StartsWith("    - ", StringComparison.Ordinal) && places.All(at => Holds(at, 1.5)))
        {
            _lines.AddRange(places.Select(at => Mm($"    - {{at: [{at.X}, {at.Y}], diameter: 2.7, for: spacer}}")));
            HasSpacers = true;
        }
    }

    // Places of a pattern that don't lie on the board, as its key says it; "all" where none does.
    private string Skip(double circle, int count, double from, int way, double radius)
    {
        int[] off =
            [.. Enumerable.Range(0, count)
                .Where(k => !Holds(_centre + Point2.Polar(circle / 2, Angle.FromDegrees(from + (way * 360.0 * k / count))), radius))
                    .Select(k => k + 1)];
        return off.Length == 0 ? "" : off.Length == count ? "all" : $", skip: [{string.Join(", ", off)}]";
    }

    private void Pixels()
    {
        string led = Pick("5050", "5050", "3535", "2020");
        int kind = _dice.Next(7);
        if (kind == 0 && Once(4))
        {
            _lines.Add("  pixels: []");
            return;
        }

        _lines.Add("  pixels:");
        Leds(led, kind);
        if (_leds.Count == 0)
        {
            _lines.Add("    []");
        }
    }

    private void Leds(string led, int kind)
    {
        double circle = Math.Max(0.5, Math.Round(_inner + ((_size - _inner) * (0.2 + (0.6 * _dice.NextDouble()))), 1));
        double pitch = Tenths(led == "2020" ? 3.2 : 6.2, 14);
        switch (kind)
        {
            case 0 or 1:
                Circle(led, circle, pitch, half: false);
                return;
            case 2:
                Circle(led, circle, pitch, half: true);
                return;
            case 3:
                int columns = 1 + _dice.Next(6);
                int rows = 1 + _dice.Next(6);
                if (Once(2))
                {
                    LedGrid(led, columns, rows, pitch);
                    return;
                }

                for (int k = 0; k < columns * rows; k++)
                {
                    At(led, _centre.X + (pitch * ((k % columns) - ((columns - 1) / 2.0))),
                        _centre.Y + (pitch * ((k / columns) - ((rows - 1) / 2.0))));
                }

                return;
            case 4:
                for (double turn = 0, radius = pitch; radius < _size * 0.4
                    && turn < 6 * Math.PI; turn += pitch / radius, radius = pitch + (pitch * 1.5 * turn / (2 * Math.PI)))
                {
                    At(led, _centre.X + (radius * Cos(turn * 180 / Math.PI)), _centre.Y + (radius * Sin(turn * 180 / Math.PI)));
                }

                return;
            case 5:
                At(led, _centre.X, _centre.Y);
                Circle(led, circle, pitch, half: false);
                Circle(led, Math.Max(1, Math.Round(circle * 0.5, 1)), pitch, half: false);
                return;
            default:
                for (int k = 1 + _dice.Next(7); k > 0; k--)
                {
                    (double x, double y) = Somewhere();
                    At(led, x, y);
                }

                return;
        }
    }

    private void Circle(string led, double circle, double pitch, bool half)
    {
        int count = Math.Clamp((int)(Math.PI * circle / pitch), 1, 90);
        (int from, int way) = (_dice.Next(360), Once(2) ? 1 : -1);
        double body = led == "2020" ? 1.4 : 2.9;
        Point2[] places =
            [.. Enumerable.Range(0, count)
                .Select(k => _centre + Point2.Polar(circle / 2, Angle.FromDegrees(from + (way * 360.0 * k / count))))];
        int[] off =
            [.. Enumerable.Range(0, count).Where(k => (half && k > count / 2) || !Holds(places[k], body) || Near(places[k], 2.4 * body))
                .Select(k => k + 1)];
        if (off.Length < count)
        {
            _leds.AddRange(places.Where((_, k) => !off.Contains(k + 1)));
            bool arc = half && off.Length > 0 && off[0] == count - off.Length + 1;
            string skip = arc ? Mm($", step: {Math.Round(360.0 / count, 4)}")
                : off.Length == 0 ? "" : $", skip: [{string.Join(", ", off)}]";
            _lines.Add(
                Mm($"    - {{package: \"{led}\", circle: {circle}, count: {(arc ? count - off.Length : count)}, from: {from}, direction: {(way > 0 ? "ccw" : "cw")}{skip}}}"));
        }
    }

    private bool Near(Point2 at, double distance) => _leds.Any(led => Point2.Distance(led, at) < distance);

    private void At(string led, double x, double y)
    {
        Point2 at = new(Math.Round(x, 2), Math.Round(y, 2));
        double body = led == "2020" ? 1.4 : 2.9;
        if (Holds(at, body) && !Near(at, 2.4 * body))
        {
            _leds.Add(at);
            _lines.Add(Mm($"    - {{package: \"{led}\", at: [{at.X}, {at.Y}]}}"));
        }
    }

    private string[] Parts()
    {
        int count = _tame ? _dice.Next(2) : _dice.Next(4);
        if (count == 0)
        {
            return [];
        }

        _lines.Add("  parts:");
        var connectors = new List<string>();
        for (int i = 1; i <= count; i++)
        {
            (double x, double y) = Somewhere();
            string side = Sane("bottom", "bottom", "top");
            if (_dice.Next(3) == 0)
            {
                _lines.Add(
                    Mm($"    - {{ref: X{i}, size: [{Tenths(0.5, 20)}, {Tenths(0.5, 15)}, {Tenths(0.2, Once(8) ? 60 : 9)}], side: {side}, {Place(x, y, 1)}{Pick("", ", round: true", ", lift: 2", ", joint-protrusion: 1.5")}}}"));
                continue;
            }

            PackageProfile package = Pick([.. WrittenBoard.Shipped.Packages.All]);
            string place = package.Mouth is null || Once(3) ? Mm($"at: [{x}, {y}], rotation: {_dice.Next(360)}")
                : Mm($"faces: {90 * _dice.Next(4)}, past-edge: {Tenths(-3, 2)}");
            _lines.Add(
                $"    - {{ref: J{i}, package: {package.Name}, side: {side}, {place}, mounted: {Pick("flat", "flat", "on-pins", "standing", "mid-board")}{Pick("", "", ", port: open", ", port: closed")}}}");
            if (package.Mouth is not null)
            {
                connectors.Add($"J{i}");
            }
        }

        return [.. connectors];
    }

    private void Wires()
    {
        if (Once(4))
        {
            (double x, double y) = Somewhere();
            _lines.Add("  wires:");
            _lines.Add(
                Mm($"    - {{name: lead, {Place(x, y, 2)}, side: {Pick("top", "bottom")}, conductors: {1 + _dice.Next(4)}, {Pick("gauge: 24", "diameter: 1.2", "diameter: 12")}}}"));
        }
    }

    // Somewhere on the board, or after many tries anywhere.
    private (double X, double Y) Somewhere()
    {
        Point2 at = default;
        for (int tries = 0; tries < 60; tries++)
        {
            at = new Point2(Math.Round(_size * (_dice.NextDouble() - 0.5), 2), Math.Round(_size * (_dice.NextDouble() - 0.5), 2));
            if (Holds(at, 3))
            {
                break;
            }
        }

        return (at.X, at.Y);
    }

    // Whether a disc lies on the board, cutouts not looked at.
    private bool Holds(Point2 at, double radius)
    {
        if (_edge.Length == 0)
        {
            return at.Length + radius <= _size / 2 && at.Length - radius >= _inner / 2;
        }

        bool inside = false;
        for (int k = 0; k < _edge.Length; k++)
        {
            (Point2 a, Point2 b) = (_edge[k], _edge[(k + 1) % _edge.Length]);
            inside ^= (a.Y > at.Y) != (b.Y > at.Y) && at.X < a.X + ((at.Y - a.Y) / (b.Y - a.Y) * (b.X - a.X));
            Point2 side = b - a;
            double share = side.Length > 0 ? Math.Clamp(Point2.Dot(at - a, side) / Point2.Dot(side, side), 0, 1) : 0;
            if (Point2.Distance(at, a + (share * side)) < radius)
            {
                return false;
            }
        }

        return inside;
    }

    private void Centre(string? centre)
    {
        _centre = centre is not null ? Point2.Origin
            : new Point2((_edge.Min(p => p.X) + _edge.Max(p => p.X)) / 2, (_edge.Min(p => p.Y) + _edge.Max(p => p.Y)) / 2);
        if (centre is not null)
        {
            _lines.Add($"  centre: {centre}");
        }
    }

    private bool Once(int times) => _dice.Next(times) == 0;

    private T Pick<T>(params T[] from) => from[_dice.Next(from.Length)];

    private double Tenths(double least, double most) => Math.Round(least + ((most - least) * _dice.NextDouble()), 1);

    private static double Cos(double degrees) => Angle.FromDegrees(degrees).Cos;

    private static double Sin(double degrees) => Angle.FromDegrees(degrees).Sin;

    private static string Mm(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
