using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.Forms;

/// <summary>A hole, or a pattern of holes, as said.</summary>
internal sealed record HoleSaid(
    PlacementSaid Place,
    Said<double> Diameter,
    Said<HolePurpose> For,
    Said<ScrewSaid> Screw,
    Said<InsertProfile> Insert,
    Said<KeepOutSaid> KeepOut,
    MappingNode Node);

/// <summary>Room free of copper and parts round a hole, per side.</summary>
internal readonly record struct KeepOutSaid(double? Top, double? Bottom);

/// <summary>An entry of `holes:`.</summary>
internal static class HoleForm
{
    private static readonly Kind<double> KeepOutDiameter = BoardKinds.Length("a keep-out diameter", 1, 60);

    private static readonly Form<KeepOutSaid> BySide = new("a keep-out by side", keys =>
    {
        FormKey<double> top = keys.Optional("top", KeepOutDiameter, "Diameter on the LED side.");
        FormKey<double> bottom = keys.Optional("bottom", KeepOutDiameter, "Diameter on the back.");
        return values => new KeepOutSaid(Maybe(values.Said(top)), Maybe(values.Said(bottom)));
    });

    private static readonly Kind<KeepOutSaid> KeepOut = new ChoiceKind<KeepOutSaid>(
        BySide, new MappedKind<double, KeepOutSaid>(KeepOutDiameter, d => new KeepOutSaid(d, d)));

    /// <summary>The mapping.</summary>
    public static Form<HoleSaid> Form { get; } = new("a hole", keys =>
    {
        var place = new PlacementKeys(keys, needed: true);
        FormKey<double> diameter = keys.Required("diameter", BoardKinds.Length("a hole's diameter", 0.3, 30), "Finished diameter.");
        FormKey<HolePurpose> purpose = keys.Optional(
            "for",
            new WordKind<HolePurpose>(("mount", HolePurpose.Mount), ("wire", HolePurpose.Wire), ("tooling", HolePurpose.Tooling)),
            "What it is for.",
            "mount");
        FormKey<ScrewSaid> screw = keys.Optional("screw", ScrewSaidKind.Kind, "A screw of its own: a profile, or pan, cap, button or countersunk.", "the housing's");
        FormKey<InsertProfile> insert = keys.Optional("insert", new ProfileKind<InsertProfile>("an insert", l => l.Inserts), "An insert of its own.", "the housing's");
        FormKey<KeepOutSaid> keepOut = keys.Optional("keep-out", KeepOut, "Diameter free of copper and parts, for both sides or by side.");
        return values => new HoleSaid(
            place.Said(values),
            values.Said(diameter),
            values.Said(purpose),
            values.Said(screw),
            values.Said(insert),
            values.Said(keepOut),
            values.Node);
    }, buildsIncomplete: true);

    private static double? Maybe(Said<double> said) => said.Given ? said.Value : null;
}
