namespace ShellForge.Sweep.Folder;

/// <summary>Names of variants' folders are taken by what no sweep wrote. It is left as it is, so those variants can't appear.</summary>
public sealed class FolderTakenException : IOException
{
    private const int MostNamed = 10;

    /// <summary>The usual words.</summary>
    public FolderTakenException()
        : this([])
    {
    }

    /// <summary>The usual words about some folders.</summary>
    /// <param name="folders">Their names.</param>
    public FolderTakenException(IReadOnlyList<string> folders)
        : this($"{string.Join(", ", folders.Take(MostNamed))}{(folders.Count > MostNamed ? " ..." : "")}: a variant belongs there, and "
            + "what is there now is from no sweep; move it away, or name another folder with -o")
    {
    }

    /// <summary>Other words.</summary>
    public FolderTakenException(string message)
        : base(message)
    {
    }

    /// <summary>Other words with a cause.</summary>
    public FolderTakenException(string message, Exception inner)
        : base(message, inner)
    {
    }
}
