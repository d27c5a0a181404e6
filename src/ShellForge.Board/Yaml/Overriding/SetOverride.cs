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
    private readonly Given? _given;

    private SetOverride(string text, Given? given = null) => (_text, _given) = (text, given);

    /// <summary>
    /// Takes an override as it was typed. It is looked at when a file is read, so that its faults are told with the file's.
    /// </summary>
    public static SetOverride Parse(string text) => new(text);

    /// <summary>An override that another file gives, so that its faults are told at the place where that file says it.</summary>
    internal static SetOverride Of(string path, FilePlace at, PositionedNode value, string text) =>
        new($"{path}={text}", new Given(path, at, value));

    /// <summary>Whether another file gives it, so that it is none of the command line's.</summary>
    internal bool IsOfFile => _given is not null;

    /// <summary>As it was typed.</summary>
    public override string ToString() => _text;

    /// <summary>The tree with the value in its place; the tree as it was when that cannot be done, which then has been told.</summary>
    internal PositionedNode Applied(PositionedNode root, int number, DiagnosticSink sink)
    {
        if (_given is { } given)
        {
            return PathStep.Parse(given.Path, given.At, sink) is { } known ? new TreePatch(sink).With(root, known, given.Value) : root;
        }

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

    private sealed record Given(string Path, FilePlace At, PositionedNode Value);
}
