using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.Forms;

/// <summary>A hole, or a pattern of holes, as said.</summary>
internal sealed record ParsedHole(
    ParsedPlacement Place,
    Parsed<double> Diameter,
    Parsed<HolePurpose> For,
    Parsed<ParsedScrew> Screw,
    Parsed<InsertProfile> Insert,
    Parsed<ParsedKeepOut> KeepOut,
    MappingNode Node);

/// <summary>Room free of copper and parts round a hole, per side.</summary>
internal readonly record struct ParsedKeepOut(double? Top, double? Bottom);

/// <summary>An entry of `holes:`.</summary>
internal static class HoleForm
{
    private static readonly Kind<double> KeepOutDiameter = BoardKinds.Length("a keep-out diameter", 1, 60);

    private static readonly Form<ParsedKeepOut> BySide = new("a keep-out by side", keys =>
    {
        FormKey<double> top = keys.Optional("top", KeepOutDiameter, "Diameter on the LED side.");
        FormKey<double> bottom = keys.Optional("bottom", KeepOutDiameter, "Diameter on the back.");
        return values => new ParsedKeepOut(Maybe(values.Get(top)), Maybe(values.Get(bottom)));
    });

    private static readonly Kind<ParsedKeepOut> KeepOut = new ChoiceKind<ParsedKeepOut>(
        BySide, new MappedKind<double, ParsedKeepOut>(KeepOutDiameter, d => new ParsedKeepOut(d, d)));

    /// <summary>The mapping.</summary>
    public static Form<ParsedHole> Form { get; } = new("a hole", keys =>
    {
        var place = new PlacementKeys(keys, needed: true);
        FormKey<double> diameter = keys.Required("diameter", BoardKinds.Length("a hole's diameter", 0.3, 30), "Finished diameter.");
        FormKey<HolePurpose> purpose = keys.Defaulted(
            "for",
            new WordKind<HolePurpose>(("mount", HolePurpose.Mount), ("wire", HolePurpose.Wire), ("tooling", HolePurpose.Tooling),
                ("spacer", HolePurpose.Spacer)),
            "What it is for: mount (a screw into the housing), wire, tooling, or spacer (the second board hangs from it).",
            "mount");
        FormKey<ParsedScrew> screw = keys.Optional("screw", ScrewWordKind.Kind,
            "A screw of its own: a profile, or pan, cap, button or countersunk.", "the housing's");
        FormKey<InsertProfile> insert = keys.Optional("insert", new ProfileKind<InsertProfile>("an insert", l => l.Inserts),
            "An insert of its own.", "the housing's");
        FormKey<ParsedKeepOut> keepOut = keys.Optional("keep-out", KeepOut,
            "Diameter free of copper and parts, for both sides or by side.");
        return values => new ParsedHole(
            place.Said(values),
            values.Get(diameter),
            values.Get(purpose),
            values.Get(screw),
            values.Get(insert),
            values.Get(keepOut),
            values.Node);
    }, buildsIncomplete: true);

    private static double? Maybe(Parsed<double> said) => said.Given ? said.Value : null;
}
