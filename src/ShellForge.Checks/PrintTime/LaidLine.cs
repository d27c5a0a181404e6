using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Checks.PrintTime;

/// <summary>What a line of plastic is for: each kind has its speed.</summary>
internal enum LineKind
{
    /// <summary>The outermost line of a wall.</summary>
    Outer,

    /// <summary>The other lines of a wall.</summary>
    Inner,

    /// <summary>Lines of a solid layer.</summary>
    Skin,

    /// <summary>Lines of a solid layer with nothing above.</summary>
    Top,

    /// <summary>Lines with nothing below.</summary>
    Bridge,

    /// <summary>Lines of infill.</summary>
    Infill,
}

/// <summary>A line of plastic laid without a break.</summary>
/// <param name="Kind">What it is for.</param>
/// <param name="Points">Its corners in mm; a loop ends where it began.</param>
internal sealed record LaidLine(LineKind Kind, ImmutableArray<Point2> Points)
{
    /// <summary>Whether it ends where it began.</summary>
    public bool IsLoop => Points[0] == Points[^1];

    /// <summary>Length, mm.</summary>
    public double Length { get; } = Enumerable.Range(1, Points.Length - 1).Sum(i => Point2.Distance(Points[i - 1], Points[i]));
}
