using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Overriding;

/// <summary>
/// A value that stands in place of one in the file: <c>housing.walls=4</c>, <c>board.parts[J1].past-edge=1.2</c>,
/// <c>board.holes[0].diameter=3.2</c>, <c>board.holes[+]={circle: 84, count: 4, diameter: 2.7}</c>. The value is YAML.
/// </summary>
public sealed class SetOverride
{
    private readonly string _text;

    private SetOverride(string text) => _text = text;

    /// <summary>Takes an override as it was typed. It is looked at when a file is read, so that its faults are told with the file's.</summary>
    public static SetOverride Parse(string text) => new(text);

    /// <summary>As it was typed.</summary>
    public override string ToString() => _text;

    /// <summary>The tree with the value in its place; the tree as it was when that cannot be done, which then has been told.</summary>
    internal PositionedNode Applied(PositionedNode root, int number, DiagnosticSink sink)
    {
        string file = string.Create(CultureInfo.InvariantCulture, $"--set {number}");
        int equals = _text.IndexOf('=', StringComparison.Ordinal);
        var place = new FilePlace(file, 1, 1);
        if (equals <= 0)
        {
            sink.Error(place, "bad-override", $"'{_text}' has no path and value", "expected path=value, such as housing.walls=4");
            return root;
        }

        string value = _text[(equals + 1)..];
        PositionedNode? node = value.Trim().Length == 0
            ? new ScalarNode(place with { Column = equals + 2 }, "", false)
            : YamlTreeReader.Read(file, value, sink, equals + 2);
        ImmutableArray<PathStep>? path = PathStep.Parse(_text[..equals], place, sink);
        return node is null || path is null ? root : new TreePatch(sink).With(root, path.Value, node);
    }
}
