using ShellForge.Board.Schema;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Vocabulary;

/// <summary>A whole number, ends of the range included.</summary>
internal sealed class CountKind(string what, int least, int most) : Kind<int>
{
    private readonly NumberKind _number = new(what, least, most, whole: true);

    /// <inheritdoc />
    public override string Expected => _number.Expected;

    /// <inheritdoc />
    public override bool Suits(PositionedNode node) => _number.Suits(node);

    /// <inheritdoc />
    public override bool TryRead(PositionedNode node, ReadingContext context, out int value)
    {
        bool read = _number.TryRead(node, context, out double number);
        value = read ? (int)number : 0;
        return read;
    }

    /// <inheritdoc />
    public override void WriteSchema(SchemaWriter schema) => _number.WriteSchema(schema);
}
