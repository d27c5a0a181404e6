using System.Collections.Immutable;
using ShellForge.Board.Description;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace ShellForge.Board.Yaml.Tree;

/// <summary>
/// Reads YAML text, event by event, into a positioned tree. Duplicate keys, unknown aliases, tags and limits are diagnostics and
/// reading goes on; broken YAML syntax alone ends it, since nothing after it can be trusted.
/// </summary>
internal sealed class YamlTreeReader
{
    private readonly string _file;
    private readonly int _firstColumn;
    private readonly DiagnosticSink _sink;
    private readonly Dictionary<string, PositionedNode?> _anchors = new(StringComparer.Ordinal);
    private readonly EventStream _events;
    private int _nodes;
    private bool _full;

    private YamlTreeReader(string file, string text, int firstColumn, DiagnosticSink sink)
    {
        _file = file;
        _firstColumn = firstColumn;
        _sink = sink;
        _events = new EventStream(text);
    }

    /// <summary>Reads one document.</summary>
    /// <param name="file">Name for places.</param>
    /// <param name="text">The YAML text.</param>
    /// <param name="sink">Takes what is wrong.</param>
    /// <param name="firstColumn">Column at which the text starts in its file: above 1 for the value of an override.</param>
    /// <returns>The tree, or null when there is none to read.</returns>
    public static PositionedNode? Read(string file, string text, DiagnosticSink sink, int firstColumn = 1)
    {
        if (text.Length > YamlLimits.Characters)
        {
            sink.Error(
                new FilePlace(file, 0, 0), "file-too-large", $"the file has {text.Length} characters",
                $"expected at most {YamlLimits.Characters}");
            return null;
        }

        var reader = new YamlTreeReader(file, text, firstColumn, sink);
        try
        {
            return reader.Document();
        }
        catch (YamlException fault)
        {
            if (TabInIndent(text) is { } tab && fault.Message.Contains("tab", StringComparison.Ordinal))
            {
                sink.Error(reader.PlaceOf(tab), "yaml-syntax", "this is not valid YAML: a tab indents this line", "expected spaces");
                return null;
            }

            FilePlace begun = reader.PlaceOf(fault.Start);
            FilePlace found = fault.End.CompareTo(fault.Start) > 0 ? reader.PlaceOf(fault.End) : begun;
            string since = begun.Line == found.Line ? "" : $", in what begins at line {begun.Line}";
            sink.Error(found, "yaml-syntax", $"this is not valid YAML: {Sentence(fault.Message)}{since}");
            return null;
        }
    }

    // The parser tells a tab at the place where the mapping around it begins.
    private static Mark? TabInIndent(string text)
    {
        string[] lines = text.Split('\n');
        for (int i = 0; i < lines.Length; i++)
        {
            int indent = lines[i].Length - lines[i].TrimStart(' ', '\t').Length;
            int tab = lines[i].IndexOf('\t', 0, indent);
            if (tab >= 0)
            {
                return new Mark(tab, i + 1, tab + 1);
            }
        }

        return null;
    }

    private static string Sentence(string message)
    {
        // The parser puts the place in front of some messages.
        int colon = message.StartsWith('(') ? message.IndexOf("): ", StringComparison.Ordinal) : -1;
        string bare = (colon < 0 ? message : message[(colon + 3)..]).Trim().TrimEnd('.');
        return bare.Length == 0 ? "it cannot be read" : char.ToLowerInvariant(bare[0]) + bare[1..];
    }

    private PositionedNode? Document()
    {
        _events.Skip<StreamStart>();
        if (_events.Skip<StreamEnd>())
        {
            _sink.Error(new FilePlace(_file, 1, 1), "empty-file", "there is nothing in it", "expected a mapping");
            return null;
        }

        _events.Skip<DocumentStart>();
        PositionedNode? root = Node(0);
        if (_full)
        {
            return null;
        }

        _events.Skip<DocumentEnd>();
        if (_events.Peek() is not StreamEnd)
        {
            _sink.Error(PlaceOf(_events.Peek().Start), "more-than-one-document", "a second document starts here",
                "expected one document to a file");
        }

        return root;
    }

    private PositionedNode? Node(int depth)
    {
        ParsingEvent current = _events.Next();
        FilePlace place = PlaceOf(current.Start);
        if (!Counted(place, 1))
        {
            return null;
        }

        if (current is AnchorAlias alias)
        {
            PositionedNode? target = Target(alias, place);
            return target is null ? new UnreadableNode(place) : Counted(place, target.Weight) ? target with { Place = place } : null;
        }

        // A key may be left without a value by the parser, in flow mappings that break off.
        if (current is not NodeEvent node)
        {
            throw new YamlException(current.Start, current.End, "A value is missing here.");
        }

        if (!node.Tag.IsEmpty && !node.Tag.IsNonSpecific)
        {
            _sink.Error(place, "tag", $"the tag '{node.Tag}' has no meaning here", "expected a plain value");
        }

        string? anchor = node.Anchor.IsEmpty ? null : node.Anchor.Value;
        if (anchor is not null)
        {
            _anchors[anchor] = null;
        }

        PositionedNode? read = current switch
        {
            Scalar scalar => new ScalarNode(place, scalar.Value, scalar.Style != ScalarStyle.Plain),
            SequenceStart when Shallow(place, depth) => List(place, depth),
            MappingStart when Shallow(place, depth) => Mapping(place, depth),
            _ => null,
        };
        if (anchor is not null && read is not null)
        {
            _anchors[anchor] = read;
        }

        return read;
    }

    private ListNode? List(FilePlace place, int depth)
    {
        ImmutableArray<PositionedNode>.Builder items = ImmutableArray.CreateBuilder<PositionedNode>();
        while (!_events.Skip<SequenceEnd>())
        {
            PositionedNode? item = Node(depth + 1);
            if (_full)
            {
                return null;
            }

            if (item is not null)
            {
                items.Add(item);
            }
        }

        return new ListNode(place, items.ToImmutable());
    }

    private MappingNode? Mapping(FilePlace place, int depth)
    {
        ImmutableArray<MappingEntry>.Builder entries = ImmutableArray.CreateBuilder<MappingEntry>();
        var seen = new Dictionary<string, FilePlace>(StringComparer.Ordinal);
        while (!_events.Skip<MappingEnd>())
        {
            PositionedNode? key = Node(depth + 1);
            PositionedNode? value = _full ? null : Node(depth + 1);
            if (_full)
            {
                return null;
            }

            if (key is not ScalarNode name)
            {
                if (key is not null and not UnreadableNode)
                {
                    _sink.Error(key.Place, "key-not-a-word", $"{key.KindInWords} cannot be a key", "expected a word");
                }

                continue;
            }

            if (!seen.TryAdd(name.Text, name.Place))
            {
                FilePlace first = seen[name.Text];
                _sink.Error(
                    name.Place, "duplicate-key", $"'{name.Text}' was already given at line {first.Line}", "expected each key once");
                continue;
            }

            if (value is not null)
            {
                entries.Add(new MappingEntry(name, value));
            }
        }

        return new MappingNode(place, entries.ToImmutable());
    }

    // What an alias stands for; null when it stands for nothing, which then has been told.
    private PositionedNode? Target(AnchorAlias alias, FilePlace place)
    {
        string name = alias.Value.Value;
        if (!_anchors.TryGetValue(name, out PositionedNode? target))
        {
            _sink.Error(
                place, "unknown-alias", $"nothing above is anchored as '&{name}'", nearest: NearestName.In(name, _anchors.Keys));
        }
        else if (target is null)
        {
            _sink.Error(place, "alias-inside-itself", $"'*{name}' stands inside what it stands for, or in place of something unreadable");
        }

        return target;
    }

    private bool Shallow(FilePlace place, int depth)
    {
        if (depth < YamlLimits.Depth)
        {
            return true;
        }

        _sink.Error(place, "too-deep", $"more than {YamlLimits.Depth} lists and mappings inside each other", "expected a flatter file");
        _full = true;
        return false;
    }

    private bool Counted(FilePlace place, int nodes)
    {
        _nodes += nodes;
        if (_nodes <= YamlLimits.Nodes)
        {
            return true;
        }

        if (!_full)
        {
            _sink.Error(place, "too-many-values", $"more than {YamlLimits.Nodes} values, aliases written out", "expected a smaller file");
            _full = true;
        }

        return false;
    }

    private FilePlace PlaceOf(Mark mark)
    {
        int line = (int)Math.Max(1, mark.Line);
        int column = (int)Math.Max(1, mark.Column);
        return new FilePlace(_file, line, line == 1 ? column + _firstColumn - 1 : column);
    }
}
