using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Gcode;

/// <summary>Follows the moves of a printer and measures what it lays down.</summary>
internal sealed class GcodeMoves(GcodeComments comments)
{
    private const double InchMillimetres = 25.4;
    private const double Microns = 1000;
    private const int MostHeights = 100_000;
    private const int MostObjects = 1000;
    private const int LongestName = 80;

    // Shorter than a printer steps, mm.
    private const double Standstill = 1e-6;

    // Below this the nozzle cools down, degrees Celsius.
    private const double Cold = 100;

    // An arc is followed in steps of so much, degrees: its middle line is off by a thousandth of its radius at most.
    private const double ArcStep = 5;

    private readonly Dictionary<string, LaidObject> _objects = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _named = new(StringComparer.Ordinal);
    private readonly SortedDictionary<long, double> _heights = [];
    private readonly double[] _laidByTool = new double[GcodeFile.MostTools];
    private readonly List<int> _tools = [];
    private Point2 _at;
    private double _z;
    private double _e;
    private double _unit = 1;
    private bool _relative;
    private bool _relativeE;
    private double? _volumetricDiameter;
    private int _tool;
    private int _lastTool = -1;
    private int _changes;
    private double? _celsius;
    private double? _firstCelsius;
    private long? _supportLine;
    private double _supportZ;
    private double _supportLength;
    private bool _kindsBegan;

    /// <summary>Whether no line of a part was laid.</summary>
    public bool IsEmpty => _objects.Count == 0;

    /// <summary>Takes a command.</summary>
    /// <returns>What is wrong with it; null when it was taken or means nothing here.</returns>
    public string? Take(ReadOnlySpan<byte> words, long line)
    {
        if (words.IsEmpty)
        {
            return null;
        }

        // Words may follow without a blank: G1X10.
        ReadOnlySpan<byte> first = GcodeWords.First(words);
        ReadOnlySpan<byte> number = first[1..(1 + GcodeWords.Digits(first[1..]))];
        switch (first[0])
        {
            case (byte)'G' or (byte)'g':
                return TakeMove(number, words, line);
            case (byte)'M' or (byte)'m' when number.Length > 0:
                TakeSetting(number, words);
                return null;
            case (byte)'T' when number.Length > 0:
                TakeTool(number);
                return null;
            default:
                TakeObject(first, words);
                return null;
        }
    }

    /// <summary>What was measured, with what the comments say.</summary>
    public GcodeFile File()
    {
        long[] heights = [.. _heights.Keys];
        long step = heights.Length < 2 ? 0
            : heights.Zip(heights.Skip(1), (below, above) => above - below).GroupBy(each => each).OrderByDescending(each => each.Count())
                .ThenBy(each => each.Key).First().Key;
        double[] said = comments.Millimetres();
        double diameter = comments.Diameter ?? _volumetricDiameter ?? GcodeFile.UsualDiameter;
        double section = Math.PI * diameter * diameter / 4;
        int most = _tools.Max();
        return new GcodeFile
        {
            Seconds = comments.Seconds,
            FilamentMillimetres = said.Sum() > 0 ? [.. said] : [.. _laidByTool.Take(most + 1)],
            FilamentGrams = [.. comments.Grams()],
            FilamentDiameter = diameter,
            LayerHeight = step / Microns,
            FirstLayer = heights[0] / Microns,
            Top = heights[^1] / Microns,
            Layers = heights.Length,
            SecondLayerArea = heights.Length < 2 ? 0 : _heights[heights[1]] * section * Microns / (heights[1] - heights[0]),
            ToolChanges = _changes,
            Tools = [.. _tools],
            TellsKinds = comments.TellsKinds,
            SupportLine = _supportLine,
            SupportZ = _supportZ,
            SupportLength = _supportLength,
            FirstLayerCelsius = _firstCelsius ?? comments.Celsius,
            Walls = comments.Walls,
            Infill = comments.Infill,
            SkinLayers = comments.Skins,
            Nozzle = comments.Nozzle,
            Objects = [.. _objects.Select(each => each.Value.Told(each.Key)).OrderBy(each => each.Name, StringComparer.Ordinal)],
        };
    }

    private string? TakeMove(ReadOnlySpan<byte> number, ReadOnlySpan<byte> words, long line)
    {
        switch (number)
        {
            case [(byte)'0' or (byte)'1' or (byte)'2' or (byte)'3']:
                return Move(number[0], words, line);
            case [(byte)'2', (byte)'0']:
                _unit = InchMillimetres;
                return null;
            case [(byte)'2', (byte)'1']:
                _unit = 1;
                return null;
            case [(byte)'2', (byte)'8']:
                _at = Point2.Origin;
                return null;
            case [(byte)'9', (byte)'0']:
                _relative = false;
                return null;
            case [(byte)'9', (byte)'1']:
                _relative = true;
                return null;
            case [(byte)'9', (byte)'2']:
                return SetPlace(words);
            default:
                return null;
        }
    }

    private string? SetPlace(ReadOnlySpan<byte> words)
    {
        if (Read(words, out Words set) is { } wrong)
        {
            return wrong;
        }

        _at = new Point2(set.X * _unit ?? _at.X, set.Y * _unit ?? _at.Y);
        _z = set.Z * _unit ?? _z;
        _e = set.E * _unit ?? _e;
        return null;
    }

    private void TakeSetting(ReadOnlySpan<byte> number, ReadOnlySpan<byte> words)
    {
        double? value = null;
        switch (number)
        {
            case [(byte)'8', (byte)'2']:
                _relativeE = false;
                break;
            case [(byte)'8', (byte)'3']:
                _relativeE = true;
                break;
            case [(byte)'1', (byte)'0', (byte)'4' or (byte)'9']:
                if (GcodeWords.Number(words, 'S', ref value) && GcodeWords.Number(words, 'R', ref value) && value > Cold)
                {
                    _celsius = value;
                }

                break;
            case [(byte)'2', (byte)'0', (byte)'0']:
                _volumetricDiameter = GcodeWords.Number(words, 'D', ref value) && value > 0 ? value : null;
                break;
            case [(byte)'4', (byte)'8', (byte)'6']:
                TakeNumberedObject(words);
                break;
        }
    }

    private void TakeTool(ReadOnlySpan<byte> number)
    {
        // Printers use large numbers for what is no tool of theirs.
        if (int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out int tool) && tool < GcodeFile.MostTools)
        {
            _tool = tool;
        }
    }

    // EXCLUDE_OBJECT_START NAME=tub, EXCLUDE_OBJECT_END
    private void TakeObject(ReadOnlySpan<byte> command, ReadOnlySpan<byte> words)
    {
        if (command.SequenceEqual("EXCLUDE_OBJECT_START"u8) && words.IndexOf("NAME="u8) is >= 0 and var at)
        {
            comments.Object = Encoding.UTF8.GetString(words[(at + "NAME=".Length)..]).Trim();
        }
        else if (command.SequenceEqual("EXCLUDE_OBJECT_END"u8))
        {
            comments.Object = "";
        }
    }

    // M486 S0 A"tub" names an object, M486 S0 begins it, M486 S-1 ends it.
    private void TakeNumberedObject(ReadOnlySpan<byte> words)
    {
        double? number = null;
        int name = words.IndexOf(" A"u8);
        if (!GcodeWords.Number(name < 0 ? words : words[..name], 'S', ref number))
        {
            return;
        }

        string id = number is { } given ? $"object {given.ToString(CultureInfo.InvariantCulture)}" : comments.Object;
        if (name >= 0 && _named.Count < MostObjects)
        {
            _named[id] = Encoding.UTF8.GetString(words[(name + 2)..]).Trim(' ', '"');
        }

        comments.Object = number is < 0 ? "" : id;
    }

    private string? Move(byte kind, ReadOnlySpan<byte> words, long line)
    {
        if (Read(words, out Words to) is { } wrong)
        {
            return wrong;
        }

        Point2 from = _at;
        double start = _relative ? 1 : 0;
        _at = new Point2(
            to.X is { } x ? (start * _at.X) + (x * _unit) : _at.X,
            to.Y is { } y ? (start * _at.Y) + (y * _unit) : _at.Y);
        _z = to.Z is { } z ? (start * _z) + (z * _unit) : _z;
        double fed = to.E is { } e ? _relativeE ? e * _unit : (e * _unit) - _e : 0;
        _e = to.E is null ? _e : _relativeE ? _e + fed : to.E.Value * _unit;
        if (fed > 0 && Point2.Distance(from, _at) > Standstill)
        {
            return Lay(from, kind is (byte)'2' or (byte)'3' ? Arc(from, to, kind == (byte)'2') : [], fed, line);
        }

        return null;
    }

    private string? Lay(Point2 from, IEnumerable<Point2> between, double fed, long line)
    {
        double filament = _volumetricDiameter is { } diameter ? fed * 4 / (Math.PI * diameter * diameter) : fed;
        _laidByTool[_tool] += filament;
        if (_lastTool != _tool)
        {
            _changes += _lastTool < 0 ? 0 : 1;
            _lastTool = _tool;
            if (!_tools.Contains(_tool))
            {
                _tools.Add(_tool);
            }
        }

        if (comments.IsSupport)
        {
            (_supportLine, _supportZ) = _supportLine is null ? (line, _z) : (_supportLine, _supportZ);
            _supportLength += Point2.Distance(from, _at);
        }

        if (!comments.IsOfPart)
        {
            return null;
        }

        // What was laid before the first kind is told gets the plastic flowing, and belongs to no part.
        if (comments.TellsKinds && !_kindsBegan)
        {
            _kindsBegan = true;
            _objects.Clear();
            _heights.Clear();
            _firstCelsius = null;
        }

        _firstCelsius ??= _celsius;
        long height = (long)Math.Round(_z * Microns);
        _heights[height] = _heights.GetValueOrDefault(height) + filament;
        if (_heights.Count > MostHeights)
        {
            return "the print has more layers than any printer builds";
        }

        string name = _named.GetValueOrDefault(comments.Object, comments.Object);
        if (!_objects.TryGetValue(name, out LaidObject? laid))
        {
            if (_objects.Count == MostObjects)
            {
                return $"the plate has more than {MostObjects} objects";
            }

            _objects[name] = laid = new LaidObject();
        }

        laid.Lay(from, height / Microns);
        foreach (Point2 point in between)
        {
            laid.Lay(point, height / Microns);
        }

        laid.Lay(_at, height / Microns);
        return null;
    }

    // Points on an arc from a place to the present one; none where the words name no centre.
    private IEnumerable<Point2> Arc(Point2 from, Words to, bool clockwise)
    {
        if (to.I is null && to.J is null)
        {
            return [];
        }

        Point2 centre = from + new Point2((to.I ?? 0) * _unit, (to.J ?? 0) * _unit);
        double turn = (Angle.Of(_at - centre) - Angle.Of(from - centre)).Normalized.Degrees;
        turn = clockwise ? turn - 360 : turn;
        int steps = (int)Math.Ceiling(Math.Abs(turn) / ArcStep);
        return Enumerable.Range(1, Math.Max(0, steps - 1))
            .Select(i => centre + (from - centre).Turned(Angle.FromDegrees(turn * i / steps)));
    }

    private static string? Read(ReadOnlySpan<byte> words, out Words read)
    {
        (double? x, double? y, double? z, double? e, double? i, double? j) = (null, null, null, null, null, null);
        bool whole = GcodeWords.Number(words, 'X', ref x) && GcodeWords.Number(words, 'Y', ref y) && GcodeWords.Number(words, 'Z', ref z)
            && GcodeWords.Number(words, 'E', ref e) && GcodeWords.Number(words, 'I', ref i) && GcodeWords.Number(words, 'J', ref j);
        read = new Words(x, y, z, e, i, j);
        return whole ? null : "a letter has no number after it, or one beyond the reach of any printer";
    }

    private readonly record struct Words(double? X, double? Y, double? Z, double? E, double? I, double? J);

    // An object as it grows. Its first layer is left out of the hull: brim, elephant's foot and what slicers do against it lie there.
    private sealed class LaidObject
    {
        private readonly LaidHull _above = new();
        private readonly LaidHull _lowest = new();
        private double _bottom = double.PositiveInfinity;
        private double _top = double.NegativeInfinity;

        public void Lay(Point2 point, double z)
        {
            (_bottom, _top) = (Math.Min(_bottom, z), Math.Max(_top, z));
            (z > _bottom ? _above : _lowest).Add(point);
        }

        public GcodeObject Told(string name)
        {
            ImmutableArray<Point2> above = _above.Corners();
            return new GcodeObject(ForeignText.Printable(name, LongestName), above.IsEmpty ? _lowest.Corners() : above, _bottom, _top);
        }
    }
}
