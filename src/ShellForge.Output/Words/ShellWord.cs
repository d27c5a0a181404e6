namespace ShellForge.Output.Words;

/// <summary>
/// Names within a command that is shown to be copied: one word each, whatever they say, so that a shell runs nothing of them.
/// </summary>
public static class ShellWord
{
    /// <summary>A name as a shell takes it for one word.</summary>
    /// <param name="name">The name.</param>
    public static string Of(string name) =>
        name.Length > 0 && name.All(c => char.IsAsciiLetterOrDigit(c) || c is '.' or '_' or '-' or '/' or '+' or ',')
            ? name
            : "'" + name.Replace("'", "'\\''", StringComparison.Ordinal) + "'";

    /// <summary>The same for a file or folder, whose name could be taken for an option.</summary>
    /// <param name="path">Its name.</param>
    public static string OfPath(string path) => Of(path.StartsWith('-') ? "./" + path : path);
}
