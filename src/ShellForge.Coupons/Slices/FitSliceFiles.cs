using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Checks.PrintTime;
using ShellForge.Coupons.Files;
using ShellForge.Formats.Png;
using ShellForge.Formats.Rendering;
using ShellForge.Formats.Stl;
using ShellForge.Formats.ThreeMf;
using ShellForge.Geometry.Numerics;
using ShellForge.Output.Files;

namespace ShellForge.Coupons.Slices;

/// <summary>The files of a fit slice: its pieces, one plate with both, a picture, the check list.</summary>
public static class FitSliceFiles
{
    private const int Width = 1000;
    private const int Height = 750;
    private static readonly Rgb Plastic = new(120, 144, 172);

    /// <summary>All files.</summary>
    public static ImmutableArray<OutputFile> Of(FitSlice slice, BoardFile board)
    {
        PrinterProfile printer = board.Print.Printer;
        var filament = new PrintFilament(board.Print.Shell.Name, board.Print.Shell.Screen);
        PrintPlate plate = PlateLayout.Arrange(
            [.. slice.Pieces.Select(piece => new PrintJob(piece.Name, [new PrintBody(piece.Name, piece.Mesh, filament)]))],
            new PrintBed(printer.BedX, printer.BedY, printer.BedMargin, 1))[0];
        return
        [
            .. slice.Pieces.Select(
                piece => Written(piece.Name + ".stl", stream => StlWriter.Write(stream, piece.Mesh, $"ShellForge {piece.Name} mm"))),
            Written("fit-slice.3mf", stream => ThreeMfWriter.Write(stream, $"{board.Name}, fit slice", plate)),
            new OutputFile("fit-slice.png", PngWriter.ToBytes(Picture(plate))),
            new OutputFile("fit-slice.txt", Encoding.UTF8.GetBytes(Text(slice, board))),
        ];
    }

    private static Picture Picture(PrintPlate plate) => Renderer.Render(new Scene
    {
        Parts =
        [
            .. plate.Jobs.Select(placed => new PicturedPart(placed.Job.Bodies[0].Mesh, Plastic)
            {
                Placement = Transform3.Shift(placed.Shift.X, placed.Shift.Y, placed.Shift.Z),
            }),
        ],
        Width = Width,
        Height = Height,
    }).WithFewColours();

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

    private static OutputFile Written(string name, Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return new OutputFile(name, stream.ToArray());
    }
}
