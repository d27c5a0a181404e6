using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Forms;

/// <summary>A whole board file as said.</summary>
internal sealed record ParsedFile(
    Parsed<string> Name,
    Parsed<string> Revision,
    Parsed<Angle> Up,
    Parsed<ParsedBoard> Board,
    Parsed<ParsedHousing> Housing,
    Parsed<ParsedPower> Power,
    Parsed<ParsedPrint> Print,
    Parsed<ParsedUse> Use,
    Parsed<ImmutableArray<AcceptedRule>> Accept,
    MappingNode Node);

/// <summary>Supply and brightness as said.</summary>
internal sealed record ParsedPower(Parsed<ParsedSupply> Supply, Parsed<double> Brightness, Parsed<bool> Capped, Parsed<double> Duty);

/// <summary>A supply, by profile or by numbers.</summary>
internal readonly record struct ParsedSupply(string Name, double Volts, double Amps);

/// <summary>Printer and filaments as said.</summary>
internal sealed record ParsedPrint(
    Parsed<PrinterProfile> Printer, Parsed<FilamentProfile> Shell, Parsed<FilamentProfile> Diffuser, Parsed<FilamentProfile> Baffle);

/// <summary>Use as said.</summary>
internal sealed record ParsedUse(Parsed<UseOrientation> Orientation, Parsed<ParsedAmbient> Ambient, Parsed<HeatProfile> Air);

/// <summary>Surrounding air as said, degrees Celsius.</summary>
internal readonly record struct ParsedAmbient(double Coolest, double Warmest);

/// <summary>The whole file.</summary>
internal static class BoardFileForm
{
    /// <summary>What the first key of a board file says.</summary>
    public const string Format = "shellforge/1";

    private static readonly Form<ParsedSupply> OwnSupply = new("a supply", keys =>
    {
        FormKey<double> volts = keys.Required("volts", new NumberKind("a voltage in V", 1, 1000), "Volts.");
        FormKey<double> amps = keys.Required("amps", new NumberKind("a current in A", 0.01, 100), "Amperes in continuous use.");
        return values => new ParsedSupply(
            $"{NumberText.Written(values.Get(volts).Value)} V, {NumberText.Written(values.Get(amps).Value)} A",
            values.Get(volts).Value,
            values.Get(amps).Value);
    });

    private static readonly Kind<ParsedSupply> Supply = new ChoiceKind<ParsedSupply>(
        OwnSupply,
        new MappedKind<SupplyProfile, ParsedSupply>(
            new ProfileKind<SupplyProfile>("a supply", l => l.Supplies), s => new ParsedSupply(s.Name, s.Volts, s.Amps)));

    private static readonly Form<ParsedPower> Power = new("the power", keys =>
    {
        FormKey<ParsedSupply> supply = keys.Defaulted("supply", Supply, "A supply by name, or {volts, amps}.", "usb-default");

        // Comfortable to look at, and within a USB port for most rings. Source: typical.
        FormKey<double> brightness = keys.Defaulted("brightness", new NumberKind("a share of full white", 0.01, 1),
            "Planned share of full white, 0 to 1.", "0.2");
        FormKey<bool> capped = keys.Defaulted("capped", BoardKinds.Flag, "Whether the firmware never goes above it.", "false");
        FormKey<double> duty = keys.Defaulted("duty", new NumberKind("a share of time", 0.01, 1),
            "Share of time that LEDs are lit over an animation.", "1");
        return values => new ParsedPower(values.Get(supply), values.Get(brightness), values.Get(capped), values.Get(duty));
    }, buildsIncomplete: true);

    private static readonly Form<ParsedPrint> Print = new("the print", keys =>
    {
        var filament = new ProfileKind<FilamentProfile>("a filament", l => l.Filaments);
        FormKey<PrinterProfile> printer = keys.Defaulted("printer", new ProfileKind<PrinterProfile>("a printer", l => l.Printers),
            "Printer.", "fdm-0.4");
        FormKey<FilamentProfile> shell = keys.Defaulted("shell", filament, "Filament of tub and cover.", "petg-black");
        FormKey<FilamentProfile> diffuser = keys.Defaulted("diffuser", filament, "Filament of the diffuser.", "petg-white");
        FormKey<FilamentProfile> baffle = keys.Optional("baffle", filament, "Filament of the baffle.", "by look");
        return values => new ParsedPrint(values.Get(printer), values.Get(shell), values.Get(diffuser), values.Get(baffle));
    }, buildsIncomplete: true);

    private static readonly Kind<double> Temperature = new NumberKind("an air temperature in degrees C", -30, 80);

    private static readonly Kind<ParsedAmbient> Ambient = new ChoiceKind<ParsedAmbient>(
        new MappedKind<ImmutableArray<double>, ParsedAmbient>(
            new TupleKind("a range [coolest, warmest] in degrees C", 2, Temperature, Temperature),
            ends => new ParsedAmbient(ends[0], ends[1])),
        new MappedKind<double, ParsedAmbient>(Temperature, t => new ParsedAmbient(t, t)));

    private static readonly Form<ParsedUse> Use = new("the use", keys =>
    {
        FormKey<UseOrientation> orientation = keys.Defaulted(
            "orientation",
            new WordKind<UseOrientation>(("wall", UseOrientation.Wall), ("table", UseOrientation.Table),
                ("hanging", UseOrientation.Hanging)), "How it stands in the room.", "wall");

        // Source: sealed-box model, ambient 20 to 40.
        FormKey<ParsedAmbient> ambient = keys.Defaulted("ambient", Ambient,
            "Warmest surrounding air, or [coolest, warmest], degrees C.", "30");
        FormKey<HeatProfile> air = keys.Defaulted("air", new ProfileKind<HeatProfile>("a set of coefficients of heat", l => l.Heat),
            "How heat flows: coefficients by name.", "still-air");
        return values => new ParsedUse(values.Get(orientation), values.Get(ambient), values.Get(air));
    }, buildsIncomplete: true);

    private static readonly Form<AcceptedRule> Accepted = new("an accepted rule", keys =>
    {
        FormKey<string> rule = keys.Required("rule", BoardKinds.Name, "Name of the rule, as findings show it.");
        FormKey<string> why = keys.Required("why", new TextKind("a reason", 300), "Why it is accepted.");
        return values => new AcceptedRule(values.Get(rule).Value, values.Get(why).Value);
    });

    /// <summary>The whole file.</summary>
    public static Form<ParsedFile> Form { get; } = new("the board file", keys =>
    {
        keys.Required("format", new WordKind<bool>((Format, true)), "Format and version of the file.");
        FormKey<string> name = keys.Required("name", new TextKind("a name", 60), "What the housing is called.");
        FormKey<string> revision = keys.Optional("revision", new TextKind("a mark", 24, mayBeEmpty: true, asciiOnly: true),
            "Revision or variant mark, set inside every part.", "none");
        FormKey<Angle> up = keys.Defaulted("up", BoardKinds.Angle, "The board angle that points up in use.", "90");
        FormKey<ParsedBoard> board = keys.Required("board", BoardForm.Form, "The populated board.");
        FormKey<ParsedHousing> housing = keys.Required("housing", HousingForm.Form, "What is wanted of the housing.");
        FormKey<ParsedPower> power = keys.Defaulted("power", Power, "Supply and brightness.");
        FormKey<ParsedPrint> print = keys.Defaulted("print", Print, "Printer and filaments.");
        FormKey<ParsedUse> use = keys.Defaulted("use", Use, "Where the finished thing lives.");
        FormKey<ImmutableArray<AcceptedRule>> accept = keys.Optional(
            "accept", new ListKind<AcceptedRule>("accepted rules", Accepted, 0, 100), "Findings that are accepted, each with its reason.");
        return values => new ParsedFile(
            values.Get(name),
            values.Get(revision),
            values.Get(up),
            values.Get(board),
            values.Get(housing),
            values.Get(power),
            values.Get(print),
            values.Get(use),
            values.Get(accept),
            values.Node);
    }, buildsIncomplete: true);
}
