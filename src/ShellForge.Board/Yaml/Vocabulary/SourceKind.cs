using ShellForge.Board.Schema;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Vocabulary;

/// <summary>Where a number comes from. A word that the file's own `sources:` explains stands for that line.</summary>
internal sealed class SourceKind : Kind<string>
{
    private readonly TextKind _text = new("the source of a number", 300);

    /// <inheritdoc />
    public override string Expected => _text.Expected;

    /// <inheritdoc />
    public override bool Suits(PositionedNode node) => _text.Suits(node);

    /// <inheritdoc />
    public override bool TryRead(PositionedNode node, ReadingContext context, out string value)
    {
        bool read = _text.TryRead(node, context, out value);
        if (read && context.Sources.TryGetValue((node.Place.File, value), out string? spelled))
        {
            value = spelled;
        }

        return read;
    }

    /// <inheritdoc />
    public override void WriteSchema(SchemaWriter schema) => _text.WriteSchema(schema);
}
