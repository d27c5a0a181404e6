using ShellForge.Board.Yaml.Forms;

namespace ShellForge.Board.Schema;

/// <summary>
/// What makes an editor complete and check board files: a schema file beside the board file, named with the version of the format, and a
/// comment at the board file's top that names it.
/// </summary>
public static class EditorSchema
{
    /// <summary>Name of the schema file.</summary>
    public static string FileName { get; } = BoardFileForm.Format.Replace("/", "-board-", StringComparison.Ordinal) + ".schema.json";

    /// <summary>What the comment says behind its mark.</summary>
    public static string Comment { get; } = $"yaml-language-server: $schema={FileName}";
}
