using System.Globalization;

namespace ShellForge.Sweep.Folder;

/// <summary>
/// The writers' folders of a sweep: only real folders with a name that <see cref="SweepWriter"/> gives. Others are somebody else's, and a
/// link could lead to anything. What is cleared away is cleared while the writer's lock is held, so no writer can come to life meanwhile.
/// </summary>
internal static class WriterFolders
{
    /// <summary>Writers that one sweep can have.</summary>
    public const int Most = 100_000;

    /// <summary>The name of a writer's folder.</summary>
    /// <param name="number">Which writer, from 1.</param>
    public static string Name(int number) => string.Create(CultureInfo.InvariantCulture, $"{SweepPaths.Writer}{number:0000}");

    /// <summary>Full names of the writers' folders, in order.</summary>
    /// <param name="state">The folder that they lie in.</param>
    public static IEnumerable<string> In(string state) => Links.IsRealFolder(state)
        ? Directory.EnumerateDirectories(state, SweepPaths.Writer + "*").Where(IsOurs).Order(StringComparer.Ordinal)
        : [];

    /// <summary>What the rows of a writer's folder are known by: it changes with every row.</summary>
    public static (long Length, DateTime Written) RowsOf(string own) =>
        new FileInfo(Path.Combine(own, SweepPaths.WriterRows)) is { Exists: true } rows ? (rows.Length, rows.LastWriteTimeUtc) : default;

    /// <summary>Whether the writer of a folder still lives, as far as the file system's locks tell.</summary>
    public static bool IsAlive(string own)
    {
        try
        {
            using FileStream? held = Held(own, FileMode.Open);
            return held is null;
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return false;
        }
    }

    /// <summary>Removes the variants that a killed writer left half made; its rows stay until they are joined.</summary>
    public static void ClearHalfMade(string own)
    {
        try
        {
            using FileStream? held = Held(own, FileMode.OpenOrCreate);
            if (held is not null)
            {
                RemoveFolders(own);
            }
        }
        catch (DirectoryNotFoundException)
        {
            // Somebody else clears as well.
        }
    }

    /// <summary>Removes the folder of a writer that is dead; leaves it where a new one has taken its name.</summary>
    /// <param name="own">The folder.</param>
    /// <param name="rows">What <see cref="RowsOf"/> said of it when its rows were joined.</param>
    public static void Remove(string own, (long Length, DateTime Written) rows)
    {
        try
        {
            string locked = Path.Combine(own, SweepPaths.Lock);
            using (FileStream? held = Held(own, FileMode.OpenOrCreate))
            {
                if (held is null || RowsOf(own) != rows)
                {
                    return;
                }

                RemoveFolders(own);
                foreach (string file in Directory.GetFiles(own).Where(file => file != locked))
                {
                    File.Delete(file);
                }
            }

            // A writer that made its lock in this moment keeps its folder: one that isn't empty is not removed.
            File.Delete(locked);
            Directory.Delete(own);
        }
        catch (IOException)
        {
            // Somebody else clears as well, or lives there.
        }
    }

    private static bool IsOurs(string path)
    {
        string name = Path.GetFileName(path);
        return int.TryParse(name.AsSpan(SweepPaths.Writer.Length), NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            && number is > 0 and < Most && name == Name(number) && !Links.IsLink(path);
    }

    // Of links the link goes, never what it leads to.
    private static void RemoveFolders(string own)
    {
        foreach (string folder in Directory.GetDirectories(own))
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    // The writer's lock; null where somebody has it, or it is a link.
    private static FileStream? Held(string own, FileMode mode)
    {
        string path = Path.Combine(own, SweepPaths.Lock);
        try
        {
            return Links.IsLink(path) ? null : new FileStream(path, mode, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException e) when (e is not (FileNotFoundException or DirectoryNotFoundException))
        {
            return null;
        }
    }
}
