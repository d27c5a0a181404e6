using System.Collections.Immutable;
using ShellForge.Formats.Soup;
using ShellForge.Formats.Stl;
using ShellForge.Formats.ThreeMf;
using ShellForge.Geometry.Solids;
using ShellForge.Sweep.Folder;
using ShellForge.Sweep.Rows;

namespace ShellForge.Sweep.Index;

/// <summary>
/// The plates of a batch as 3MF files, put together from the STL files in the variants' folders, one plate after the other. A plate that is
/// there already is left as it is; one that no longer belongs to the batch goes.
/// </summary>
public static class BatchPlates
{
    /// <summary>Name of their folder.</summary>
    public const string Folder = "plates";

    /// <summary>Writes the plates of one of each variant that can be printed.</summary>
    /// <param name="folder">The sweep's folder.</param>
    /// <param name="plates">What lies on them.</param>
    /// <returns>How many plates there are.</returns>
    /// <exception cref="IOException">A variant has no STL of a part, or the plates' folder is a link.</exception>
    internal static int Write(SweepFolder folder, ImmutableArray<FilledPlate> plates)
    {
        folder.RefuseLink(Folder);
        foreach (FilledPlate plate in plates)
        {
            string name = Path.Combine(Folder, plate.File);
            if (!folder.Has(name))
            {
                PrintPlate printed = Printed(folder, plate);
                folder.Appear(name, stream => ThreeMfWriter.Write(stream, Path.GetFileNameWithoutExtension(plate.File), printed));
            }
        }

        folder.RemoveOthers(Folder, FilledPlate.IsFile, plates.Select(plate => plate.File).ToHashSet(StringComparer.Ordinal));
        return plates.Length;
    }

    private static PrintPlate Printed(SweepFolder folder, FilledPlate plate)
    {
        ImmutableArray<PlacedJob> jobs =
        [
            .. plate.Jobs.Select(placed => new PlacedJob(
                new PrintJob(placed.Job.Name, [.. placed.Job.Parts.Select(part => Body(folder, placed.Job.Row, part))]), placed.Shift)),
        ];
        return new PrintPlate(jobs, PlateLayout.Filaments(jobs.Select(placed => placed.Job)));
    }

    private static PrintBody Body(SweepFolder folder, VariantRow row, PartFigures part)
    {
        string name = $"{part.Name}-{row.Code}";
        string file = Path.Combine(row.Folder, $"{name}.stl");
        SoupFile? soup = folder.Has(file) ? StlReader.Read(folder.Read(file) ?? []) : null;
        Mesh mesh = (soup is { Faults.IsEmpty: true, Bodies: [var body] } ? body.Triangles.ToLatticeMesh() : null)
            ?? throw new IOException(
                soup is null
                    ? $"{file} is not there, and plates are put together from such files: run the sweep with --formats stl"
                    : $"{file} is not as it was written: delete the folder {row.Folder} and run the sweep again");
        return new PrintBody(name, mesh, new PrintFilament(part.Filament, part.Colour));
    }
}
