using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;

namespace ShellForge.Coupons;

/// <summary>A step of a coupon: a feature of one value with its raised figures.</summary>
/// <param name="Value">The value, in the unit of the coupon.</param>
/// <param name="Mark">The figures.</param>
/// <param name="At">Middle of the feature in plan, mm.</param>
public sealed record CouponStep(double Value, string Mark, Point2 At);

/// <summary>Raised figures or letters.</summary>
/// <param name="Text">What they say.</param>
/// <param name="Strokes">Their strokes in plan.</param>
/// <param name="FromZ">Face they stand on, mm.</param>
/// <param name="ToZ">Their upper face, mm.</param>
public sealed record CouponMark(string Text, Region Strokes, double FromZ, double ToZ);

/// <summary>A piece of a coupon, as it lies on the bed.</summary>
/// <param name="Name">Name, also of its file.</param>
/// <param name="Solid">Its solid at the size it shall have in the hand, lowest face on z = 0.</param>
/// <param name="Steps">Its steps.</param>
/// <param name="Marks">Its figures.</param>
public sealed record CouponPiece(string Name, Solid Solid, ImmutableArray<CouponStep> Steps, ImmutableArray<CouponMark> Marks);

/// <summary>A coupon as drawn.</summary>
public sealed record Coupon
{
    /// <summary>Its kind.</summary>
    public required CouponKind Kind { get; init; }

    /// <summary>What it was drawn for.</summary>
    public required CouponWish Wish { get; init; }

    /// <summary>What it is called in files.</summary>
    public string Name => Wish.NameOf(Kind);

    /// <summary>Its pieces, each printed by itself.</summary>
    public required ImmutableArray<CouponPiece> Pieces { get; init; }

    /// <summary>
    /// Whether it is written larger in x and y as the parts of a housing are, so that it shrinks to size. A coupon that measures the
    /// shrinkage is not.
    /// </summary>
    public bool AllowsForShrinkage { get; init; } = true;

    /// <summary>What the hands do with it, step by step.</summary>
    public required ImmutableArray<string> Hands { get; init; }

    /// <summary>Cautions, where hands or eyes are at risk.</summary>
    public ImmutableArray<string> Cautions { get; init; } = [];

    /// <summary>Factor in x and y by which it is written larger.</summary>
    public double WrittenScale => AllowsForShrinkage ? Wish.Printer.WrittenScale(Wish.Filament) : 1;
}
