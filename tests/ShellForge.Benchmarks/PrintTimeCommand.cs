using System.Diagnostics;
using System.Globalization;
using ShellForge.Board.Profiles;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.PrintTime;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Benchmarks;

/// <summary>Grams and minutes of boards by our estimate and by a real slicer, with its ratio, part by part and summed.</summary>
internal static class PrintTimeCommand
{
    private static readonly string[] Printers = ["fdm-0.4-quality", "fdm-0.4-fast"];

    public static int Run(string[] boards)
    {
        bool alone = boards.Contains("--no-slicer") || Slicer.Executable is null;
        Console.WriteLine("board/part                printer            g ours  slicer  ratio    min ours  slicer  ratio   ms");
        foreach (string board in boards.Where(board => board != "--no-slicer"))
        {
            HousingUnderCheck housing = SampleHousing.OfFile(board);
            foreach (PrinterProfile printer in Printers.Select(name => WrittenBoard.Shipped.Printers.Find(name)!))
            {
                (double Grams, double Minutes, SlicerFigures Slicer) sum = default;
                foreach (MadePart part in housing.SoundParts)
                {
                    PartLayers layers = housing.LayersOf(part);
                    long start = Stopwatch.GetTimestamp();
                    PrintEstimate ours = PrintEstimate.Of(layers, printer, part.Plan.Filament);
                    TimeSpan took = Stopwatch.GetElapsedTime(start);
                    SlicerFigures theirs = alone ? default
                        : Slicer.Slice(part.PrintMesh.Mesh, printer, part.Plan.Filament.Density, TimeSpan.FromMinutes(10));
                    sum = (sum.Grams + ours.Grams, sum.Minutes + ours.LayingMinutes,
                        new SlicerFigures(sum.Slicer.Grams + theirs.Grams, sum.Slicer.Minutes + theirs.Minutes));
                    Tell($"{Name(board)}/{part.Name}", printer, ours.Grams, ours.LayingMinutes, theirs, took);
                }

                Tell($"{Name(board)}", printer, sum.Grams, sum.Minutes, sum.Slicer, default);
            }
        }

        return 0;
    }

    private static string Name(string board) => Path.GetFileNameWithoutExtension(board) is var name && name == "board"
        ? Path.GetFileName(Path.GetDirectoryName(board))!
        : name;

    private static void Tell(string what, PrinterProfile printer, double grams, double minutes, SlicerFigures theirs, TimeSpan took) =>
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{what,-25} {printer.Name,-16} {grams,8:0.00} {theirs.Grams,7:0.00} {grams / theirs.Grams,6:0.000} {minutes,11:0.0} "
                + $"{theirs.Minutes,7:0.0} {minutes / theirs.Minutes,6:0.00} {took.TotalMilliseconds,5:0}"));
}
