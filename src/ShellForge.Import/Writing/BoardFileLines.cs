using System.Text;
using ShellForge.Board.Yaml;

namespace ShellForge.Import.Writing;

/// <summary>Collects the lines of a board file: values with their source as a comment, comments, and lines still to do.</summary>
internal sealed class BoardFileLines
{
    private const int CommentColumn = 60;

    private readonly StringBuilder _text = new();

    public void Value(int indent, string yaml, string source = "")
    {
        var line = new StringBuilder(new string(' ', indent)).Append(yaml);
        if (source.Length > 0)
        {
            line.Append(' ', Math.Max(2, CommentColumn - line.Length)).Append("# ").Append(YamlText.Comment(source));
        }

        _text.Append(line).Append('\n');
    }

    public void Remark(int indent, string comment) =>
        _text.Append(' ', indent).Append("# ").Append(YamlText.Comment(comment)).Append('\n');

    public void Todo(int indent, string path, string what) =>
        _text.Append(' ', indent).Append(new TodoLine(path, YamlText.Comment(what)).Text).Append('\n');

    public void Blank() => _text.Append('\n');

    public override string ToString() => _text.ToString();
}
