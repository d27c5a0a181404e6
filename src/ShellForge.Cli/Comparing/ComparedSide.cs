using System.Collections.Immutable;
using ShellForge.Board.Diagnostics;
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
            return new ComparedSide(
                OfFolder(path) ?? throw new IOException($"{name}: there is no report of a housing in this folder; make writes one"), []);
        }

        BoardSource source = BoardSource.Read(name, overrides, bench);
        if (source.File is null)
        {
            return new ComparedSide(null, source.Diagnostics);
        }

        DrawnFiles? drawn = null;
        MadeHousing made = HousingPipeline.Make(source.File, beside: housing => drawn = DrawnFiles.Of(housing, [OutputFormat.Stl]),
            cancel: bench.Cancel);
        return new ComparedSide(
            HousingState.Read(ReportJson.Bytes(HousingFiles.Told(drawn!, made.Report)),
                file => drawn!.Asked.FirstOrDefault(mesh => mesh.Name == file)?.Content), []);
    }

    /// <summary>What a folder's report states; null where there is none of ours.</summary>
    public static HousingState? OfFolder(string folder)
    {
        byte[]? report = Bytes(Path.Combine(folder, HousingFiles.ReportFile));
        return report is null ? null : HousingState.Read(report, file => Bytes(Path.Combine(folder, file)));
    }

    private static byte[]? Bytes(string path) =>
        new FileInfo(path) is { Exists: true, Length: < LargestFile } ? File.ReadAllBytes(path) : null;
}
