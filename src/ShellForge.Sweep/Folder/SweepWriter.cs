using ShellForge.Output.Files;
using ShellForge.Sweep.Rows;

namespace ShellForge.Sweep.Folder;

/// <summary>
/// One process that writes into a sweep's folder. It has a folder of its own in which everything is made; a variant appears under its
/// name by one rename, complete. It holds a lock as long as it lives, so that others know whether what it left may be cleared away.
/// </summary>
internal sealed class SweepWriter : IDisposable
{
    // Between two looks another writer can take a name or a folder; it can't do so for ever.
    private const int Tries = 5;

    private readonly string _root;
    private readonly string _own;
    private readonly FileStream _lock;
    private readonly Func<bool> _isStillOurs;
    private readonly Lock _rowsGate = new();
    private FileStream? _rows;

    private SweepWriter(string root, string own, FileStream @lock, Func<bool> isStillOurs) =>
        (_root, _own, _lock, _isStillOurs) = (root, own, @lock, isStillOurs);

    /// <summary>Takes a writer's folder that no one else has.</summary>
    /// <param name="root">The sweep's folder.</param>
    /// <param name="isStillOurs">Whether the sweep's folder still belongs to the same plan.</param>
    public static SweepWriter Take(string root, Func<bool> isStillOurs)
    {
        string state = Path.Combine(root, SweepPaths.State);
        for (int i = 1; i < WriterFolders.Most; i++)
        {
            string own = Path.Combine(state, WriterFolders.Name(i));
            try
            {
                if (!Directory.Exists(own))
                {
                    Directory.CreateDirectory(own);
                    return new SweepWriter(
                        root, own,
                        new FileStream(Path.Combine(own, SweepPaths.Lock), FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None),
                                isStillOurs);
                }
            }
            catch (IOException)
            {
                // Another one was quicker.
            }
        }

        throw new IOException($"{state}: more than {WriterFolders.Most} writers");
    }

    /// <summary>Writes a finished variant: its files first, then its row.</summary>
    public void Finish(VariantRow row, IReadOnlyList<OutputFile> files)
    {
        if (!_isStillOurs())
        {
            throw new SweepTakenOverException();
        }

        if (files.Count > 0)
        {
            Appear(row, files);
        }

        Note(row);
    }

    /// <summary>Notes a row, without files.</summary>
    public void Note(VariantRow row)
    {
        byte[] line = RowStore.Line(row);
        lock (_rowsGate)
        {
            _rows ??= new FileStream(Path.Combine(_own, SweepPaths.WriterRows), FileMode.Append, FileAccess.Write,
                FileShare.ReadWrite | FileShare.Delete, 0);
            _rows.Write(line);
        }
    }

    /// <summary>Name of a file aside, in which something can be made whole before it appears.</summary>
    public string Aside(string name) => Path.Combine(_own, name);

    /// <inheritdoc />
    public void Dispose()
    {
        _rows?.Dispose();
        _lock.Dispose();
        if (_rows is null)
        {
            Directory.Delete(_own, recursive: true);
        }
    }

    private void Appear(VariantRow row, IReadOnlyList<OutputFile> files)
    {
        string made = Path.Combine(_own, row.Folder);
        Directory.CreateDirectory(made);
        foreach (OutputFile file in files)
        {
            File.WriteAllBytes(Path.Combine(made, file.Name), file.Content);
        }

        string final = Path.Combine(_root, row.Folder);
        string[] written = [.. files.Select(file => file.Name)];
        for (int i = 0; ; i++)
        {
            try
            {
                if (VariantFolder.IsThere(final))
                {
                    if (VariantFolder.KeyOf(final) == row.Key)
                    {
                        // Somebody else made the same: the same bytes.
                        Directory.Delete(made, recursive: true);
                        return;
                    }

                    if (!MakeWay(final, made, written))
                    {
                        return;
                    }
                }

                Directory.Move(made, final);
                return;
            }
            catch (IOException e) when (i < Tries && e is not FolderTakenException
                && (IsWhole(made, written) || VariantFolder.KeyOf(final) == row.Key))
            {
                // Another writer moved its own in between; look again. What has been put among others by half is not tried once more: the
                // record there is the old one, and the next run makes the variant again.
            }
        }
    }

    private static bool IsWhole(string made, string[] written) => written.All(name => File.Exists(Path.Combine(made, name)));

    // False where the new files have been put among others that stay.
    private bool MakeWay(string final, string made, string[] written)
    {
        IReadOnlyList<string> earlier = VariantFolder.FilesOf(final);
        if (VariantFolder.IsTaken(final, earlier))
        {
            throw new FolderTakenException([Path.GetFileName(final)]);
        }

        string[] outdated = [.. earlier.Except(written)];
        HashSet<string> ours = [.. written, .. outdated];
        if (Directory.EnumerateFileSystemEntries(final).Any(path => !ours.Contains(Path.GetFileName(path))))
        {
            Refill(final, made, written, outdated);
            return false;
        }

        string old = Path.Combine(_own, $"old-{Path.GetFileName(final)}");
        Directory.Move(final, old);
        Directory.Delete(old, recursive: true);
        return true;
    }

    // What the user has put beside our files stays where it is, whenever this is broken off. The record comes last: as long as it is the
    // old one, the variant counts as unfinished and is made once more.
    private static void Refill(string final, string made, string[] written, string[] outdated)
    {
        foreach (string name in written.Where(name => name != SweepPaths.Record))
        {
            File.Move(Path.Combine(made, name), Path.Combine(final, name), overwrite: true);
        }

        foreach (string name in outdated)
        {
            File.Delete(Path.Combine(final, name));
        }

        File.Move(Path.Combine(made, SweepPaths.Record), Path.Combine(final, SweepPaths.Record), overwrite: true);
        Directory.Delete(made);
    }
}
