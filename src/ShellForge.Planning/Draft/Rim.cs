using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Planning.Draft;

/// <summary>Distances to the board's edge: exact for discs and rings, by corners for other outlines.</summary>
internal sealed class Rim
{
    private readonly BoardOutline _outline;
    private readonly Region _filled;

    /// <summary>The edge of a board.</summary>
    public Rim(BoardOutline outline)
    {
        _outline = outline;
        _filled = outline.Region.Filled();
    }

    /// <summary>The laminate with bore and cutouts filled.</summary>
    public Region Filled => _filled;

    /// <summary>How far a point lies inside the outer edge, mm; negative outside.</summary>
    public double InsideOuter(Point2 point) => _outline is PolygonOutline
        ? (_filled.Contains(point) ? 1 : -1) * _filled.DistanceToOutline(point)
        : _outline.OuterRadius - point.Length;

    /// <summary>How far a whole region stays inside the outer edge, mm; negative where it stands out.</summary>
    public double InsideOuter(Region region) => region.Loops.SelectMany(l => l).Min(InsideOuter);

    /// <summary>How far a whole region stays away from a round bore's edge, mm; negative where it reaches into the bore.</summary>
    public double OutsideBore(Region region) => region.Distance(Point2.Origin) - _outline.BoreRadius;

    /// <summary>
    /// Distance from the axis to the outer edge in a direction, mm: the farthest crossing of a ray with the outline.
    /// </summary>
    public double RadiusAt(Angle direction) => _outline is PolygonOutline ? _filled.FarthestAlong(direction) : _outline.OuterRadius;
}
