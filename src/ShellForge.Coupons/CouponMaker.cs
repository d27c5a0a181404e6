using System.Collections.Immutable;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.PrintTime;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Numerics;
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
}

/// <summary>Computes coupons.</summary>
public static class CouponMaker
{
    /// <summary>Computes a coupon: meshes, time, mass.</summary>
    /// <exception cref="InvalidOperationException">A solid ended in a defect: a fault of the program.</exception>
    public static MadeCoupon Make(Coupon coupon, CancellationToken cancel = default)
    {
        double scale = coupon.WrittenScale;
        ImmutableArray<MadePiece> pieces =
        [
            .. coupon.Pieces.Select(piece => new MadePiece(
                piece, SolidEvaluator.Evaluate(piece.Solid.Moved(Transform3.Scale(scale, scale, 1)), cancel).Require().Mesh)),
        ];
        PrintEstimate estimate = PrintEstimate.Of(
            PartLayers.Of(OneBed.Of(pieces.Select(piece => piece.Mesh)), coupon.Wish.Printer), coupon.Wish.Printer, coupon.Wish.Filament);
        return new MadeCoupon(coupon, pieces, estimate.Started(coupon.Wish.Printer));
    }
}
