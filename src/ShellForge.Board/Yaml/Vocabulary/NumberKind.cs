using ShellForge.Board.Schema;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Vocabulary;

/// <summary>A number without a unit, ends of the range included.</summary>
internal sealed class NumberKind(string what, double least, double most, bool whole = false) : Kind<double>
{
    /// <inheritdoc />
    public override string Expected => $"{what} from {NumberText.Written(least)} to {NumberText.Written(most)}";

    /// <inheritdoc />
    public override bool Suits(PositionedNode node) =>
        node is ScalarNode { Quoted: false } scalar
        && (NumberText.IsNotANumber(scalar.Text)
            || (NumberText.TryNumber(scalar.Text, out double number) && (!whole || IsWholeText(scalar.Text, number))));

    /// <inheritdoc />
    public override bool TryRead(PositionedNode node, ReadingContext context, out double value)
    {
        value = 0;
        if (node is ScalarNode { Quoted: false } scalar)
        {
            if (NumberText.IsNotANumber(scalar.Text))
            {
                context.Sink.Error(node.Place, "not-a-number", $"'{scalar.Text}' is no finite number", "expected " + Expected);
                return false;
            }

            if (NumberText.TryNumber(scalar.Text, out value) && (!whole || IsWholeText(scalar.Text, value)))
            {
                return (value >= least && value <= most) || RefuseRange(node, context, out value);
            }
        }

        return Refuse(node, context, out value);
    }

    /// <inheritdoc />
    public override void WriteSchema(SchemaWriter schema) =>
        schema.Number(whole ? "integer" : "number", least, most);

    // "2.0" is written as a measure, not as a count.
    private static bool IsWholeText(string text, double number) =>
        number == Math.Floor(number) && !text.Contains('.') && !text.Contains('e') && !text.Contains('E');
}
