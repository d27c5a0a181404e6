using System.Collections.Immutable;
using ShellForge.Board.Schema;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Vocabulary;

/// <summary>A list of one kind. Items that cannot be read are told and left out; the list itself then still counts as read.</summary>
internal sealed class ListKind<T>(string what, Kind<T> item, int fewest, int most) : Kind<ImmutableArray<T>>
{
    /// <inheritdoc />
    public override string Expected => fewest == most ? $"{what}" : $"{what} ({fewest} to {most})";

    /// <inheritdoc />
    public override bool Suits(PositionedNode node) => node is ListNode;

    /// <inheritdoc />
    public override bool TryRead(PositionedNode node, ReadingContext context, out ImmutableArray<T> value)
    {
        value = [];
        if (node is not ListNode list)
        {
            return Refuse(node, context, out value);
        }

        if (list.Items.Length < fewest || list.Items.Length > most)
        {
            context.Sink.Error(node.Place, "wrong-count", $"a list of {list.Items.Length} is here", "expected " + Expected);
            return false;
        }

        ImmutableArray<T>.Builder items = ImmutableArray.CreateBuilder<T>(list.Items.Length);
        foreach (PositionedNode entry in list.Items)
        {
            if (item.TryRead(entry, context, out T read))
            {
                items.Add(read);
            }
        }

        value = items.ToImmutable();
        return true;
    }

    /// <inheritdoc />
    public override void WriteSchema(SchemaWriter schema) => schema.List(item, fewest, most);
}
