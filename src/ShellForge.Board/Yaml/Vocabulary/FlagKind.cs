using ShellForge.Board.Schema;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Vocabulary;

/// <summary>true or false.</summary>
internal sealed class FlagKind : Kind<bool>
{
    /// <inheritdoc />
    public override string Expected => "true or false";

    /// <inheritdoc />
    public override bool Suits(PositionedNode node) => node is ScalarNode { Quoted: false, Text: "true" or "false" };

    /// <inheritdoc />
    public override bool TryRead(PositionedNode node, ReadingContext context, out bool value)
    {
        if (!Suits(node))
        {
            return Refuse(node, context, out value);
        }

        value = ((ScalarNode)node).Text == "true";
        return true;
    }

    /// <inheritdoc />
    public override IEnumerable<string> Names(ReadingContext context) => ["true", "false"];

    /// <inheritdoc />
    public override void WriteSchema(SchemaWriter schema) => schema.Type("boolean");
}
