using System.Collections.Immutable;
using ShellForge.Board.Schema;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Vocabulary;

/// <summary>A mapping whose keys are names of the writer's own.</summary>
internal sealed class MapKind<T>(string what, Kind<T> item, int most) : Kind<ImmutableArray<(ScalarNode Name, T Value)>>
{
    /// <inheritdoc />
    public override string Expected => what;

    /// <inheritdoc />
    public override bool Suits(PositionedNode node) => node is MappingNode;

    /// <inheritdoc />
    public override bool TryRead(
        PositionedNode node, ReadingContext context, out ImmutableArray<(ScalarNode Name, T Value)> value)
    {
        value = [];
        if (node is not MappingNode mapping)
        {
            return Refuse(node, context, out value);
        }

        if (mapping.Entries.Length > most)
        {
            return RefuseRange(node, context, out value);
        }

        foreach (MappingEntry entry in mapping.Entries)
        {
            if (item.TryRead(entry.Value, context, out T read))
            {
                value = value.Add((entry.Key, read));
            }
        }

        return true;
    }

    /// <inheritdoc />
    public override void WriteSchema(SchemaWriter schema) => schema.Map(item, most);
}
