using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Diagnostics;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Forms;
using ShellForge.Board.Yaml.Overriding;
using ShellForge.Board.Yaml.Resolving;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml;

/// <summary>Reads board files.</summary>
public static class BoardFileReader
{
    /// <summary>
    /// Looks at the words of a board file and no further: keys, kinds and ranges of values, names of profiles. What only shows when the
    /// values meet each other is left to <see cref="Read"/>.
    /// </summary>
    /// <param name="fileName">The file as the user named it, for places.</param>
    /// <param name="text">Its text.</param>
    /// <param name="profiles">Profiles that it may name.</param>
    /// <param name="overrides">Values that stand in place of the file's.</param>
    public static ImmutableArray<Diagnostic> Words(
        string fileName, string text, ProfileLibrary profiles, IReadOnlyList<SetOverride> overrides)
    {
        var sink = new DiagnosticSink();
        PositionedNode? root = YamlTreeReader.Read(fileName, text, sink);
        if (root is not null)
        {
            BoardFileForm.Form.TryRead(Overridden(root, overrides, sink), new ReadingContext(sink, profiles), out _);
        }

        return sink.InOrder();
    }

    /// <summary>
    /// Reads a board file. All mistakes are told at once; only broken YAML syntax ends the reading at its first mistake. Time and memory
    /// are bounded whatever the text is.
    /// </summary>
    /// <param name="fileName">The file as the user named it, for places.</param>
    /// <param name="text">Its text.</param>
    /// <param name="profiles">Profiles that it may name.</param>
    /// <param name="overrides">Values that stand in place of the file's, applied in order and checked like the file.</param>
    public static BoardReadResult Read(
        string fileName, string text, ProfileLibrary profiles, IReadOnlyList<SetOverride> overrides)
    {
        var sink = new DiagnosticSink();
        PositionedNode? root = YamlTreeReader.Read(fileName, text, sink);
        root = root is null ? null : Overridden(root, overrides, sink);
        foreach (TodoLine todo in TodoLine.FindAll(text).Where(t => !overrides.Any(o => t.IsSettledBy(o.ToString()))))
        {
            sink.Warning(
                new FilePlace(fileName, todo.Line, todo.Column), Diagnostic.StillToSay, $"`{todo.Path}` is still to say: {todo.What}",
                "expected the value, and this line deleted");
        }

        BoardFile? file = null;
        if (root is not null && BoardFileForm.Form.TryRead(root, new ReadingContext(sink, profiles), out ParsedFile said))
        {
            file = new FileResolver(sink, profiles, new NodePaths(root)).Resolve(said);
        }

        ImmutableArray<Diagnostic> told = sink.InOrder();
        return new BoardReadResult(sink.HasErrors || file is null ? null : file with { Remarks = told }, told);
    }

    // Those of the command line are counted from 1, whatever a plan sets before them.
    private static PositionedNode Overridden(PositionedNode root, IReadOnlyList<SetOverride> overrides, DiagnosticSink sink)
    {
        int typed = 0;
        foreach (SetOverride one in overrides)
        {
            root = one.Applied(root, one.IsOfFile ? 0 : ++typed, sink);
        }

        return root;
    }
}

/// <summary>What came of reading a board file.</summary>
/// <param name="File">The board file; null when there was an error.</param>
/// <param name="Diagnostics">Everything there is to say about it, in the order of its places.</param>
public sealed record BoardReadResult(BoardFile? File, ImmutableArray<Diagnostic> Diagnostics);
