using ShellForge.Board.Profiles;
using ShellForge.Board.Schema;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Vocabulary;

/// <summary>
/// A number with its source: [3.26, "data sheet"] or {value: 3.26, source: data sheet}. A source that names a line of the file's own
/// `sources:` stands for that line. A bare number is taken as stated by the file itself.
/// </summary>
internal sealed class SourcedKind(Kind<double> number) : Kind<Sourced>
{
    private static readonly SourceKind Source = new();

    private readonly Form<Sourced> _form = new(
        "a number with its source",
        keys =>
        {
            FormKey<double> value = keys.Required("value", number, "The number.");
            FormKey<string> source = keys.Required("source", Source, "Where it comes from.");
            return values => new Sourced(values.Get(value).Value, values.Get(source).Value);
        });

    /// <inheritdoc />
    public override string Expected => $"{number.Expected}, as [number, source]";

    /// <inheritdoc />
    public override bool Suits(PositionedNode node) => node is MappingNode or ListNode || number.Suits(node);

    /// <inheritdoc />
    public override bool TryRead(PositionedNode node, ReadingContext context, out Sourced value)
    {
        bool read;
        switch (node)
        {
            case MappingNode:
                read = _form.TryRead(node, context, out value);
                break;
            case ListNode { Items: [var first, var second] }:
                read = number.TryRead(first, context, out double inList) & Source.TryRead(second, context, out string source);
                value = new Sourced(inList, source);
                break;
            case ScalarNode:
                read = number.TryRead(node, context, out double bare);
                value = new Sourced(bare, $"stated in {node.Place.File}");
                break;
            default:
                return Refuse(node, context, out value);
        }

        return read;
    }

    /// <inheritdoc />
    public override void WriteSchema(SchemaWriter schema) => schema.AnyOf([number, _form, new Pair(number)]);

    private sealed class Pair(Kind<double> number) : ISchemaSource
    {
        public void WriteSchema(SchemaWriter schema) => schema.Tuple([number, Source], 2);
    }
}
