using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ShellForge.Coupons.Calibrating;
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
    /// <param name="coupons">The coupons, all of one printer; each filament has beds of its own.</param>
    public static ImmutableArray<OutputFile> Of(ImmutableArray<MadeCoupon> coupons)
    {
        MadePiece[] pieces = [.. coupons.SelectMany(coupon => coupon.Pieces)];
        ImmutableArray<ImmutableArray<MadeCoupon>> beds = CouponMaker.ByFilament(coupons);
        return
        [
            .. pieces.Select(
                piece => OutputFile.Written($"{piece.Piece.Name}.stl",
                    stream => StlWriter.Write(stream, piece.Mesh, $"ShellForge {piece.Piece.Name} mm"))),
            .. beds.SelectMany(same => PlateFiles(same, beds.Length > 1)),
            .. coupons.Select(coupon => new OutputFile($"{coupon.Coupon.Name}.png", PngWriter.ToBytes(PictureOf(coupon)))),
            new OutputFile("coupon.txt", Encoding.UTF8.GetBytes(BenchSheet.Text(coupons))),
            new OutputFile(AnswersFile, Encoding.UTF8.GetBytes(AnswerForm.Text(coupons))),
        ];
    }

    // Whoever has two filaments to print of must not load the wrong one.
    private static IEnumerable<OutputFile> PlateFiles(ImmutableArray<MadeCoupon> same, bool isOneOfSeveral)
    {
        CouponWish wish = same[0].Coupon.Wish;
        string name = isOneOfSeveral ? $"coupon-{MeasuredProfiles.FileName(wish.Filament.Name)}" : "coupon";
        ImmutableArray<PrintPlate> plates = Plates(same.SelectMany(coupon => coupon.Pieces), wish);
        return plates.Select((plate, i) => OutputFile.Written(
            plates.Length == 1 ? $"{name}.3mf" : string.Create(CultureInfo.InvariantCulture, $"{name}-{i + 1}.3mf"),
            stream => ThreeMfWriter.Write(stream, "Coupon", plate)));
    }

    /// <summary>A picture of a coupon, its pieces side by side as they lie on the bed.</summary>
    public static Picture PictureOf(MadeCoupon coupon) =>
        OneBed.PictureOf(Plates(coupon.Pieces, coupon.Coupon.Wish)[0], Stand);

    private static ImmutableArray<PrintPlate> Plates(IEnumerable<MadePiece> pieces, CouponWish wish) =>
        OneBed.Plates(pieces.Select(piece => (piece.Piece.Name, piece.Mesh)), wish.Printer, wish.Filament);
}
