using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ShellForge.Formats.Png;
using ShellForge.Formats.Rendering;
using ShellForge.Formats.Stl;
using ShellForge.Formats.ThreeMf;
using ShellForge.Output.Files;

namespace ShellForge.Coupons.Files;

/// <summary>Everything that is written of coupons that are printed together, as bytes.</summary>
public static class CouponFiles
{
    /// <summary>Name of the file to fill in.</summary>
    public const string AnswersFile = "answers.yaml";

    // Steep enough that figures on a floor between rings are seen.
    private static readonly View Stand = new(Geometry.Numerics.Angle.FromDegrees(-80), Geometry.Numerics.Angle.FromDegrees(72));

    /// <summary>Prints, pictures, the sheet for the bench and the file to fill in, which comes last.</summary>
    /// <param name="coupons">The coupons, all of one printer and one filament.</param>
    public static ImmutableArray<OutputFile> Of(ImmutableArray<MadeCoupon> coupons)
    {
        MadePiece[] pieces = [.. coupons.SelectMany(coupon => coupon.Pieces)];
        ImmutableArray<PrintPlate> plates = Plates(pieces, coupons[0].Coupon.Wish);
        return
        [
            .. pieces.Select(
                piece => OutputFile.Written($"{piece.Piece.Name}.stl",
                    stream => StlWriter.Write(stream, piece.Mesh, $"ShellForge {piece.Piece.Name} mm"))),
            .. plates.Select((plate, i) => OutputFile.Written(
                plates.Length == 1 ? "coupon.3mf" : string.Create(CultureInfo.InvariantCulture, $"coupon-{i + 1}.3mf"),
                stream => ThreeMfWriter.Write(stream, "Coupon", plate))),
            .. coupons.Select(coupon => new OutputFile($"{coupon.Coupon.Kind.Name}.png", PngWriter.ToBytes(PictureOf(coupon)))),
            new OutputFile("coupon.txt", Encoding.UTF8.GetBytes(BenchSheet.Text(coupons))),
            new OutputFile(AnswersFile, Encoding.UTF8.GetBytes(AnswerForm.Text(coupons))),
        ];
    }

    /// <summary>A picture of a coupon, its pieces side by side as they lie on the bed.</summary>
    public static Picture PictureOf(MadeCoupon coupon) =>
        OneBed.PictureOf(Plates(coupon.Pieces, coupon.Coupon.Wish)[0], Stand);

    private static ImmutableArray<PrintPlate> Plates(IEnumerable<MadePiece> pieces, CouponWish wish) =>
        OneBed.Plates(pieces.Select(piece => (piece.Piece.Name, piece.Mesh)), wish.Printer, wish.Filament);
}
