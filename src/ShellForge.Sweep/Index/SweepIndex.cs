using System.Collections.Immutable;
using ShellForge.Sweep.Folder;

namespace ShellForge.Sweep.Index;

/// <summary>Writes a sweep's index: a page, a table and a document, each complete before it appears.</summary>
public static class SweepIndex
{
    /// <summary>Name of the page.</summary>
    public const string PageFile = "index.html";

    private const string TableFile = "index.csv";
    private const string DocumentFile = "index.json";

    /// <summary>Names of files of others in a folder, that an index of a sweep would replace; none where a sweep has been in it.</summary>
    /// <param name="root">Full name of the folder.</param>
    public static string[] Others(string root)
    {
        bool isOurs = Listing.Read(Path.Combine(root, SweepPaths.State, SweepPaths.Listing)) is not null
            || (File.Exists(Path.Combine(root, DocumentFile)) && IndexJson.IsOurs(Path.Combine(root, DocumentFile)));
        return isOurs ? [] : [.. new[] { TableFile, DocumentFile, PageFile }.Where(name => Path.Exists(Path.Combine(root, name)))];
    }

    /// <summary>Writes the index of what is finished.</summary>
    /// <param name="folder">The sweep's folder.</param>
    /// <param name="plates">Whether the plates of the batch are written as 3MF files.</param>
    /// <returns>How many plates were written.</returns>
    /// <exception cref="IOException">A variant has no STL of a part that plates are put together from.</exception>
    public static int Write(SweepFolder folder, bool plates = false)
    {
        IndexSurvey survey = IndexSurvey.Of(folder.Rows());
        var batch = Batch.Of(folder.Rows(), folder.Head.SparesPercent);
        int written = plates ? BatchPlates.Write(folder, batch.Plates) : 0;
        ImmutableArray<BatchPlate> told = [.. batch.Plates.Select(plate => plate.Told(folder))];
        folder.Appear(TableFile, stream => IndexCsv.Write(stream, survey, folder.Rows()));
        folder.Appear(DocumentFile, stream => IndexJson.Write(stream, folder, batch, told));
        folder.Appear(PageFile, stream => IndexPage.Write(stream, new IndexContent(folder.Head.Title, survey, batch, told, folder)));
        return written;
    }
}

/// <summary>What the page shows.</summary>
internal sealed record IndexContent(
    string Title, IndexSurvey Survey, Batch Batch, ImmutableArray<BatchPlate> Plates, SweepFolder Folder);
