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
    private const int MostTools = 64;
    private readonly Dictionary<string, string> _said = new(StringComparer.Ordinal);
    private readonly List<double> _repeatedMetres = [];

    /// <summary>The kind of line that is laid now; empty where none was told.</summary>
    public string Kind { get; private set; } = "";

    /// <summary>Whether a kind was told.</summary>
    public bool TellsKinds { get; private set; }

    /// <summary>The object that is laid now; empty where none was told.</summary>
    public string Object { get; set; } = "";

    /// <summary>Whether what is laid now is support for a part, a raft among it.</summary>
    public bool IsSupport => Kind.Contains("support", StringComparison.Ordinal) || Kind.Contains("raft", StringComparison.Ordinal);

    /// <summary>Whether what is laid now belongs to a part.</summary>
    public bool IsOfPart => !IsSupport && !Aside.Any(word => Kind.Contains(word, StringComparison.Ordinal));

    private static string[] Aside { get; } = ["skirt", "brim", "custom", "tower", "pillar", "purge", "ooze", "priming", "wipe"];

    /// <summary>Takes a comment without its semicolon.</summary>
    public void Take(ReadOnlySpan<byte> comment)
    {
        if (comment.Length > LongestLooked)
        {
            return;
        }

        if (Started(comment, "TYPE:"u8) || Started(comment, "FEATURE:"u8) || Started(comment, "feature "u8))
        {
            int head = comment.IndexOfAny((byte)':', (byte)' ') + 1;
            (Kind, TellsKinds) = (Text(comment[head..]).ToLowerInvariant(), true);
        }
        else if (!TakeObject(comment) && comment.IndexOfAny((byte)':', (byte)'=', (byte)',') is > 0 and var at)
        {
            TakeFigure(comment, at);
        }
    }

    // "printing object NAME id:0 copy 0", "stop printing object ...", "MESH:NAME".
    private bool TakeObject(ReadOnlySpan<byte> comment)
    {
        if (Started(comment, "printing object "u8))
        {
            string name = Text(comment["printing object ".Length..]);
            int end = name.LastIndexOf(" id:", StringComparison.Ordinal);
            Object = end < 0 ? name : name[..end];
            return true;
        }

        if (Started(comment, "stop printing object"u8))
        {
            Object = "";
            return true;
        }

        if (Started(comment, "MESH:"u8))
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
        if (name == "filament used" && _repeatedMetres.Count < MostTools)
        {
            _repeatedMetres.AddRange(value.Split(',').Select(Millimetres).OfType<double>().Take(MostTools));
        }

        _said.TryAdd(name, value);
    }

    /// <summary>Time, s.</summary>
    public double? Seconds => First(TimeNames, Duration);

    /// <summary>Length of filament by tool, mm; empty where none is said.</summary>
    public double[] Millimetres() => Said(LengthNames) is { } text ? Numbers(text)
        : _repeatedMetres.Count > 0 ? [.. _repeatedMetres]
        : Said(["filament length"]) is { } length && Millimetres(length) is { } one ? [one] : [];

    /// <summary>Mass of filament by tool, g; empty where none is said.</summary>
    public double[] Grams() => Said(MassNames) is { } text && Numbers(text) is var grams && grams.Sum() > 0 ? grams : [];

    /// <summary>Diameter of the filament, mm.</summary>
    public double? Diameter => First(["filament_diameter", "filamentdiameters"], Positive);

    /// <summary>Nozzle, mm.</summary>
    public double? Nozzle => First(["nozzle_diameter", "extruder_train.0.nozzle.diameter", "extruderdiameter"], Positive);

    /// <summary>Lines round every layer.</summary>
    public int? Walls => Count(["perimeters", "wall_loops", "perimeteroutlines"]);

    /// <summary>Solid layers, the smaller of those below and above.</summary>
    public int? Skins => Count(["bottom_solid_layers", "bottom_shell_layers", "bottomsolidlayers"]) is { } below
        && Count(["top_solid_layers", "top_shell_layers", "topsolidlayers"]) is { } above ? Math.Min(below, above) : null;

    /// <summary>Share of plastic in the fill, 0 to 1.</summary>
    public double? Infill => First(["fill_density", "sparse_infill_density", "infillpercentage"], Share);

    /// <summary>Temperature of the first layer, degrees Celsius.</summary>
    public double? Celsius => First(["first_layer_temperature", "nozzle_temperature_initial_layer"], Positive);

    private static string[] TimeNames { get; } =
    [
        "estimated printing time (normal mode)", "estimated printing time", "total estimated time", "model printing time", "time",
        "print time", "print.time", "build time",
    ];

    private static string[] LengthNames { get; } = ["filament used [mm]", "total filament length [mm]", "material#1 used"];

    private static string[] MassNames { get; } =
        ["filament used [g]", "total filament weight [g]", "total filament used [g]", "plastic weight", "filament weight"];

    private static HashSet<string> Known { get; } = new(
        [
            .. TimeNames, .. LengthNames, .. MassNames, "filament used", "filament length", "filament_diameter", "filamentdiameters",
            "nozzle_diameter", "extruder_train.0.nozzle.diameter", "extruderdiameter", "perimeters", "wall_loops", "perimeteroutlines",
            "bottom_solid_layers", "bottom_shell_layers", "bottomsolidlayers", "top_solid_layers", "top_shell_layers", "topsolidlayers",
            "fill_density", "sparse_infill_density", "infillpercentage", "first_layer_temperature", "nozzle_temperature_initial_layer",
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

    private static double[] Numbers(string text) => [.. text.Split(',', ';').Select(Leading).OfType<double>().Take(MostTools)];

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

    private static bool Started(ReadOnlySpan<byte> comment, ReadOnlySpan<byte> word) => comment.StartsWith(word);

    private static string Text(ReadOnlySpan<byte> bytes) => Encoding.UTF8.GetString(bytes).Trim();
}
