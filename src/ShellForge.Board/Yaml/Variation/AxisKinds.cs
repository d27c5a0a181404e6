using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Profiles;
using ShellForge.Board.Schema;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.Variation;

/// <summary>Any value at all: what it has to be is known to the board file's own forms.</summary>
internal sealed class AnyKind : Kind<PositionedNode>
{
    /// <inheritdoc />
    public override string Expected => "a value as the board file takes it there";

    /// <inheritdoc />
    public override bool Suits(PositionedNode node) => node is not UnreadableNode;

    /// <inheritdoc />
    public override bool TryRead(PositionedNode node, ReadingContext context, out PositionedNode value)
    {
        value = node;
        return Suits(node);
    }

    /// <inheritdoc />
    public override void WriteSchema(SchemaWriter schema)
    {
        // Every value is valid: a schema without a keyword says so.
    }
}

/// <summary>The values of one path: a list, a range, or the profiles of a kind.</summary>
internal static class AxisKinds
{
    /// <summary>Values of one path; far more than anybody prints, and few enough to keep in memory.</summary>
    public const int MostSteps = 10_000;

    private const double Largest = 1e6;

    private static readonly Form<ImmutableArray<PositionedNode>> Range = new("a range", keys =>
    {
        var number = new NumberKind("a number", -Largest, Largest);
        FormKey<double> from = keys.Required("from", number, "The first value.");
        FormKey<double> to = keys.Required("to", number, "The last value, included where a step meets it.");
        FormKey<double> step = keys.Optional("step", new NumberKind("a step", -Largest, Largest), "What lies between two values.");
        FormKey<int> count = keys.Optional("count", new CountKind("a count", 2, MostSteps),
            "How many values, evenly spread, both ends included.");
        keys.ExactlyOneOf(step, count);
        return values => Spread(values.Node, values.Get(from).Value, values.Get(to).Value, values.Get(step), values.Get(count));
    });

    private static readonly Form<ProfileWish> Profiles = new("a choice of profiles", keys =>
    {
        FormKey<Func<ProfileLibrary, IEnumerable<string>>> kind =
            keys.Required("profiles", new WordKind<Func<ProfileLibrary, IEnumerable<string>>>(
            ("inserts", l => l.Inserts.Names), ("screws", l => l.Screws.Names), ("leds", l => l.Leds.Names),
            ("filaments", l => l.Filaments.Names),
            ("printers", l => l.Printers.Names), ("supplies", l => l.Supplies.Names), ("heat", l => l.Heat.Names),
            ("batteries", l => l.Batteries.Names)),
                "Which kind of profiles.");
        FormKey<string> like = keys.Optional("like", new TextKind("a pattern", 80),
            "Names to take: * stands for any letters, as in \"petg-*\".", "all of the kind");
        return values => new ProfileWish(values.Get(kind).Value, values.Get(like).Or("*"), values.Node);
    });

    /// <summary>The values of one path.</summary>
    public static Kind<AxisValues> Axis { get; } = new ChoiceKind<AxisValues>(
        new MappedKind<ImmutableArray<PositionedNode>, AxisValues>(
            new ListKind<PositionedNode>("a list of values", new AnyKind(), 1, MostSteps), items => new AxisValues(_ => items)),
        new OfKey<ProfileWish>("profiles", Profiles, wish => new AxisValues(wish.Values)),
        new MappedKind<ImmutableArray<PositionedNode>, AxisValues>(Range, items => new AxisValues(_ => items)));

    private static ImmutableArray<PositionedNode> Spread(MappingNode node, double from, double to, Parsed<double> step, Parsed<int> count)
    {
        if (count.Given)
        {
            return [.. Enumerable.Range(0, count.Value).Select(i => Number(node, from + ((to - from) * i / (count.Value - 1))))];
        }

        // A step that runs away from the end, or none, gives no value; the reader tells that.
        double steps = step.Value == 0 ? -1 : (to - from) / step.Value;
        const double meets = 1e-9; // share of a step by which decimal fractions miss the end
        return steps < 0 || steps >= MostSteps
            ? []
            : [.. Enumerable.Range(0, (int)Math.Floor(steps + meets) + 1).Select(i => Number(node, from + (step.Value * i)))];
    }

    private static ScalarNode Number(MappingNode node, double value) =>
        new(node.Place, value.ToString("0.######", CultureInfo.InvariantCulture), false);

    /// <summary>A mapping that is known by one of its keys.</summary>
    private sealed class OfKey<T>(string key, Form<T> form, Func<T, AxisValues> map) : Kind<AxisValues>
    {
        public override string Expected => form.Expected;

        public override bool Suits(PositionedNode node) => node is MappingNode mapping && mapping.Find(key) is not null;

        public override bool TryRead(PositionedNode node, ReadingContext context, out AxisValues value)
        {
            bool read = form.TryRead(node, context, out T said);
            value = read ? map(said) : default!;
            return read;
        }

        public override void WriteSchema(SchemaWriter schema) => form.WriteSchema(schema);
    }

    private sealed record ProfileWish(Func<ProfileLibrary, IEnumerable<string>> Shelf, string Like, MappingNode Node)
    {
        public ImmutableArray<PositionedNode> Values(ProfileLibrary profiles) =>
            [.. Shelf(profiles).Where(name => Fits(name, Like)).Select(name => new ScalarNode(Node.Place, name, false))];

        private static bool Fits(string name, string like)
        {
            string[] pieces = like.Split('*');
            if (pieces.Length == 1)
            {
                return name == like;
            }

            int at = pieces[0].Length;
            bool fits = name.StartsWith(pieces[0], StringComparison.Ordinal);
            foreach (string piece in pieces[1..^1])
            {
                int found = fits ? name.IndexOf(piece, at, StringComparison.Ordinal) : -1;
                fits = found >= 0;
                at = found + piece.Length;
            }

            return fits && name.Length >= at + pieces[^1].Length && name.EndsWith(pieces[^1], StringComparison.Ordinal);
        }
    }
}

/// <summary>Values of a path, known once the profiles are.</summary>
internal sealed record AxisValues(Func<ProfileLibrary, ImmutableArray<PositionedNode>> Of);
