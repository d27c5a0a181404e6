using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>
/// Dotted paths of all nodes: "housing.walls", "board.holes[0].diameter". Entries of a list that have a designator or a name go by it
/// as well: "board.parts[J1].past-edge".
/// </summary>
internal sealed class NodePaths
{
    private readonly Dictionary<PositionedNode, string> _paths = new(ReferenceEqualityComparer.Instance);
    private readonly ImmutableDictionary<string, FilePlace>.Builder _places =
        ImmutableDictionary.CreateBuilder<string, FilePlace>(StringComparer.Ordinal);

    /// <summary>Walks a tree.</summary>
    public NodePaths(PositionedNode root) => Walk(root, "");

    /// <summary>Where each path stands.</summary>
    public ImmutableDictionary<string, FilePlace> Places => _places.ToImmutable();

    /// <summary>The path of a node: by name where it has one.</summary>
    public string Of(PositionedNode node) => _paths.GetValueOrDefault(node, "");

    /// <summary>The name by which an entry of a list goes, or null.</summary>
    public static string? NameOf(PositionedNode entry) =>
        entry is MappingNode mapping && (mapping.Find("ref") ?? mapping.Find("name")) is ScalarNode name ? name.Text : null;

    private void Walk(PositionedNode node, string path)
    {
        _paths.TryAdd(node, path);
        _places.TryAdd(path, node.Place);
        switch (node)
        {
            case MappingNode mapping:
                foreach (MappingEntry entry in mapping.Entries)
                {
                    Walk(entry.Value, path.Length == 0 ? entry.Key.Text : $"{path}.{entry.Key.Text}");
                }

                break;
            case ListNode list:
                for (int i = 0; i < list.Items.Length; i++)
                {
                    if (NameOf(list.Items[i]) is { } name)
                    {
                        Walk(list.Items[i], $"{path}[{name}]");
                    }

                    Walk(list.Items[i], string.Create(CultureInfo.InvariantCulture, $"{path}[{i}]"));
                }

                break;
        }
    }
}
