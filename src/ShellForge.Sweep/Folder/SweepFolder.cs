using ShellForge.Board.Files;
using ShellForge.Sweep.Rows;
using ShellForge.Sweep.Variants;

namespace ShellForge.Sweep.Folder;

/// <summary>
/// A sweep's folder: a folder a variant, and what is known of the finished ones. Any number of processes may work in it at once, on this
/// machine and on others that see the folder.
/// </summary>
public sealed class SweepFolder : IDisposable
{
    // Folding writes one file; whoever takes longer is stuck.
    private static readonly TimeSpan LongestFold = TimeSpan.FromSeconds(30);

    // No part of a housing has a tenth of that.
    private const long LargestFile = 1L << 30;

    private readonly RowStore _rows = new();
    private (string Own, (long, DateTime) Rows)[] _joinedWriters = [];

    private SweepFolder(string root, ListingHead head) => (Root, Head) = (root, head);

    /// <summary>Full name of the folder.</summary>
    public string Root { get; }

    /// <summary>What the list of variants says of the whole.</summary>
    public ListingHead Head { get; }

    /// <summary>How many variants the list has.</summary>
    public int Count => Head.Count;

    private string State => Path.Combine(Root, SweepPaths.State);

    private string ListPath => Path.Combine(State, SweepPaths.Listing);

    /// <summary>
    /// Opens a folder for an order: notes its variants, clears away what killed writers left unfinished, and finds what is done.
    /// </summary>
    /// <param name="root">Full name of the folder; made when it is not there.</param>
    /// <param name="order">The order.</param>
    /// <param name="cancel">Stops the opening: a long list takes a while.</param>
    /// <exception cref="SweepTakenOverException">Another plan is running in the folder.</exception>
    /// <exception cref="IOException">The folder is a link.</exception>
    /// <exception cref="OperationCanceledException"><paramref name="cancel"/> asked for it.</exception>
    public static SweepFolder Open(string root, SweepOrder order, CancellationToken cancel = default)
    {
        ListingHead head = Listing.HeadOf(order, cancel);
        var folder = new SweepFolder(root, head);
        RefuseLinks(root);
        Directory.CreateDirectory(folder.State);
        if (!Listing.IsOf(folder.ListPath, head))
        {
            if (WriterFolders.In(folder.State).Any(WriterFolders.IsAlive))
            {
                throw new SweepTakenOverException(
                    "another plan is running in this folder; wait for its end, or give this one a folder of its own");
            }

            using SweepWriter writer = SweepWriter.Take(root, () => true);
            Listing.Write(folder.ListPath, writer.Aside(SweepPaths.Listing), order, head);
        }

        folder.Find();
        return folder;
    }

    /// <summary>Opens a folder by the list that a run left in it; null where there is none.</summary>
    /// <exception cref="IOException">The folder is a link.</exception>
    public static SweepFolder? OpenFound(string root)
    {
        RefuseLinks(root);
        ListingHead? found = Listing.Read(Path.Combine(root, SweepPaths.State, SweepPaths.Listing));
        if (found is null)
        {
            return null;
        }

        var folder = new SweepFolder(root, found);
        folder.Find();
        return folder;
    }

    /// <summary>The variants of the list, in their order.</summary>
    /// <exception cref="IOException">The list has been spoiled.</exception>
    public IEnumerable<ListedVariant> Listed() => Listing.Lines(ListPath, Head.Count);

    /// <summary>
    /// The row of a variant that is finished: it is known, and the variant's folder is there where it has one. A folder without a row, from
    /// a writer killed between the two, brings its row along.
    /// </summary>
    /// <param name="variant">The variant.</param>
    /// <param name="withFiles">Whether it has a folder.</param>
    /// <returns>The row; null where the variant is not finished.</returns>
    public VariantRow? Finished(ListedVariant variant, bool withFiles) =>
        RowOf(variant) is { } row && (!withFiles || row.Housing is null || HasFilesOf(row)) ? row : null;

    /// <summary>Whether a variant is finished.</summary>
    /// <param name="variant">The variant.</param>
    /// <param name="withFiles">Whether it has a folder.</param>
    public bool IsFinished(ListedVariant variant, bool withFiles) => Finished(variant, withFiles) is not null;

    /// <summary>Whether the name of a variant's folder is taken by what no sweep wrote, so that the variant can't appear.</summary>
    public bool IsTaken(Variant variant) => VariantFolder.IsTaken(Path.Combine(Root, variant.Folder));

    /// <summary>The row of a folder that somebody else finished meanwhile; null where it is not the one.</summary>
    public VariantRow? FinishedMeanwhile(string folder, string key) =>
        VariantFolder.RowOf(Path.Combine(Root, folder)) is { } row && row.Key == key ? row : null;

    /// <summary>The row of a variant; null where it is not finished.</summary>
    public VariantRow? RowOf(ListedVariant variant) => _rows.Read(variant);

    /// <summary>All rows of the list that are there, in its order, one after the other.</summary>
    public IEnumerable<VariantRow> Rows() => Listed().Select(RowOf).OfType<VariantRow>();

    /// <summary>Variants of the list whose rows no run has written yet.</summary>
    public IEnumerable<ListedVariant> Missing() => Listed().Where(variant => RowOf(variant) is null);

    /// <summary>Names of folders of an earlier plan: variants of ours that the list no longer has.</summary>
    public IReadOnlyList<string> Outdated()
    {
        HashSet<string> listed = [.. Listed().Select(variant => variant.Folder)];
        return [.. Directory.EnumerateDirectories(Root)
            .Where(path => !listed.Contains(Path.GetFileName(path)) && VariantNames.IsFolder(Path.GetFileName(path))
                && File.Exists(Path.Combine(path, SweepPaths.Record)))
            .Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal)];
    }

    /// <summary>
    /// Opens a folder by its list and joins the rows of all writers into one file, in the list's order. What another living process still
    /// writes stays where it is; what writers left that no longer live is cleared away when the folder is closed. Only one process at a
    /// time joins.
    /// </summary>
    /// <param name="root">Full name of the folder.</param>
    /// <returns>The folder with every row there is; null where no sweep has been started.</returns>
    /// <exception cref="IOException">Another process joins and does not end, or the folder is a link.</exception>
    public static SweepFolder? OpenJoined(string root)
    {
        RefuseLinks(root);
        string state = Path.Combine(root, SweepPaths.State);
        if (!File.Exists(Path.Combine(state, SweepPaths.Listing)))
        {
            return null;
        }

        using FileStream only = FileLock.Waited(Path.Combine(state, SweepPaths.FoldLock), LongestFold);

        // Who is dead now has written its last row: everything read from here on has all rows of the dead.
        (string, (long, DateTime))[] dead =
            [.. WriterFolders.In(state).Where(own => !WriterFolders.IsAlive(own)).Select(own => (own, WriterFolders.RowsOf(own)))];
        SweepFolder? folder = OpenFound(root);
        if (folder is not null)
        {
            folder.WriteRows();
            folder._joinedWriters = dead;
        }

        return folder;
    }

    /// <summary>Whether a variant has files of its own, and not a row alone.</summary>
    public bool HasFilesOf(VariantRow row) => row.Housing is not null && File.Exists(Path.Combine(Root, row.Folder, SweepPaths.Record));

    /// <summary>Whether a file is there.</summary>
    /// <param name="name">Its name within the folder.</param>
    internal bool Has(string name) => File.Exists(Path.Combine(Root, name));

    /// <summary>The bytes of a file that is there.</summary>
    /// <param name="name">Its name within the folder.</param>
    /// <returns>The bytes; null where the file is longer than any of ours.</returns>
    internal byte[]? Read(string name) => BoundedFile.Read(Path.Combine(Root, name), LargestFile);

    /// <summary>Refuses a folder beside the variants that is a link.</summary>
    /// <param name="within">Name of the folder.</param>
    /// <exception cref="IOException">It is one.</exception>
    internal void RefuseLink(string within) => Links.RefuseFolder(Path.Combine(Root, within));

    /// <summary>Removes files of a folder beside the variants that are not wanted any more.</summary>
    /// <param name="within">Name of the folder.</param>
    /// <param name="isOurs">Which files are ours, by name.</param>
    /// <param name="wanted">Names of those that stay.</param>
    internal void RemoveOthers(string within, Func<string, bool> isOurs, IReadOnlySet<string> wanted)
    {
        RefuseLink(within);
        string path = Path.Combine(Root, within);
        foreach (string file in Directory.Exists(path) ? Directory.GetFiles(path) : [])
        {
            if (isOurs(Path.GetFileName(file)) && !wanted.Contains(Path.GetFileName(file)))
            {
                File.Delete(file);
            }
        }
    }

    /// <summary>Writes a file beside the variants: made aside, then renamed; left as it is where it would be the same.</summary>
    internal void Appear(string name, Action<Stream> write)
    {
        using SweepWriter writer = TakeWriter();
        string aside = writer.Aside(Path.GetFileName(name));
        using (FileStream stream = File.Create(aside))
        {
            write(stream);
        }

        string final = Path.Combine(Root, name);
        Links.RefuseFolder(Path.GetDirectoryName(final)!);
        Directory.CreateDirectory(Path.GetDirectoryName(final)!);
        if (!File.Exists(final) || Links.IsLink(final) || !SameBytes(aside, final))
        {
            File.Move(aside, final, overwrite: true);
        }
    }

    /// <inheritdoc />
    public void Dispose()
    {
        _rows.Dispose();
        (string, (long, DateTime))[] joined = _joinedWriters;
        _joinedWriters = [];
        if (joined.Length > 0)
        {
            RemoveJoined(joined);
        }
    }

    internal SweepWriter TakeWriter() => SweepWriter.Take(Root, () => Listing.Read(ListPath)?.Digest == Head.Digest);

    // One at a time, as the joining itself: whoever else joins must still find what it counted on.
    private void RemoveJoined((string Own, (long, DateTime) Rows)[] writers)
    {
        try
        {
            using FileStream only = FileLock.Waited(Path.Combine(State, SweepPaths.FoldLock), LongestFold);
            HashSet<string> there = [.. WriterFolders.In(State)];
            foreach ((string own, (long, DateTime) rows) in writers.Where(writer => there.Contains(writer.Own)))
            {
                WriterFolders.Remove(own, rows);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // What is left is joined once more the next time.
        }
    }

    private static void RefuseLinks(string root)
    {
        Links.RefuseFolder(root);
        Links.RefuseFolder(Path.Combine(root, SweepPaths.State));
    }

    private void WriteRows()
    {
        Appear(Path.Combine(SweepPaths.State, SweepPaths.Rows), all =>
        {
            foreach (ListedVariant variant in Listed())
            {
                if (RowOf(variant) is { } row)
                {
                    all.Write(RowStore.Line(row));
                }
            }
        });
    }

    private void Find()
    {
        _rows.Add(Path.Combine(State, SweepPaths.Rows));
        foreach (string own in WriterFolders.In(State))
        {
            _rows.Add(Path.Combine(own, SweepPaths.WriterRows));
            if (!WriterFolders.IsAlive(own))
            {
                WriterFolders.ClearHalfMade(own);
            }
        }
    }

    private static bool SameBytes(string one, string other)
    {
        using FileStream a = File.OpenRead(one);
        using Stream b = BoundedFile.Open(other);
        return a.Length == b.Length
            && System.Security.Cryptography.SHA256.HashData(a).AsSpan().SequenceEqual(System.Security.Cryptography.SHA256.HashData(b));
    }
}
