namespace ShellForge.Board.Files;

/// <summary>
/// Reads files that anybody may have put there. Pipes and devices have a length of 0 and no end, and to open one may wait for ever: what
/// has a length of 0 is not opened at all, and of everything else no more is read than the length that was looked at.
/// </summary>
public static class BoundedFile
{
    /// <summary>Opens a file for reading, empty where the file system gives it no length.</summary>
    /// <param name="path">Full name of the file, or of a link to it.</param>
    /// <exception cref="IOException">It is not there, or can't be opened.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be read, or is a folder.</exception>
    public static Stream Open(string path) => Inside(path) is { Exists: true, Length: 0 }
        ? new MemoryStream([], writable: false)
        : new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);

    /// <summary>The bytes of a file.</summary>
    /// <param name="path">Full name of the file, or of a link to it.</param>
    /// <param name="most">How many bytes it may have.</param>
    /// <returns>The bytes; null where there is no such file, or it is longer.</returns>
    /// <exception cref="IOException">It can't be read.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be read.</exception>
    public static byte[]? Read(string path, long most)
    {
        if (!File.Exists(path))
        {
            return null;
        }

        try
        {
            using Stream stream = Open(path);
            if (stream.Length > most)
            {
                return null;
            }

            byte[] content = new byte[stream.Length];
            int read = stream.ReadAtLeast(content, content.Length, throwOnEndOfStream: false);
            return read == content.Length ? content : content[..read];
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            // Gone between the look and the opening, or a link to nothing.
            return null;
        }
    }

    // A link's own length says nothing of what it leads to.
    private static FileInfo Inside(string path)
    {
        var file = new FileInfo(path);
        return file.LinkTarget is null ? file : file.ResolveLinkTarget(returnFinalTarget: true) as FileInfo ?? file;
    }
}
