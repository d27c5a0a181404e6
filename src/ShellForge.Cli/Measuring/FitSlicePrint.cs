using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ShellForge.Board.Description;
using ShellForge.Checks.PrintTime;
using ShellForge.Cli.Writing;
using ShellForge.Coupons.Slices;
using ShellForge.Output.Files;
using ShellForge.Planning;

namespace ShellForge.Cli.Measuring;

/// <summary>The slice of a housing that is printed first, with its check list, as files.</summary>
internal static class FitSlicePrint
{
    /// <summary>What it is asked for by.</summary>
    public const string Name = "fit-slice";

    /// <summary>What one learns from it.</summary>
    public const string Tells = "whether your board, its screws, its plug and the lid fit, before the big print";

    /// <summary>Makes and writes it.</summary>
    public static ExitCode Make(Workbench bench, BoardFile board, string folder, bool quiet)
    {
        FitSlice slice = FitSlice.Of(HousingPlanner.Plan(board), bench.Cancel);
        string path = bench.FullPath(folder);
        ImmutableArray<OutputFile> files = FitSliceFiles.Of(slice, board);
        OthersFiles.Refuse(path, files, File.Exists(Path.Combine(path, FitSliceFiles.ListFile)));
        StagedFiles.Write(path, files);
        if (!quiet)
        {
            bench.Out.Write(string.Create(
                CultureInfo.InvariantCulture,
                $"{Name}: {Tells}; {PrintEstimate.Duration(slice.Estimate.Minutes)}, {slice.Estimate.Grams:0.0} g\n"));
            var text = new StringBuilder();
            for (int i = 0; i < slice.Checks.Length; i++)
            {
                text.Append(CultureInfo.InvariantCulture, $"  {i + 1}. {slice.Checks[i]}\n");
            }

            bench.Out.Write(text.ToString());
            bench.Out.Write($"{folder}: the pieces, a picture, and this list as fit-slice.txt\n");
        }

        return ExitCode.Done;
    }
}
