using ShellForge.Board.Schema;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Vocabulary;

/// <summary>A line of text, not empty unless that is allowed.</summary>
internal sealed class TextKind(string what, int longest, bool mayBeEmpty = false, bool asciiOnly = false) : Kind<string>
{
    private const string AsciiPattern = "^[ -~]*$";
    private const string LinePattern = @"^[^\u0000-\u001f\u007f]*$";

    /// <inheritdoc />
    public override string Expected =>
        $"{what} of {(mayBeEmpty ? "at most" : "1 to")} {longest} "
            + $"{(asciiOnly ? "letters, digits and signs of plain ASCII" : "characters")} on one line";

    /// <inheritdoc />
    public override bool Suits(PositionedNode node) => node is ScalarNode { IsNull: false };

    /// <inheritdoc />
    public override bool TryRead(PositionedNode node, ReadingContext context, out string value)
    {
        if (node is not ScalarNode { IsNull: false } scalar)
        {
            return Refuse(node, context, out value);
        }

        value = scalar.Text;
        if (value.Trim().Length == 0 && !mayBeEmpty)
        {
            context.Sink.Error(node.Place, "empty-text", "the text is empty", "expected " + Expected);
            return false;
        }

        bool readable = value.Length <= longest && value.All(c => asciiOnly ? c is >= ' ' and <= '~' : !char.IsControl(c));
        return readable || RefuseRange(node, context, out value);
    }

    /// <inheritdoc />
    public override void WriteSchema(SchemaWriter schema) =>
        schema.Text(mayBeEmpty ? 0 : 1, longest, asciiOnly ? AsciiPattern : LinePattern);
}
