using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Yaml.Resolving;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Overriding;

/// <summary>Puts a value into a tree. Mappings and lists that are not there yet are made; what is there is found by name.</summary>
internal sealed class TreePatch(DiagnosticSink sink)
{
    private const string NewEntry = "+";

    /// <summary>The tree with the value at the path; the tree as it was when the path leads nowhere.</summary>
    public PositionedNode With(PositionedNode root, ImmutableArray<PathStep> path, PositionedNode value) =>
        Put(root, path, 0, value) ?? root;

    private PositionedNode? Put(PositionedNode? node, ImmutableArray<PathStep> path, int depth, PositionedNode value)
    {
        if (depth == path.Length)
        {
            return value;
        }

        PathStep step = path[depth];
        return step.Key is not null
            ? IntoMapping(node, step, path, depth, value)
            : IntoList(node, step, path, depth, value);
    }

    private MappingNode? IntoMapping(
        PositionedNode? node, PathStep step, ImmutableArray<PathStep> path, int depth, PositionedNode value)
    {
        if (node is ListNode list)
        {
            sink.Error(step.Place, "bad-override", $"a key is given, but a list of {list.Items.Length} is there",
                "expected an entry in brackets: [0], [name] or [+]");
            return null;
        }

        // A single value gives way: cable: none becomes cable: {part: J2}.
        MappingNode mapping = node as MappingNode ?? new MappingNode(step.Place, []);
        int at = -1;
        for (int i = 0; i < mapping.Entries.Length; i++)
        {
            at = mapping.Entries[i].Key.Text == step.Key ? i : at;
        }

        PositionedNode? put = Put(at < 0 ? null : mapping.Entries[at].Value, path, depth + 1, value);
        if (put is null)
        {
            return null;
        }

        // The key keeps the place of the override, so that a mistyped key is told there.
        var entry = new MappingEntry(new ScalarNode(step.Place, step.Key!, true), put);
        return new MappingNode(
            mapping.Place, at < 0 ? mapping.Entries.Add(entry) : mapping.Entries.SetItem(at, mapping.Entries[at] with { Value = put }));
    }

    private ListNode? IntoList(
        PositionedNode? node, PathStep step, ImmutableArray<PathStep> path, int depth, PositionedNode value)
    {
        // One mapping where a list may stand counts as a list of one: pixels[0].
        ListNode list = node switch
        {
            ListNode there => there,
            MappingNode single => new ListNode(single.Place, [single]),
            _ => new ListNode(step.Place, []),
        };
        int? found = Find(list, step);
        if (found is null && step.Entry != NewEntry && !(step.Index == list.Items.Length))
        {
            return IntoMissing(list, step, path, depth, value);
        }

        PositionedNode? put = Put(found is { } at ? list.Items[at] : null, path, depth + 1, value);
        return put is null
            ? null
            : new ListNode(list.Place, found is { } there2 ? list.Items.SetItem(there2, put) : list.Items.Add(put));
    }

    // board.parts[U1].height=4.3 where there is no U1 yet: a new entry of that name, when the path goes on to a key.
    private ListNode? IntoMissing(
        ListNode list, PathStep step, ImmutableArray<PathStep> path, int depth, PositionedNode value)
    {
        string[] names = [.. list.Items.Select(NodePaths.NameOf).OfType<string>()];
        bool isName = step.Index is null && list.Items.Length == names.Length;
        if (!isName || depth + 1 >= path.Length || path[depth + 1].Key is null)
        {
            sink.Error(
                step.Place,
                "bad-override",
                $"there is no entry [{step.Entry}]",
                string.Create(CultureInfo.InvariantCulture,
                    $"expected [0] to [{Math.Max(0, list.Items.Length - 1)}]{(names.Length > 0 ? ", a name" : "")} or [+]"),
                NearestName.In(step.Entry!, names));
            return null;
        }

        var named = new MappingNode(
            step.Place,
            [new MappingEntry(new ScalarNode(step.Place, path[depth - 1].Key == "wires" ? "name" : "ref", true),
                new ScalarNode(step.Place, step.Entry!, true))]);
        PositionedNode? put = Put(named, path, depth + 1, value);
        return put is null ? null : new ListNode(list.Place, list.Items.Add(put));
    }

    private static int? Find(ListNode list, PathStep step)
    {
        for (int i = 0; i < list.Items.Length; i++)
        {
            if (NodePaths.NameOf(list.Items[i]) == step.Entry)
            {
                return i;
            }
        }

        return step.Index is { } index && index < list.Items.Length ? index : null;
    }
}
