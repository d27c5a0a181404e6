namespace ShellForge.Sweep.Folder;

/// <summary>Files that one process at a time holds; the system lets go of them when it ends, however that is.</summary>
public static class FileLock
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(50);

    /// <summary>Waits until nobody else holds a file, and holds it until it is disposed of.</summary>
    /// <param name="path">The file; it is made where it is not there.</param>
    /// <param name="longest">How long to wait.</param>
    /// <exception cref="IOException">Somebody else holds it for longer, or it can't be made.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written to, or is a link.</exception>
    public static FileStream Waited(string path, TimeSpan longest)
    {
        if (Links.IsLink(path))
        {
            throw new UnauthorizedAccessException($"{path} is a link, and no file is locked through one: remove it");
        }

        for (TimeSpan waited = TimeSpan.Zero; ; waited += Pause)
        {
            try
            {
                return new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            }
            catch (IOException) when (waited < longest && File.Exists(path))
            {
                Thread.Sleep(Pause);
            }
        }
    }
}
