using System.Collections.Immutable;
using ShellForge.Board.Diagnostics;
using ShellForge.Checks.Sliced;
using ShellForge.Formats.Gcode;

namespace ShellForge.Cli.Reading;

/// <summary>The maker's G-code as it was read.</summary>
/// <param name="Files">The files.</param>
/// <param name="Diagnostics">Why files can't be used.</param>
internal sealed record SlicedFiles(ImmutableArray<SlicedFile> Files, ImmutableArray<Diagnostic> Diagnostics)
{
    private const int MostFiles = 100;

    /// <summary>Reads files.</summary>
    /// <exception cref="IOException">One can't be read, or there are too many.</exception>
    public static SlicedFiles Read(IReadOnlyList<string> names, Workbench bench)
    {
        if (names.Count > MostFiles)
        {
            throw new IOException($"--gcode: more than {MostFiles} files");
        }

        var files = ImmutableArray.CreateBuilder<SlicedFile>();
        var wrong = ImmutableArray.CreateBuilder<Diagnostic>();
        foreach (string name in names)
        {
            using Stream stream = TextFile.Open(bench.FullPath(name), name);
            GcodeReading reading = GcodeReader.Read(stream, bench.Cancel);
            if (reading.File is { } file)
            {
                files.Add(new SlicedFile(Path.GetFileName(name), file));
            }
            else
            {
                wrong.Add(new Diagnostic(
                    name, (int)Math.Min(reading.Fault!.Line, int.MaxValue), 1, "not-gcode", DiagnosticSeverity.Error, reading.Fault.Message,
                    "--gcode takes what a slicer writes for the printer"));
            }
        }

        return new SlicedFiles(files.ToImmutable(), wrong.ToImmutable());
    }
}
