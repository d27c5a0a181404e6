using System.Globalization;
using System.Text;

namespace ShellForge.Formats.Gcode;

/// <summary>
/// What slicers write in comments. They agree on little: the same figure stands under several names, and after a colon, an equals sign or a
/// comma.
/// </summary>
internal sealed class GcodeComments
{
    // A figure's comment is short; thumbnails and custom code are not looked at.
    private const int LongestLooked = 512;
    private const string RepeatedLength = "filament used";
    private readonly Dictionary<string, string> _said = new(StringComparer.Ordinal);
    private readonly List<double> _repeatedLengths = [];

    /// <summary>Whether kinds of lines were told apart.</summary>
    public bool TellsKinds { get; private set; }

    /// <summary>Whether what is laid now is support for a part, a raft among it.</summary>
    public bool IsSupport { get; private set; }

    /// <summary>Whether what is laid now belongs to a part.</summary>
    public bool IsOfPart { get; private set; } = true;

    /// <summary>The object that is laid now; empty where none was told.</summary>
    public string Object { get; set; } = "";

    /// <summary>Takes a comment without its semicolon.</summary>
    public void Take(ReadOnlySpan<byte> comment)
    {
        if (comment.Length > LongestLooked)
        {
            return;
        }

        if (comment.StartsWith("TYPE:"u8) || comment.StartsWith("FEATURE:"u8) || comment.StartsWith("feature "u8))
        {
            int head = comment.IndexOfAny((byte)':', (byte)' ') + 1;
            TakeKind(Text(comment[head..]).ToLowerInvariant());
        }
        else if (!TakeObject(comment) && comment.IndexOfAny((byte)':', (byte)'=', (byte)',') is > 0 and var at)
        {
            TakeFigure(comment, at);
        }
    }

    // Asked for with every move, so it is looked at but once.
    private void TakeKind(string kind)
    {
        bool Names(string word) => kind.Contains(word, StringComparison.Ordinal);
        TellsKinds = true;
        IsSupport = Array.Exists(Support, Names);
        IsOfPart = !IsSupport && !Array.Exists(Aside, Names);
    }

    // "printing object NAME id:0 copy 0", "stop printing object ...", "MESH:NAME".
    private bool TakeObject(ReadOnlySpan<byte> comment)
    {
        if (comment.StartsWith("printing object "u8))
        {
            string name = Text(comment["printing object ".Length..]);
            int end = name.LastIndexOf(" id:", StringComparison.Ordinal);
            Object = end < 0 ? name : name[..end];
            return true;
        }

        if (comment.StartsWith("stop printing object"u8))
        {
            Object = "";
            return true;
        }

        if (comment.StartsWith("MESH:"u8))
        {
            string name = Text(comment["MESH:".Length..]);
            Object = name == "NONMESH" ? "" : name;
            return true;
        }

        return false;
    }

    private void TakeFigure(ReadOnlySpan<byte> comment, int at)
    {
        const int longestName = 48;
        if (at > longestName)
        {
            return;
        }

        string name = Text(comment[..at]).ToLowerInvariant();
        if (!Known.Contains(name))
        {
            return;
        }

        string value = Text(comment[(at + 1)..]);
        if (name == "model printing time" && value.IndexOf("total estimated time:", StringComparison.Ordinal) is >= 0 and var total)
        {
            value = value[(total + "total estimated time:".Length)..];
        }

        // One line for each filament, one below the other.
        if (name == RepeatedLength && _repeatedLengths.Count < GcodeFile.MostTools)
        {
            _repeatedLengths.AddRange(value.Split(',').Select(Millimetres).OfType<double>().Take(GcodeFile.MostTools));
        }

        _said.TryAdd(name, value);
    }

    /// <summary>Time, s.</summary>
    public double? Seconds => First(TimeNames, Duration);

    /// <summary>Length of filament by tool, mm; empty where none is said.</summary>
    public double[] Millimetres() => Said(LengthNames) is { } text ? Numbers(text)
        : _repeatedLengths.Count > 0 ? [.. _repeatedLengths]
        : Said(OneLengthNames) is { } length && Millimetres(length) is { } one ? [one] : [];

    /// <summary>Mass of filament by tool, g; empty where none is said.</summary>
    public double[] Grams() => Said(MassNames) is { } text && Numbers(text) is var grams && grams.Sum() > 0 ? grams : [];

    /// <summary>Diameter of the filament, mm.</summary>
    public double? Diameter => First(DiameterNames, Positive);

    /// <summary>Nozzle, mm.</summary>
    public double? Nozzle => First(NozzleNames, Positive);

    /// <summary>Lines round every layer.</summary>
    public int? Walls => Count(WallNames);

    /// <summary>Solid layers, the smaller of those below and above.</summary>
    public int? Skins => Count(BottomNames) is { } below && Count(TopNames) is { } above ? Math.Min(below, above) : null;

    /// <summary>Share of plastic in the fill, 0 to 1.</summary>
    public double? Infill => First(InfillNames, Share);

    /// <summary>Temperature of the first layer, degrees Celsius.</summary>
    public double? Celsius => First(CelsiusNames, Positive);

    private static string[] Support { get; } = ["support", "raft"];

    private static string[] Aside { get; } = ["skirt", "brim", "custom", "tower", "pillar", "purge", "ooze", "priming", "wipe"];

    private static string[] TimeNames { get; } =
    [
        "estimated printing time (normal mode)", "estimated printing time", "total estimated time", "model printing time", "time",
        "print time", "print.time", "build time",
    ];

    private static string[] LengthNames { get; } = ["filament used [mm]", "total filament length [mm]", "material#1 used"];

    private static string[] OneLengthNames { get; } = ["filament length"];

    private static string[] MassNames { get; } =
        ["filament used [g]", "total filament weight [g]", "total filament used [g]", "plastic weight", "filament weight"];

    private static string[] DiameterNames { get; } = ["filament_diameter", "filamentdiameters"];

    private static string[] NozzleNames { get; } = ["nozzle_diameter", "extruder_train.0.nozzle.diameter", "extruderdiameter"];

    private static string[] WallNames { get; } = ["perimeters", "wall_loops", "perimeteroutlines"];

    private static string[] BottomNames { get; } = ["bottom_solid_layers", "bottom_shell_layers", "bottomsolidlayers"];

    private static string[] TopNames { get; } = ["top_solid_layers", "top_shell_layers", "topsolidlayers"];

    private static string[] InfillNames { get; } = ["fill_density", "sparse_infill_density", "infillpercentage"];

    private static string[] CelsiusNames { get; } = ["first_layer_temperature", "nozzle_temperature_initial_layer"];

    // Of the slicer's whole set-up no more is kept.
    private static HashSet<string> Known { get; } = new(
        [
            RepeatedLength, .. TimeNames, .. LengthNames, .. OneLengthNames, .. MassNames, .. DiameterNames, .. NozzleNames, .. WallNames,
            .. BottomNames, .. TopNames, .. InfillNames, .. CelsiusNames,
        ],
        StringComparer.Ordinal);

    private string? Said(string[] names) => names.Select(name => _said.GetValueOrDefault(name)).FirstOrDefault(text => text is not null);

    private T? First<T>(string[] names, Func<string, T?> read)
        where T : struct => Said(names) is { } text ? read(text) : null;

    private int? Count(string[] names) => First<double>(names, Leading) is { } value && value < int.MaxValue ? (int)value : null;

    private static double? Positive(string text) => Leading(text) is > 0 and var value ? value : null;

    // "20%", "20" and "0.2" are the same share.
    private static double? Share(string text) => Leading(text) is { } value
        ? text.Contains('%', StringComparison.Ordinal) || value > 1 ? value / 100 : value
        : null;

    private static double[] Numbers(string text) => [.. text.Split(',', ';').Select(Leading).OfType<double>().Take(GcodeFile.MostTools)];

    // "2.34m", "7340.3mm (17.7cm3)", "7340.3 mm (7.34 m)"; a bare number counts metres where the others do.
    private static double? Millimetres(string text) => Leading(text) is { } value
        ? text.Contains("mm", StringComparison.Ordinal) ? value : 1000 * value
        : null;

    // "2h 5m 29s", "1d 2h", "2 hours 5 minutes", or seconds as a bare number.
    private static double? Duration(string text)
    {
        double seconds = 0;
        bool any = false;
        for (int at = 0; at < text.Length;)
        {
            int end = NumberEnd(text, at);
            if (end == at)
            {
                at++;
                continue;
            }

            int unit = end;
            while (unit < text.Length && text[unit] == ' ')
            {
                unit++;
            }

            double value = double.TryParse(text.AsSpan(at, end - at), NumberStyles.Float, CultureInfo.InvariantCulture, out double read)
                ? read : 0;
            seconds += value * (unit < text.Length ? text[unit] switch { 'd' => 86400, 'h' => 3600, 'm' => 60, _ => 1 } : 1);
            (any, at) = (true, end);
        }

        return any && double.IsFinite(seconds) ? seconds : null;
    }

    private static double? Leading(string text)
    {
        string bare = text.Trim(' ', '"', '[');
        return double.TryParse(bare.AsSpan(0, NumberEnd(bare, 0)), NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
            && double.IsFinite(value) && value >= 0 ? value : null;
    }

    private static int NumberEnd(string text, int from)
    {
        int end = from;
        while (end < text.Length && (char.IsAsciiDigit(text[end]) || text[end] == '.'))
        {
            end++;
        }

        return end;
    }

    private static string Text(ReadOnlySpan<byte> bytes) => Encoding.UTF8.GetString(bytes).Trim();
}
