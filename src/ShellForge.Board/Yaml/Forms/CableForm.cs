using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Forms;

/// <summary>A cable as said: a part, or a round cable.</summary>
internal sealed record ParsedCable(
    Parsed<string> Part,
    Parsed<double> Round,
    Parsed<Angle> At,
    Parsed<ImmutableArray<double>> Plug,
    Parsed<ReliefKind> Relief,
    Parsed<ExitKind> Through,
    Parsed<string> Name,
    MappingNode Node);

/// <summary>The value at `cable:`.</summary>
internal static class CableForm
{
    private static readonly Kind<double> PlugSize = BoardKinds.Length("a plug's size", 0, 60);

    // More than a housing of any size has room for at its rim.
    private const int Most = 8;

    private static readonly Form<ParsedCable> Form = new("a cable", keys =>
    {
        FormKey<string> part = keys.Optional("part", BoardKinds.Name, "Designator of the connector that takes it.");
        FormKey<double> round = keys.Optional("round", BoardKinds.Length("a cable's diameter", 1, 16),
            "Diameter of a round cable soldered to the board.");
        FormKey<Angle> at = keys.Optional("angle", BoardKinds.Angle, "Board angle at which it leaves.", "opposite of up");
        FormKey<ImmutableArray<double>> plug = keys.Optional(
            "plug", new TupleKind("a plug's size [width, height]", 2, PlugSize, PlugSize),
            "The widest thing at its end: a hole in the floor gets a window that it passes; a notch in the wall is open from above.",
                    "nothing");
        FormKey<ReliefKind> relief = keys.Defaulted("relief", new WordKind<ReliefKind>(("tie", ReliefKind.Tie), ("knot", ReliefKind.Knot)),
            "How its pull is taken.", "tie");
        FormKey<ExitKind> through = keys.Defaulted("through", new WordKind<ExitKind>(("wall", ExitKind.Wall), ("floor", ExitKind.Floor)),
            "What it leaves the housing through.", "wall");
        FormKey<string> name = keys.Optional("name", BoardKinds.Name,
            "What wires call it that leave by it ('to:'); needed where several round cables leave.", "out");
        keys.ExactlyOneOf(part, round);
        keys.Needs(at, round);
        keys.Needs(plug, round);
        keys.Needs(relief, round);
        keys.Needs(through, round);
        keys.Needs(name, round);
        return values => new ParsedCable(
            values.Get(part), values.Get(round), values.Get(at), values.Get(plug), values.Get(relief), values.Get(through),
            values.Get(name), values.Node);
    }, buildsIncomplete: true);

    /// <summary>`none`, a mapping, or a list of them.</summary>
    public static Kind<ImmutableArray<ParsedCable>> Kind { get; } = new ChoiceKind<ImmutableArray<ParsedCable>>(
        new WordKind<ImmutableArray<ParsedCable>>(("none", [])),
        new MappedKind<ParsedCable, ImmutableArray<ParsedCable>>(Form, cable => [cable]),
        new ListKind<ParsedCable>("a list of cables", Form, 1, Most));
}
