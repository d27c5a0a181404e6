using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ShellForge.Board.Description;
using ShellForge.Checks.PrintTime;
using ShellForge.Coupons.Files;
using ShellForge.Formats.Png;
using ShellForge.Formats.Rendering;
using ShellForge.Formats.Stl;
using ShellForge.Formats.ThreeMf;
using ShellForge.Output.Files;

namespace ShellForge.Coupons.Slices;

/// <summary>The files of a fit slice: its pieces, one plate with all of them, a picture, the check list.</summary>
public static class FitSliceFiles
{
    /// <summary>Name of the check list.</summary>
    public const string ListFile = "fit-slice.txt";

    /// <summary>All files.</summary>
    public static ImmutableArray<OutputFile> Of(FitSlice slice, BoardFile board)
    {
        PrintPlate plate = OneBed.Plates(slice.Pieces, board.Print.Printer, board.Print.Shell)[0];
        return
        [
            .. slice.Pieces.Select(
                piece => OutputFile.Written(
                    piece.Name + ".stl", stream => StlWriter.Write(stream, piece.Mesh, $"ShellForge {piece.Name} mm"))),
            OutputFile.Written("fit-slice.3mf", stream => ThreeMfWriter.Write(stream, $"{board.Name}, fit slice", plate)),
            new OutputFile("fit-slice.png", PngWriter.ToBytes(OneBed.PictureOf(plate, View.Corner))),
            new OutputFile(ListFile, Encoding.UTF8.GetBytes(Text(slice, board))),
        ];
    }

    private static string Text(FitSlice slice, BoardFile board)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture,
            $"Fit slice of {board.Name}: {PrintEstimate.Duration(slice.Estimate.Minutes)}, {slice.Estimate.Grams:0.0} g of "
                + $"{board.Print.Shell.Name}\n");
        text.Append("Print it as it lies, with the settings of the housing, before the housing.\n");
        foreach (string caution in slice.Cautions)
        {
            BenchSheet.Wrap(text, "Take care: ", caution);
        }

        for (int i = 0; i < slice.Checks.Length; i++)
        {
            BenchSheet.Wrap(text, string.Create(CultureInfo.InvariantCulture, $"[ ] {i + 1}. "), slice.Checks[i]);
        }

        return text.ToString();
    }
}
