using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Forms;

/// <summary>A cable as said: a part, a round cable, or neither.</summary>
internal sealed record ParsedCable(
    Parsed<string> Part,
    Parsed<double> Round,
    Parsed<Angle> At,
    Parsed<ImmutableArray<double>> Plug,
    Parsed<ReliefKind> Relief,
    Parsed<ExitKind> Through);

/// <summary>The value at `cable:`.</summary>
internal static class CableForm
{
    private static readonly Kind<double> PlugSize = BoardKinds.Length("a plug's size", 0, 60);

    private static readonly Form<ParsedCable> Form = new("the cable", keys =>
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
        keys.ExactlyOneOf(part, round);
        keys.Needs(at, round);
        keys.Needs(plug, round);
        keys.Needs(relief, round);
        keys.Needs(through, round);
        return values => new ParsedCable(
            values.Get(part), values.Get(round), values.Get(at), values.Get(plug), values.Get(relief), values.Get(through));
    }, buildsIncomplete: true);

    /// <summary>`none`, or a mapping.</summary>
    public static Kind<ParsedCable> Kind { get; } = new ChoiceKind<ParsedCable>(
        new WordKind<ParsedCable>(("none", new ParsedCable(default, default, default, default, default, default))), Form);
}
