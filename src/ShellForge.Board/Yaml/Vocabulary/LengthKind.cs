using ShellForge.Board.Schema;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Vocabulary;

/// <summary>A length: mm, or a number with mm, in or mil behind it. Ends of the range included.</summary>
internal sealed class LengthKind(string what, double least, double most) : Kind<double>
{
    /// <inheritdoc />
    public override string Expected => $"{what} from {NumberText.Written(least)} to {NumberText.Written(most)} mm";

    /// <inheritdoc />
    public override bool Suits(PositionedNode node) =>
        node is ScalarNode scalar && (NumberText.IsNotANumber(scalar.Text) || IsLength(scalar, out _));

    /// <inheritdoc />
    public override bool TryRead(PositionedNode node, ReadingContext context, out double value)
    {
        value = 0;
        if (node is not ScalarNode scalar)
        {
            return Refuse(node, context, out value);
        }

        if (NumberText.IsNotANumber(scalar.Text))
        {
            context.Sink.Error(node.Place, "not-a-number", $"'{scalar.Text}' is no finite number", "expected " + Expected);
            return false;
        }

        if (IsLength(scalar, out value))
        {
            return (value >= least && value <= most) || RefuseRange(node, context, out value);
        }

        if (NumberText.HasOtherUnit(scalar.Text))
        {
            context.Sink.Error(node.Place, "unknown-unit", $"the unit of {node.KindInWords} is not known",
                "expected mm, in or mil, or a bare number of mm");
            return false;
        }

        return Refuse(node, context, out value);
    }

    /// <inheritdoc />
    public override void WriteSchema(SchemaWriter schema) => schema.Length(least, most);

    // In quotes only with a unit: a quoted bare number is a word to every editor.
    private static bool IsLength(ScalarNode scalar, out double value) =>
        NumberText.TryLength(scalar.Text, out value) && !(scalar.Quoted && NumberText.TryNumber(scalar.Text, out _));
}
