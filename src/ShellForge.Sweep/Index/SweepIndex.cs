using ShellForge.Sweep.Folder;

namespace ShellForge.Sweep.Index;

/// <summary>Writes a sweep's index: a page, a table and a document, each complete before it appears.</summary>
public static class SweepIndex
{
    /// <summary>Name of the page.</summary>
    public const string PageFile = "index.html";

    /// <summary>Writes the index of what is finished.</summary>
    /// <param name="folder">The sweep's folder.</param>
    public static void Write(SweepFolder folder)
    {
        IndexSurvey survey = IndexSurvey.Of(folder.Rows());
        var batch = Batch.Of(folder.Rows(), folder.Head.SparesPercent);
        folder.Appear("index.csv", stream => IndexCsv.Write(stream, survey, folder.Rows()));
        folder.Appear("index.json", stream => IndexJson.Write(stream, folder, batch));
        folder.Appear(PageFile, stream => IndexPage.Write(stream, new IndexContent(folder.Head.Title, survey, batch, folder)));
    }
}

/// <summary>What the page shows.</summary>
internal sealed record IndexContent(string Title, IndexSurvey Survey, Batch Batch, SweepFolder Folder);
