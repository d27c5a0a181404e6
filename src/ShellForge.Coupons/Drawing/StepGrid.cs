using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Coupons.Drawing;

/// <summary>Places of steps in rows, read like a text: from the left, from the top.</summary>
/// <param name="Count">How many.</param>
/// <param name="Columns">How many in a row.</param>
/// <param name="PitchX">From one to the next in a row, mm.</param>
/// <param name="PitchY">From one row to the next, mm.</param>
internal sealed record StepGrid(int Count, int Columns, double PitchX, double PitchY)
{
    private const double CornerRadius = 2;

    private int Rows => (Count + Columns - 1) / Columns;

    /// <summary>Middle of a step's cell.</summary>
    public Point2 At(int step)
    {
        int row = step / Columns;
        int column = step % Columns;
        return new Point2((column - ((Columns - 1) / 2.0)) * PitchX, (((Rows - 1) / 2.0) - row) * PitchY);
    }

    /// <summary>The plate under all cells.</summary>
    public Region Plate => Region.RoundedRectangle(Point2.Origin, Columns * PitchX, Rows * PitchY, CornerRadius);

    /// <summary>Steps of air round a middle one; where they would begin below nothing, from nothing on.</summary>
    public static ImmutableArray<double> Around(double middle, double step, int count) =>
        Rising(Math.Max(0, Math.Round(middle - (step * (count - 1) / 2), 2)), step, count);

    /// <summary>Steps from one value on, each a step apart, to a hundredth.</summary>
    public static ImmutableArray<double> Rising(double from, double step, int count) =>
        [.. Enumerable.Range(0, count).Select(i => Math.Round(from + (i * step), 2, MidpointRounding.AwayFromZero))];
}
