using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Forms;

/// <summary>A battery as said: by profile or by size.</summary>
internal sealed record ParsedBattery(
    Parsed<BatteryProfile> Cell,
    Parsed<ImmutableArray<double>> Round,
    Parsed<ImmutableArray<double>> Flat,
    Parsed<int> Count,
    Parsed<Point2> At,
    Parsed<Angle> Along,
    Parsed<StrapKind> Strap,
    Parsed<string> Plug,
    Parsed<double> Grams);

/// <summary>The value at `battery:`.</summary>
internal static class BatteryEntry
{
    // Side by side on one floor under one strap.
    private const int Most = 6;

    private static readonly Kind<BatteryProfile> Profile = new ProfileKind<BatteryProfile>("a battery", l => l.Batteries);

    private static readonly Form<ParsedBattery> Form = new("a battery", keys =>
    {
        FormKey<BatteryProfile> cell = keys.Optional("cell", Profile, "A cell or pouch by its profile.");
        FormKey<ImmutableArray<double>> round = keys.Optional(
            "round", new TupleKind("a cylinder's size [diameter, length]", 2, BoardKinds.Length("a diameter", 3, 50),
                BoardKinds.Length("a length", 5, 200)), "A cylinder by its size: [diameter, length], as measured over sleeve and tabs.");
        FormKey<ImmutableArray<double>> flat = keys.Optional(
            "flat", new TupleKind("a pouch's size [thickness, width, length]", 3, BoardKinds.Length("a thickness", 1, 40),
                BoardKinds.Length("a width", 5, 150), BoardKinds.Length("a length", 5, 200)),
            "A pouch by its size when new: [thickness, width, length], with its protection circuit.");
        FormKey<int> count = keys.Defaulted("count", new CountKind("a number of cells", 1, Most), "How many lie side by side.", "1");
        FormKey<Point2> at = keys.Optional("at", BoardKinds.Point, "Middle of its bay [x, y] in the ECAD's coordinates.",
            "where it costs least depth");
        FormKey<Angle> along = keys.Optional("along", BoardKinds.Angle, "Board angle along which its length lies.",
            "where it costs least depth");
        FormKey<StrapKind> strap = keys.Defaulted(
            "strap", new WordKind<StrapKind>(("hook-and-loop", StrapKind.HookAndLoop), ("tie", StrapKind.Tie)),
            "What holds it down: a strap 10 mm wide that opens again, or a cable tie 4.8 mm wide.", "hook-and-loop");
        FormKey<string> plug = keys.Optional("plug", BoardKinds.Name,
            "Designator of the connector on the board that takes its plug.", "its wires are soldered: 'to: battery' at a wire");
        FormKey<double> grams = keys.Optional("grams", new NumberKind("a mass in grams", 0.2, 1000),
            "Mass of one.", "the profile's, or by its volume");
        keys.ExactlyOneOf(cell, round, flat);
        return values => new ParsedBattery(
            values.Get(cell), values.Get(round), values.Get(flat), values.Get(count), values.Get(at), values.Get(along),
            values.Get(strap), values.Get(plug), values.Get(grams));
    });

    /// <summary>A profile's name, or a mapping.</summary>
    public static Kind<ParsedBattery> Kind { get; } = new ChoiceKind<ParsedBattery>(new ByName(), Form);

    // A name alone stands for one cell, for which the plan decides all else.
    private sealed class ByName : Kind<ParsedBattery>
    {
        public override string Expected => Profile.Expected;

        public override bool Suits(PositionedNode node) => Profile.Suits(node);

        public override bool TryRead(PositionedNode node, ReadingContext context, out ParsedBattery value)
        {
            bool read = Profile.TryRead(node, context, out BatteryProfile cell);
            value = new ParsedBattery(
                new Parsed<BatteryProfile>(read, cell, node), Unsaid<ImmutableArray<double>>(node), Unsaid<ImmutableArray<double>>(node),
                new Parsed<int>(false, 1, node), Unsaid<Point2>(node), Unsaid<Angle>(node),
                new Parsed<StrapKind>(false, StrapKind.HookAndLoop, node), Unsaid<string>(node), Unsaid<double>(node));
            return read;
        }

        public override IEnumerable<string> Names(ReadingContext context) => Profile.Names(context);

        public override void WriteSchema(Schema.SchemaWriter schema) => Profile.WriteSchema(schema);

        private static Parsed<T> Unsaid<T>(PositionedNode node) => new(false, default!, node);
    }
}
