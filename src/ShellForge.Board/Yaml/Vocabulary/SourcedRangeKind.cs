using ShellForge.Board.Profiles;
using ShellForge.Board.Schema;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Vocabulary;

/// <summary>A number with its range and source: [1.42, 1.2, 1.6, "trade"] or {value: 1.42, low: 1.2, high: 1.6, source: trade}.</summary>
internal sealed class SourcedRangeKind(Kind<double> number) : Kind<SourcedRange>
{
    private static readonly SourceKind Source = new();

    private readonly Form<SourcedRange> _form = new(
        "a number with its range and source",
        keys =>
        {
            FormKey<double> value = keys.Required("value", number, "The number.");
            FormKey<double> low = keys.Required("low", number, "The smallest that it may be.");
            FormKey<double> high = keys.Required("high", number, "The largest that it may be.");
            FormKey<string> source = keys.Required("source", Source, "Where it comes from.");
            return values => new SourcedRange(
                values.Get(value).Value, values.Get(low).Value, values.Get(high).Value, values.Get(source).Value);
        });

    /// <inheritdoc />
    public override string Expected => $"{number.Expected}, as [number, low, high, source]";

    /// <inheritdoc />
    public override bool Suits(PositionedNode node) => node is MappingNode or ListNode;

    /// <inheritdoc />
    public override bool TryRead(PositionedNode node, ReadingContext context, out SourcedRange value)
    {
        bool read;
        switch (node)
        {
            case MappingNode:
                read = _form.TryRead(node, context, out value);
                break;
            case ListNode { Items: [var first, var second, var third, var fourth] }:
                read = number.TryRead(first, context, out double middle) & number.TryRead(second, context, out double low)
                    & number.TryRead(third, context, out double high) & Source.TryRead(fourth, context, out string source);
                value = new SourcedRange(middle, low, high, source);
                break;
            default:
                return Refuse(node, context, out value);
        }

        return read && ((value.Low <= value.Value && value.Value <= value.High) || RefuseRange(node, context, out value));
    }

    /// <inheritdoc />
    public override void WriteSchema(SchemaWriter schema) => schema.AnyOf([_form, new Row(number)]);

    private sealed class Row(Kind<double> number) : ISchemaSource
    {
        public void WriteSchema(SchemaWriter schema) => schema.Tuple([number, number, number, Source], 4);
    }
}
