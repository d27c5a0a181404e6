using System.Collections.Immutable;
using ShellForge.Board.Diagnostics;
using ShellForge.Board.Files;
using ShellForge.Cli.Reading;
using ShellForge.Output.Files;
using ShellForge.Output.Report;
using ShellForge.Pipeline;
using ShellForge.Sweep.Comparing;

namespace ShellForge.Cli.Comparing;

/// <summary>One of two housings that are compared.</summary>
/// <param name="State">What it is; null where its board file can't be used.</param>
/// <param name="Diagnostics">What there is to say of its board file.</param>
internal sealed record ComparedSide(HousingState? State, ImmutableArray<Diagnostic> Diagnostics)
{
    private const long LargestFile = 1L << 30;

    /// <summary>Reads a folder with a report, or makes the housing of a board file in memory.</summary>
    /// <exception cref="IOException">A file can't be read, or a folder has no report.</exception>
    public static ComparedSide Read(string name, IReadOnlyList<string> overrides, Workbench bench)
    {
        string path = bench.FullPath(name);
        if (Directory.Exists(path))
        {
            return new ComparedSide(OfNamedFolder(name, bench), []);
        }

        return Of(BoardSource.Read(name, overrides, bench), bench.Cancel);
    }

    /// <summary>The housing of a board file, made in memory.</summary>
    public static ComparedSide Of(BoardSource source, CancellationToken cancel)
    {
        if (source.File is null)
        {
            return new ComparedSide(null, source.Diagnostics);
        }

        DrawnFiles? drawn = null;
        MadeHousing made = HousingPipeline.Make(
            source.File, beside: housing => drawn = DrawnFiles.OfFormats(housing, [OutputFormat.Stl]), cancel: cancel);
        return new ComparedSide(
            HousingState.Read(ReportJson.Bytes(HousingFiles.Told(drawn!, made.Report)),
                file => drawn!.Asked.FirstOrDefault(mesh => mesh.Name == file)?.Content), []);
    }

    /// <summary>What a folder's report states; null where there is none of ours.</summary>
    /// <param name="folder">The folder's full path.</param>
    /// <param name="withFiles">Whether the parts' files are read too, to be compared by their bytes.</param>
    public static HousingState? OfFolder(string folder, bool withFiles = true)
    {
        byte[]? report = Bytes(Path.Combine(folder, HousingFiles.ReportFile));
        return report is null ? null : HousingState.Read(report, file => withFiles ? Bytes(Path.Combine(folder, file)) : null);
    }

    /// <summary>What the report states of a folder that a user named.</summary>
    /// <exception cref="IOException">There is none.</exception>
    public static HousingState OfNamedFolder(string name, Workbench bench, bool withFiles = true) =>
        OfFolder(bench.FullPath(name), withFiles)
            ?? throw new IOException($"{name}: there is no report of a housing in this folder; make writes one");

    private static byte[]? Bytes(string path) => BoundedFile.Read(path, LargestFile);
}
