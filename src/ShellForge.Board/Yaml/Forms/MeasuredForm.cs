using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.Forms;

/// <summary>When and on which batch something was measured.</summary>
internal readonly record struct ParsedBatch(Parsed<string> Date, Parsed<string> Batch);

/// <summary>What calipers said of this batch of boards.</summary>
internal sealed record ParsedMeasured(
    Parsed<double> Outer, Parsed<double> Bore, Parsed<double> Thickness, Parsed<double> TabStub, Parsed<double> LedHeight,
    ParsedBatch Batch);

/// <summary>Two sizes of a bought thing: across and along, or wide and high.</summary>
internal sealed record ParsedSizes(Parsed<double> First, Parsed<double> Second);

/// <summary>What calipers said of the bought things of this batch.</summary>
internal sealed record ParsedMeasuredThings(
    Parsed<ParsedSizes> Insert, Parsed<ParsedSizes> Magnet, Parsed<ParsedPlug> Plug, Parsed<ParsedBatterySizes> Battery,
    ParsedBatch Batch);

/// <summary>What calipers said of a cell or pouch; a cylinder has no width.</summary>
internal sealed record ParsedBatterySizes(Parsed<double> Diameter, Parsed<double> Thickness, Parsed<double> Width, Parsed<double> Length);

/// <summary>What calipers said of a plug's body.</summary>
internal sealed record ParsedPlug(Parsed<double> Width, Parsed<double> Height, Parsed<double> Corner);

/// <summary>The mappings at `measured:`.</summary>
internal static class MeasuredForm
{
    // Above what takes it: forms are made in the order in which they stand.
    private static Form<ParsedPlug> Plug { get; } = new("a measured plug", keys =>
    {
        FormKey<double> width = keys.Optional("width", BoardKinds.Length("a measured size", 1, 60), "Width of its body along the board.");
        FormKey<double> height = keys.Optional("height", BoardKinds.Length("a measured size", 1, 60), "Height of its body.");
        FormKey<double> corner = keys.Optional("corner-radius", BoardKinds.Length("a corner radius", 0, 30),
            "Radius of its corners, seen from its front; 0 for square ones.");
        return values => new ParsedPlug(values.Get(width), values.Get(height), values.Get(corner));
    }, buildsIncomplete: true);

    private static Form<ParsedBatterySizes> Battery { get; } = new("a measured battery", keys =>
    {
        FormKey<double> diameter = keys.Optional("diameter", BoardKinds.Length("a measured size", 3, 50), "Diameter of a cylinder.");
        FormKey<double> thickness = keys.Optional("thickness", BoardKinds.Length("a measured size", 1, 40),
            "Thickness of a pouch, charged and new.");
        FormKey<double> width = keys.Optional("width", BoardKinds.Length("a measured size", 5, 150), "Width of a pouch.");
        FormKey<double> length = keys.Optional("length", BoardKinds.Length("a measured size", 5, 200),
            "Length over everything but the wires.");
        keys.AtMostOneOf(diameter, thickness);
        keys.AtMostOneOf(diameter, width);
        return values => new ParsedBatterySizes(values.Get(diameter), values.Get(thickness), values.Get(width), values.Get(length));
    }, buildsIncomplete: true);

    /// <summary>Of the board.</summary>
    public static Form<ParsedMeasured> Board { get; } = new("measured sizes of the board", keys =>
    {
        FormKey<double> outer = keys.Optional("outer", BoardKinds.Length("an outer diameter", 8, BoardKinds.LargestBoard),
            "Outer diameter of a disc or ring.");
        FormKey<double> bore = keys.Optional("bore", BoardKinds.Length("a bore diameter", 1, BoardKinds.LargestBoard), "Bore of a ring.");
        FormKey<double> thickness = keys.Optional("thickness", BoardKinds.Thickness, "Thickness.");
        FormKey<double> stub = keys.Optional("tab-stub", BoardKinds.Length("a stub's length", 0, 5),
            "Longest stub left by break-off tabs.");
        FormKey<double> led = keys.Optional("led-height", BoardKinds.Length("an LED's height", 0.2, 12),
            "Height of the LEDs' bodies above the board.");
        (FormKey<string> date, FormKey<string> batch) = WhenAndWhich(keys);
        return values => new ParsedMeasured(
            values.Get(outer), values.Get(bore), values.Get(thickness), values.Get(stub), values.Get(led),
            new ParsedBatch(values.Get(date), values.Get(batch)));
    }, buildsIncomplete: true);

    /// <summary>Of what is bought for the housing.</summary>
    public static Form<ParsedMeasuredThings> Things { get; } = new("measured sizes of what is bought", keys =>
    {
        FormKey<ParsedSizes> insert = keys.Optional("insert", Pair("a measured insert",
            ("outer", "Diameter over the knurl.", 2, 15), ("length", "Length.", 1, 30)), "The insert's body.");
        FormKey<ParsedSizes> magnet = keys.Optional("magnet", Pair("a measured magnet",
            ("diameter", "Diameter.", 1, 30), ("height", "Height.", 0.5, 20)), "The magnets of 'mount: magnets'.");
        FormKey<ParsedPlug> plug = keys.Optional("plug", Plug,
            "The body of the plug that goes into the part at 'cable:'.");
        FormKey<ParsedBatterySizes> battery = keys.Optional("battery", Battery, "The cell or pouch at 'battery:'.");
        (FormKey<string> date, FormKey<string> batch) = WhenAndWhich(keys);
        return values => new ParsedMeasuredThings(
            values.Get(insert), values.Get(magnet), values.Get(plug), values.Get(battery),
            new ParsedBatch(values.Get(date), values.Get(batch)));
    }, buildsIncomplete: true);

    private static Form<ParsedSizes> Pair(
        string what, (string Key, string Help, double Least, double Most) one,
        (string Key, string Help, double Least, double Most) other) =>
        new(what, keys =>
        {
            FormKey<double> first = keys.Optional(one.Key, BoardKinds.Length("a measured size", one.Least, one.Most), one.Help);
            FormKey<double> second = keys.Optional(other.Key, BoardKinds.Length("a measured size", other.Least, other.Most), other.Help);
            return values => new ParsedSizes(values.Get(first), values.Get(second));
        }, buildsIncomplete: true);

    private static (FormKey<string> Date, FormKey<string> Batch) WhenAndWhich(FormKeys keys) => (
        keys.Optional("date", new TextKind("a date such as 2026-11-29", 10, asciiOnly: true), "When it was measured: year-month-day."),
        keys.Optional("batch", BoardKinds.Name, "Which batch was measured."));
}
