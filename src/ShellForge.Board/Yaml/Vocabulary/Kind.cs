using ShellForge.Board.Schema;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Vocabulary;

/// <summary>
/// What may stand at a place of the file. One declaration gives both the reader and the JSON Schema, so that the two cannot
/// drift apart.
/// </summary>
/// <typeparam name="T">What is read from it.</typeparam>
internal abstract class Kind<T> : ISchemaSource
{
    /// <summary>What is expected, to follow the word "expected": "a length from 1 to 450 mm".</summary>
    public abstract string Expected { get; }

    /// <summary>Whether a node has the shape of this kind, so that a choice takes it and its own faults are told.</summary>
    public abstract bool Suits(PositionedNode node);

    /// <summary>Reads a node; false when it cannot be read, which then has been told.</summary>
    public abstract bool TryRead(PositionedNode node, ReadingContext context, out T value);

    /// <inheritdoc />
    public abstract void WriteSchema(SchemaWriter schema);

    /// <summary>The names that a mistyped word may have meant.</summary>
    public virtual IEnumerable<string> Names(ReadingContext context) => [];

    /// <summary>Tells that a node is something else.</summary>
    protected bool Refuse(PositionedNode node, ReadingContext context, out T value)
    {
        value = default!;
        if (node is UnreadableNode)
        {
            return false;
        }

        string? nearest = node is ScalarNode scalar ? NearestName.In(scalar.Text, Names(context)) : null;
        context.Sink.Error(node.Place, "wrong-kind", $"{node.KindInWords} does not fit here", "expected " + Expected, nearest);
        return false;
    }

    /// <summary>Tells that a value is outside its range.</summary>
    protected bool RefuseRange(PositionedNode node, ReadingContext context, out T value)
    {
        context.Sink.Error(node.Place, "out-of-range", $"{node.KindInWords} is out of range", "expected " + Expected);
        value = default!;
        return false;
    }
}
