using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ShellForge.Board.Profiles;
using ShellForge.Formats.Png;
using ShellForge.Formats.Rendering;
using ShellForge.Formats.Stl;
using ShellForge.Formats.ThreeMf;
using ShellForge.Output.Files;

namespace ShellForge.Coupons.Files;

/// <summary>Everything that is written of coupons that are printed together, as bytes.</summary>
public static class CouponFiles
{
    private const int PictureWidth = 1000;
    private const int PictureHeight = 750;

    // Steep enough that figures on a floor between rings are seen.
    private static readonly View Stand = new(Geometry.Numerics.Angle.FromDegrees(-80), Geometry.Numerics.Angle.FromDegrees(72));
    private static readonly Rgb Plastic = new(120, 144, 172);

    /// <summary>Prints, pictures, the sheet for the bench and the file to fill in, which comes last.</summary>
    /// <param name="coupons">The coupons, all of one printer and one filament.</param>
    public static ImmutableArray<OutputFile> Of(ImmutableArray<MadeCoupon> coupons)
    {
        CouponWish wish = coupons[0].Coupon.Wish;
        MadePiece[] pieces = [.. coupons.SelectMany(coupon => coupon.Pieces)];
        ImmutableArray<PrintPlate> plates = Plates(pieces, wish);
        return
        [
            .. pieces.Select(
                piece => Written($"{piece.Piece.Name}.stl",
                    stream => StlWriter.Write(stream, piece.Mesh, $"ShellForge {piece.Piece.Name} mm"))),
            .. plates.Select((plate, i) => Written(
                plates.Length == 1 ? "coupon.3mf" : string.Create(CultureInfo.InvariantCulture, $"coupon-{i + 1}.3mf"),
                stream => ThreeMfWriter.Write(stream, "Coupon", plate))),
            .. coupons.Select(coupon => new OutputFile($"{coupon.Coupon.Kind.Name}.png", PngWriter.ToBytes(PictureOf(coupon)))),
            new OutputFile("coupon.txt", Encoding.UTF8.GetBytes(BenchSheet.Text(coupons))),
            new OutputFile("answers.yaml", Encoding.UTF8.GetBytes(AnswerForm.Text(coupons))),
        ];
    }

    /// <summary>A picture of a coupon, its pieces side by side as they lie on the bed.</summary>
    public static Picture PictureOf(MadeCoupon coupon)
    {
        PrintPlate plate = Plates([.. coupon.Pieces], coupon.Coupon.Wish)[0];
        return Renderer.Render(new Scene
        {
            Parts =
            [
                .. plate.Jobs.Select(placed => new PicturedPart(placed.Job.Bodies[0].Mesh, Plastic)
                {
                    Placement = Geometry.Numerics.Transform3.Shift(placed.Shift.X, placed.Shift.Y, placed.Shift.Z),
                }),
            ],
            View = Stand,
            Width = PictureWidth,
            Height = PictureHeight,
        }).WithFewColours();
    }

    private static ImmutableArray<PrintPlate> Plates(MadePiece[] pieces, CouponWish wish)
    {
        PrinterProfile printer = wish.Printer;
        var filament = new PrintFilament(wish.Filament.Name, wish.Filament.Screen);
        return PlateLayout.Arrange(
            [.. pieces.Select(piece => new PrintJob(piece.Piece.Name, [new PrintBody(piece.Piece.Name, piece.Mesh, filament)]))],
            new PrintBed(printer.BedX, printer.BedY, printer.BedMargin, 1));
    }

    private static OutputFile Written(string name, Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return new OutputFile(name, stream.ToArray());
    }
}
