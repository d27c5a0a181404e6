namespace ShellForge.Sweep.Folder;

/// <summary>
/// Links among a sweep's files. A folder that came from somebody else can hold a link to anywhere, and what is written or cleared away
/// through it would be files of the user's own: where a sweep writes, no link is followed.
/// </summary>
internal static class Links
{
    /// <summary>Whether a name is a link, to whatever it leads and whether or not that is there.</summary>
    public static bool IsLink(string path) => new FileInfo(Path.TrimEndingDirectorySeparator(path)).LinkTarget is not null;

    /// <summary>Whether a name is a folder, and not a link to one.</summary>
    public static bool IsRealFolder(string path) => Directory.Exists(path) && !IsLink(path);

    /// <summary>Refuses a folder that a sweep would write into when it is a link.</summary>
    /// <exception cref="IOException">It is one.</exception>
    public static void RefuseFolder(string path)
    {
        if (IsLink(path))
        {
            throw new IOException(
                $"{path} is a link, and a sweep writes into no folder through a link: remove it, or name the folder that it leads to");
        }
    }
}
