using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Planning.Outlines;

/// <summary>
/// The rounded outer edge of a face that lies on the bed. An arc that began level on the bed would hang over more air than a printer
/// bridges; so it begins with the arc's own tangent, as steep as the printer needs it, and goes on as the arc:
/// <code>
///     inset
///    |----|
///         ·      |   wall, height = radius
///         ·     |
///         ·    /     arc
///         · _ /
///    _____·_/        slant, leaning from the vertical
///    bed
/// </code>
/// It is drawn in flat facets between corners that lie on the arc, so that nothing of it stands out of the true one.
/// </summary>
public sealed record EdgePlan
{
    /// <summary>How far inside, mm, a cutter's outline goes on past the bed, so that it crosses it cleanly.</summary>
    public const double PastBed = 0.1;

    /// <summary>How far outside, mm, it goes on past the wall's face: short sides at sharp inner corners bear no more.</summary>
    public const double PastWall = 0.002;

    private EdgePlan(double radius, Angle lean, ImmutableArray<EdgePoint> points)
    {
        Radius = radius;
        Lean = lean;
        Points = points;
    }

    /// <summary>Radius of the arc, and its height over the bed, mm.</summary>
    public double Radius { get; }

    /// <summary>How far the slant leans from the vertical: less than the printer's overhang.</summary>
    public Angle Lean { get; }

    /// <summary>Corners of the section, from the bed up to the wall.</summary>
    public ImmutableArray<EdgePoint> Points { get; }

    /// <summary>How far the face on the bed ends inside the outline, mm.</summary>
    public double Inset => Points[0].Inset;

    /// <summary>
    /// The edge of a radius: as few facets as keep within <see cref="Tolerances.ChordError"/> of the arc.
    /// </summary>
    /// <param name="radius">Radius, mm, above 0.</param>
    /// <param name="overhangDegrees">The largest overhang that the printer manages, degrees from the vertical.</param>
    public static EdgePlan Of(double radius, double overhangDegrees)
    {
        Angle lean = RoofSlant.For(overhangDegrees).Lean;
        int facets = 1;
        while (radius * (1 - Angle.FromDegrees(lean.Degrees / (2 * facets)).Cos) > Tolerances.ChordError)
        {
            facets++;
        }

        ImmutableArray<EdgePoint> arc =
        [
            .. Enumerable.Range(0, facets + 1).Select(i =>
            {
                var turn = Angle.FromDegrees(lean.Degrees * (facets - i) / facets);
                return new EdgePoint(radius * (1 - turn.Cos), radius * (1 - turn.Sin));
            }),
        ];
        double slant = arc[0].Height * lean.Sin / lean.Cos;
        return new EdgePlan(radius, lean, [new EdgePoint(arc[0].Inset + slant, 0), .. arc]);
    }

    /// <summary>How far the true edge lies inside the outline at a height over the bed, mm; 0 from the radius up.</summary>
    /// <param name="height">Height over the bed, mm, from 0.</param>
    public double InsetAt(double height)
    {
        if (height >= Radius)
        {
            return 0;
        }

        EdgePoint tangent = Points[1];
        double below = Radius - height;
        return height < tangent.Height
            ? tangent.Inset + ((tangent.Height - height) * Lean.Sin / Lean.Cos)
            : Radius - Math.Sqrt((Radius * Radius) - (below * below));
    }

    /// <summary>
    /// Least distance, mm, from a point inside the plastic to the bed, the edge or the wall outside: what stays of a part whose hollow
    /// begins there.
    /// </summary>
    /// <param name="inset">How far the point lies inside the outline, mm.</param>
    /// <param name="height">Its height over the bed, mm.</param>
    /// <returns>Negative where the edge takes the point away.</returns>
    public double Covers(double inset, double height)
    {
        if (height < Radius && inset < InsetAt(height))
        {
            return inset - InsetAt(height);
        }

        double least = inset >= Inset ? height : Point2.Distance(new Point2(inset, height), new Point2(Inset, 0));
        least = height >= Radius ? Math.Min(least, inset) : least;
        for (int i = 1; i < Points.Length; i++)
        {
            least = Math.Min(least, Distance(new Point2(inset, height), Points[i - 1].Place, Points[i].Place));
        }

        return least;
    }

    private static double Distance(Point2 point, Point2 from, Point2 to)
    {
        Point2 along = to - from;
        double share = Math.Clamp(Point2.Dot(point - from, along) / Point2.Dot(along, along), 0, 1);
        return Point2.Distance(point, from + (share * along));
    }
}

/// <summary>A corner of an edge's section.</summary>
/// <param name="Inset">How far inside the outline, mm.</param>
/// <param name="Height">Over the bed, mm.</param>
public readonly record struct EdgePoint(double Inset, double Height)
{
    /// <summary>Inset and height as a point of the section.</summary>
    internal Point2 Place => new(Inset, Height);
}
