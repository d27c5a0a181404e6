using System.Collections.Immutable;
using ShellForge.Board.Description;

namespace ShellForge.Board.Yaml.Tree;

/// <summary>A node of a YAML document that knows where it stands. An alias stands where the alias is written.</summary>
internal abstract record PositionedNode(FilePlace Place)
{
    /// <summary>Nodes in this subtree with every alias written out: what a reader has to walk.</summary>
    public abstract int Weight { get; }

    /// <summary>What kind of node it is, for messages.</summary>
    public abstract string KindInWords { get; }
}

/// <summary>A single value.</summary>
/// <param name="Place">Where it stands.</param>
/// <param name="Text">Its text, quotes and escapes resolved.</param>
/// <param name="Quoted">Whether it was quoted, or a block of text: never a number then.</param>
internal sealed record ScalarNode(FilePlace Place, string Text, bool Quoted) : PositionedNode(Place)
{
    /// <inheritdoc />
    public override int Weight => 1;

    /// <inheritdoc />
    public override string KindInWords => IsNull ? "nothing" : $"'{Shortened(Text)}'";

    /// <summary>Whether nothing was written: empty, ~ or null.</summary>
    public bool IsNull => !Quoted && Text is "" or "~" or "null" or "Null" or "NULL";

    private static string Shortened(string text)
    {
        string line = string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c));
        return line.Length <= 40 ? line : line[..37] + "...";
    }
}

/// <summary>Something that could not be read and has been told: nothing more is said about it.</summary>
internal sealed record UnreadableNode(FilePlace Place) : PositionedNode(Place)
{
    /// <inheritdoc />
    public override int Weight => 1;

    /// <inheritdoc />
    public override string KindInWords => "something unreadable";
}

/// <summary>A list.</summary>
internal sealed record ListNode(FilePlace Place, ImmutableArray<PositionedNode> Items) : PositionedNode(Place)
{
    /// <inheritdoc />
    public override int Weight { get; } = 1 + Items.Sum(item => item.Weight);

    /// <inheritdoc />
    public override string KindInWords => $"a list of {Items.Length}";
}

/// <summary>A mapping, in file order, without duplicates.</summary>
internal sealed record MappingNode(FilePlace Place, ImmutableArray<MappingEntry> Entries) : PositionedNode(Place)
{
    /// <inheritdoc />
    public override int Weight { get; } = 1 + Entries.Sum(entry => 1 + entry.Value.Weight);

    /// <inheritdoc />
    public override string KindInWords => "a mapping";

    /// <summary>The value at a key, or null.</summary>
    public PositionedNode? Find(string key) => Entries.FirstOrDefault(entry => entry.Key.Text == key)?.Value;
}

/// <summary>A key with its value.</summary>
internal sealed record MappingEntry(ScalarNode Key, PositionedNode Value);
