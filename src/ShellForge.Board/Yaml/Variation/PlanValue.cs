using System.Collections.Immutable;
using System.Text;
using ShellForge.Board.Description;
using ShellForge.Board.Yaml.Overriding;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.Variation;

/// <summary>A value that a plan gives to a path of the board file, with the place where the plan says it.</summary>
public sealed class PlanValue
{
    private readonly PositionedNode _node;

    internal PlanValue(PositionedNode node)
    {
        _node = node;
        Text = Written(node);
        Place = node.Place;
    }

    /// <summary>The value as YAML on one line, the same for all ways of writing it: <c>petg-black</c>, <c>{part: J1}</c>.</summary>
    public string Text { get; }

    /// <summary>The value as people say it: a word or number without quotes.</summary>
    public string Raw => _node is ScalarNode scalar ? scalar.Text : Text;

    /// <summary>Where the plan says it.</summary>
    public FilePlace Place { get; }

    /// <summary>The number, where the value is one; a length may carry its unit.</summary>
    public double? Number => _node is ScalarNode && NumberText.TryLength(Text, out double number) ? number : null;

    /// <summary>Puts the value into the board file at a path.</summary>
    /// <param name="path">A path as <c>--set</c> takes it.</param>
    /// <param name="at">Where the plan names the path.</param>
    public SetOverride At(string path, FilePlace at) => SetOverride.Of(path, at, _node, Text);

    /// <summary>A value made of a text, such as a derived name.</summary>
    /// <param name="text">Plain text, or YAML where it reads as a list or mapping.</param>
    /// <param name="place">Where the plan says how it is made.</param>
    public static PlanValue Of(string text, FilePlace place) => new(new ScalarNode(place, text, false));

    private static string Written(PositionedNode node) => node switch
    {
        ScalarNode scalar => Scalar(scalar),
        ListNode list => $"[{string.Join(", ", list.Items.Select(Written))}]",
        MappingNode mapping => $"{{{string.Join(", ", mapping.Entries.Select(e => $"{Scalar(e.Key)}: {Written(e.Value)}"))}}}",
        _ => "",
    };

    private static string Scalar(ScalarNode scalar)
    {
        bool plain = scalar.Text.Length > 0 && scalar.Text.Trim() == scalar.Text
            && !scalar.Text.Any(
                c => char.IsControl(c)
                    || c is '{' or '}' or '[' or ']' or ',' or '"' or '#' or ':' or '&' or '*' or '!' or '|' or '>' or '%' or '@' or '`'
                        or '\'')
            && !(scalar.Quoted && (NumberText.TryNumber(scalar.Text, out _) || scalar.Text is "true" or "false" or "null" or "~"));
        if (plain || scalar.IsNull)
        {
            return scalar.Text;
        }

        var text = new StringBuilder("\"");
        foreach (char c in scalar.Text)
        {
            text.Append(c is '"' or '\\' ? $"\\{c}" : char.IsControl(c) ? " " : c.ToString());
        }

        return text.Append('"').ToString();
    }
}

/// <summary>A path of the board file with the value that a plan gives it.</summary>
/// <param name="Path">The path, as <c>--set</c> takes it.</param>
/// <param name="At">Where the plan names the path.</param>
/// <param name="Value">The value.</param>
public sealed record PlanSetting(string Path, FilePlace At, PlanValue Value)
{
    /// <summary>The setting as a reader of board files takes it.</summary>
    public SetOverride Override => Value.At(Path, At);
}

/// <summary>Something that a plan varies: its steps, each of which sets one path or several together.</summary>
/// <param name="Paths">The paths, in the order of the plan.</param>
/// <param name="Steps">What each step sets, in the order of the paths; at least one step.</param>
public sealed record PlanAxis(ImmutableArray<string> Paths, ImmutableArray<ImmutableArray<PlanSetting>> Steps);
