using ShellForge.Board.Description;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.Forms;

/// <summary>A soldered lead as said.</summary>
internal sealed record ParsedWire(
    Parsed<string> Name,
    ParsedPlacement Place,
    Parsed<BoardSide> Side,
    Parsed<int> Conductors,
    Parsed<double> Diameter,
    Parsed<int> Gauge,
    Parsed<string> To,
    MappingNode Node);

/// <summary>An entry of `wires:`.</summary>
internal static class WireForm
{
    /// <summary>The mapping.</summary>
    public static Form<ParsedWire> Form { get; } = new("a wire", keys =>
    {
        FormKey<string> name = keys.Required("name", BoardKinds.Name, "Name for messages.");
        var place = new PlacementKeys(keys, needed: true);
        FormKey<BoardSide> side = keys.Defaulted("side", BoardKinds.Side, "Side it is soldered on.", "bottom");
        FormKey<int> conductors = keys.Defaulted("conductors", new CountKind("a number of conductors", 1, 40),
            "Conductors that leave together.", "2");
        FormKey<double> diameter = keys.Optional("diameter", BoardKinds.Length("a wire's diameter", 0.2, 12),
            "Diameter over the insulation of one conductor.", "by gauge");
        FormKey<int> gauge = keys.Optional("gauge", new CountKind("an AWG size", 10, 36), "Conductor size, AWG.");
        FormKey<string> to = keys.Defaulted(
            "to", BoardKinds.Name, "Where it goes: out, the name of a cable, battery, another wire's name or a part's designator.",
            RoundCable.Unnamed);
        return values => new ParsedWire(
            values.Get(name),
            place.Said(values),
            values.Get(side),
            values.Get(conductors),
            values.Get(diameter),
            values.Get(gauge),
            values.Get(to),
            values.Node);
    }, buildsIncomplete: true);
}
