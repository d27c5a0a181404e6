using System.Collections.Immutable;
using ShellForge.Board.Profiles;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.PrintTime;
using ShellForge.Formats.Rendering;
using ShellForge.Formats.ThreeMf;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Coupons;

/// <summary>
/// Pieces that are printed together, of one filament: what they are as written, how long they take, how they lie, how they look.
/// </summary>
internal static class OneBed
{
    private const double Gap = 6;
    private const int PictureWidth = 1000;
    private const int PictureHeight = 750;
    private static readonly Rgb Plastic = new(120, 144, 172);

    /// <summary>A piece as it is written: larger in x and y by a factor.</summary>
    /// <exception cref="InvalidOperationException">The solid ended in a defect: a fault of the program.</exception>
    public static Mesh Written(Solid solid, double scale, CancellationToken cancel) =>
        SolidEvaluator.Evaluate(solid.Moved(Transform3.Scale(scale, scale, 1)), cancel).Require().Mesh;

    /// <summary>
    /// Time and mass of all pieces in one print, heating included: what is printed at once shares the least time of each layer.
    /// </summary>
    public static PrintEstimate Estimate(IEnumerable<Mesh> pieces, PrinterProfile printer, FilamentProfile filament) =>
        PrintEstimate.Of(PartLayers.Of(InARow(pieces), printer), printer, filament).Started(printer);

    /// <summary>Minutes and grams of all pieces as they lie on one bed or on several, heating included for each.</summary>
    public static (double Minutes, double Grams) Together(
        IEnumerable<(string Name, Mesh Mesh)> pieces, PrinterProfile printer, FilamentProfile filament)
    {
        PrintEstimate[] plates =
        [
            .. Plates(pieces, printer, filament).Select(plate => PrintEstimate.Of(
                PartLayers.Of(
                    Mesh.Joined([.. plate.Jobs.Select(placed => placed.Job.Bodies[0].Mesh.Mapped(Transform3.Shift(
                        placed.Shift.X - (printer.BedX / 2), placed.Shift.Y - (printer.BedY / 2), placed.Shift.Z)))]),
                    printer),
                printer, filament).Started(printer)),
        ];
        return (plates.Sum(plate => plate.Minutes), plates.Sum(plate => plate.Grams));
    }

    /// <summary>The pieces on the printer's bed, or on several.</summary>
    public static ImmutableArray<PrintPlate> Plates(
        IEnumerable<(string Name, Mesh Mesh)> pieces, PrinterProfile printer, FilamentProfile filament)
    {
        var of = new PrintFilament(filament.Name, filament.Screen);
        return PlateLayout.Arrange(
            [.. pieces.Select(piece => new PrintJob(piece.Name, [new PrintBody(piece.Name, piece.Mesh, of)]))],
            new PrintBed(printer.BedX, printer.BedY, printer.BedMargin, 1));
    }

    /// <summary>A picture of the pieces as they lie.</summary>
    /// <param name="plate">The bed.</param>
    /// <param name="view">Where the eye stands.</param>
    public static Picture PictureOf(PrintPlate plate, View view) => Renderer.Render(new Scene
    {
        Parts =
        [
            .. plate.Jobs.Select(placed => new PicturedPart(placed.Job.Bodies[0].Mesh, Plastic)
            {
                Placement = Transform3.Shift(placed.Shift.X, placed.Shift.Y, placed.Shift.Z),
            }),
        ],
        View = view,
        Width = PictureWidth,
        Height = PictureHeight,
    }).WithFewColours();

    /// <summary>The pieces side by side along x, each with its lowest face on z = 0.</summary>
    internal static Mesh InARow(IEnumerable<Mesh> pieces)
    {
        var row = new List<Mesh>();
        double right = 0;
        foreach (Mesh piece in pieces)
        {
            Box3 bounds = Measure.Bounds(piece);
            double shift = right == 0 ? 0 : right + Gap - bounds.Min.X;
            row.Add(piece.Mapped(Transform3.Shift(shift, 0, 0)));
            right = bounds.Max.X + shift;
        }

        return Mesh.Joined(row);
    }
}
