using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Draft;

namespace ShellForge.Coupons.Drawing;

/// <summary>The steps of a piece with the figures that stand beside them.</summary>
/// <param name="basis">How figures are printed.</param>
internal sealed class StepMarks(PrintBasis basis)
{
    private readonly ImmutableArray<CouponMark>.Builder _marks = ImmutableArray.CreateBuilder<CouponMark>();
    private readonly ImmutableArray<CouponStep>.Builder _steps = ImmutableArray.CreateBuilder<CouponStep>();

    /// <summary>The figures as bodies.</summary>
    public IEnumerable<Solid> Solids => _marks.Select(Figures.Solid);

    /// <summary>Adds a step.</summary>
    /// <param name="value">Its value.</param>
    /// <param name="mark">The figures that say it.</param>
    /// <param name="at">Where the step is measured.</param>
    /// <param name="figures">Middle of the figures.</param>
    /// <param name="onZ">z of the face that they stand on, mm.</param>
    public void Add(double value, string mark, Point2 at, Point2 figures, double onZ)
    {
        _marks.Add(Figures.On(mark, figures, onZ, basis));
        _steps.Add(new CouponStep(value, mark, at));
    }

    /// <summary>The piece that carries the steps.</summary>
    public CouponPiece Piece(string name, Solid solid) => new(name, solid, _steps.ToImmutable(), _marks.ToImmutable());
}
