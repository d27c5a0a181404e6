using ShellForge.Board.Schema;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Vocabulary;

/// <summary>One of several kinds; the first whose shape suits the node reads it.</summary>
internal sealed class ChoiceKind<T>(params Kind<T>[] options) : Kind<T>
{
    /// <inheritdoc />
    public override string Expected => string.Join(", or ", options.Select(o => o.Expected));

    /// <inheritdoc />
    public override bool Suits(PositionedNode node) => options.Any(o => o.Suits(node));

    /// <inheritdoc />
    public override bool TryRead(PositionedNode node, ReadingContext context, out T value)
    {
        foreach (Kind<T> option in options)
        {
            if (option.Suits(node))
            {
                return option.TryRead(node, context, out value);
            }
        }

        return Refuse(node, context, out value);
    }

    /// <inheritdoc />
    public override IEnumerable<string> Names(ReadingContext context) => options.SelectMany(o => o.Names(context));

    /// <inheritdoc />
    public override void WriteSchema(SchemaWriter schema) => schema.AnyOf(options);
}

/// <summary>A kind read into another type.</summary>
internal sealed class MappedKind<TFrom, TTo>(Kind<TFrom> kind, Func<TFrom, TTo> map) : Kind<TTo>
{
    /// <inheritdoc />
    public override string Expected => kind.Expected;

    /// <inheritdoc />
    public override bool Suits(PositionedNode node) => kind.Suits(node);

    /// <inheritdoc />
    public override bool TryRead(PositionedNode node, ReadingContext context, out TTo value)
    {
        bool read = kind.TryRead(node, context, out TFrom from);
        value = read ? map(from) : default!;
        return read;
    }

    /// <inheritdoc />
    public override IEnumerable<string> Names(ReadingContext context) => kind.Names(context);

    /// <inheritdoc />
    public override void WriteSchema(SchemaWriter schema) => kind.WriteSchema(schema);
}
