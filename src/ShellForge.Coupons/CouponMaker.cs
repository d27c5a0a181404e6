using System.Collections.Immutable;
using ShellForge.Checks.PrintTime;
using ShellForge.Geometry.Solids;

namespace ShellForge.Coupons;

/// <summary>A piece as it is written.</summary>
/// <param name="Piece">As drawn.</param>
/// <param name="Mesh">Its mesh, audited.</param>
public sealed record MadePiece(CouponPiece Piece, Mesh Mesh);

/// <summary>A coupon as it is written.</summary>
/// <param name="Coupon">As drawn.</param>
/// <param name="Pieces">Its pieces.</param>
/// <param name="Estimate">Time and mass of all of them in one print, heating included.</param>
public sealed record MadeCoupon(Coupon Coupon, ImmutableArray<MadePiece> Pieces, PrintEstimate Estimate)
{
    /// <summary>A coupon takes no longer than this, minutes.</summary>
    public const double MostMinutes = 30;

    /// <summary>A coupon weighs no more than this, g.</summary>
    public const double MostGrams = 10;

    /// <summary>Whether it takes longer than a coupon should: on a printer of fine layers or slow speeds.</summary>
    public bool IsLong => Estimate.Minutes > MostMinutes;
}

/// <summary>Computes coupons.</summary>
public static class CouponMaker
{
    /// <summary>Computes a coupon: meshes, time, mass.</summary>
    /// <exception cref="InvalidOperationException">A solid ended in a defect: a fault of the program.</exception>
    public static MadeCoupon Make(Coupon coupon, CancellationToken cancel = default)
    {
        ImmutableArray<MadePiece> pieces =
            [.. coupon.Pieces.Select(piece => new MadePiece(piece, OneBed.Written(piece.Solid, coupon.WrittenScale, cancel)))];
        CouponWish wish = coupon.Wish;
        return new MadeCoupon(coupon, pieces, OneBed.Estimate(pieces.Select(piece => piece.Mesh), wish.Printer, wish.Filament));
    }

    /// <summary>Minutes and grams of several coupons of one printer, on as few beds of each filament as hold them.</summary>
    public static (double Minutes, double Grams) Together(ImmutableArray<MadeCoupon> coupons)
    {
        (double Minutes, double Grams)[] each =
        [
            .. ByFilament(coupons).Select(same => OneBed.Together(
                same.SelectMany(coupon => coupon.Pieces).Select(piece => (piece.Piece.Name, piece.Mesh)), same[0].Coupon.Wish.Printer,
                same[0].Coupon.Wish.Filament)),
        ];
        return (each.Sum(beds => beds.Minutes), each.Sum(beds => beds.Grams));
    }

    /// <summary>Coupons that are printed of one filament, in the order in which each filament first comes.</summary>
    public static ImmutableArray<ImmutableArray<MadeCoupon>> ByFilament(ImmutableArray<MadeCoupon> coupons) =>
        [.. coupons.GroupBy(coupon => coupon.Coupon.Wish.Filament.Name).Select(same => same.ToImmutableArray())];
}
