using System.Collections.Immutable;
using ShellForge.Board.Schema;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Vocabulary;

/// <summary>A short list whose places have kinds of their own, such as [x, y]; those at the end may be left out.</summary>
internal sealed class TupleKind(string what, int fewest, params Kind<double>[] items) : Kind<ImmutableArray<double>>
{
    /// <inheritdoc />
    public override string Expected => what;

    /// <inheritdoc />
    public override bool Suits(PositionedNode node) =>
        node is ListNode list
        && list.Items.Length >= fewest
        && list.Items.Length <= items.Length
        && list.Items.All(i => i is ScalarNode);

    /// <inheritdoc />
    public override bool TryRead(PositionedNode node, ReadingContext context, out ImmutableArray<double> value)
    {
        value = [];
        if (node is not ListNode list || list.Items.Length < fewest || list.Items.Length > items.Length)
        {
            return Refuse(node, context, out value);
        }

        var numbers = new double[list.Items.Length];
        bool all = true;
        for (int i = 0; i < numbers.Length; i++)
        {
            all &= items[i].TryRead(list.Items[i], context, out numbers[i]);
        }

        value = [.. numbers];
        return all;
    }

    /// <inheritdoc />
    public override void WriteSchema(SchemaWriter schema) => schema.Tuple(items, fewest);
}
