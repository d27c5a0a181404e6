using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Planar;

/// <summary>
/// A bounded set of points of the plane: polygons with holes, in mm, every corner on the lattice. Immutable. Overlays are
/// rounded so that the result is valid on the lattice, and loops come in one fixed order, so equal regions are equal in
/// every byte that is made from them.
/// </summary>
/// <remarks>
/// A corner that an overlay makes is rounded by at most half a step in x and y; an edge near a lattice corner of the other
/// operand may be bent onto it by as much. Outlines are never repaired: a polygon that crosses itself is refused.
/// </remarks>
public sealed partial class Region : IEquatable<Region>
{
    // Worked out by whoever asks first: many regions are only drawn, or only measured.
    private NetTopologySuite.Geometries.Geometry? _geometry;
    private OutlineRuns? _outline;
    private int _hash;

    private Region(NetTopologySuite.Geometries.Geometry geometry)
        : this(Overlay.Parts(geometry))
    {
    }

    private Region(ImmutableArray<ImmutableArray<ImmutableArray<Point2>>> parts)
    {
        PartLoops = parts;
        Bounds = Box2.Of(parts.SelectMany(p => p[0]));
    }

    /// <summary>The region without a point.</summary>
    public static Region Empty { get; } = new([]);

    /// <summary>Whether there is no point in it.</summary>
    public bool IsEmpty => PartLoops.IsEmpty;

    /// <summary>Area in mm2.</summary>
    public double Area => PartLoops.Sum(part => part.Sum(loop => Loop.SignedArea(loop)));

    /// <summary>Length of all outlines, holes included, in mm.</summary>
    public double Perimeter => Loops.Sum(loop => loop.Select((p, i) => Point2.Distance(p, loop[(i + 1) % loop.Length])).Sum());

    /// <summary>The smallest rectangle round it.</summary>
    public Box2 Bounds { get; }

    /// <summary>All outlines: outer ones counter-clockwise, holes clockwise; each outer one is followed by its holes.</summary>
    public ImmutableArray<ImmutableArray<Point2>> Loops => [.. PartLoops.SelectMany(p => p)];

    /// <summary>The connected parts, each with one outer outline. Parts may touch at single points.</summary>
    public ImmutableArray<Region> Parts => [.. PartLoops.Select(p => new Region(ImmutableArray.Create(p)))];

    /// <summary>For each part its outer loop and its holes.</summary>
    internal ImmutableArray<ImmutableArray<ImmutableArray<Point2>>> PartLoops { get; }

    private NetTopologySuite.Geometries.Geometry Drawn => _geometry ??= IsEmpty ? Overlay.Empty : Overlay.Assemble(PartLoops);

    private OutlineRuns Outline => _outline ??= new OutlineRuns(Loops);

    /// <summary>All points of any of the regions.</summary>
    public static Region Union(params IEnumerable<Region> regions)
    {
        Region[] all = [.. regions.Where(r => !r.IsEmpty)];
        return all.Length == 1 ? all[0] : new(Overlay.Union([.. all.Select(r => r.Drawn)]));
    }

    /// <summary>This region and another.</summary>
    public Region And(Region other) =>
        IsEmpty ? other : other.IsEmpty ? this : new(Overlay.Union(Drawn, other.Drawn));

    /// <summary>This region without another.</summary>
    public Region Less(Region other) =>
        IsEmpty || other.IsEmpty ? this : new(Overlay.Difference(Drawn, other.Drawn));

    /// <summary>What this region and another have in common.</summary>
    public Region Intersect(Region other) =>
        IsEmpty || other.IsEmpty ? Empty : new(Overlay.Intersection(Drawn, other.Drawn));

    /// <summary>The smallest convex region that holds this one.</summary>
    public Region Hull() => IsEmpty ? Empty : new(Overlay.Hull(PartLoops.SelectMany(p => p[0])));

    /// <summary>The smallest convex region that holds the points; empty when they lie on one line.</summary>
    public static Region HullOf(IEnumerable<Point2> points) => new(Overlay.Hull(points));

    /// <summary>This region without its holes.</summary>
    public Region Filled() => Union(PartLoops.Select(p => new Region([[p[0]]])));

    /// <summary>This region moved. The shift goes onto the lattice first, so the shape stays the same to the bit.</summary>
    public Region Moved(Point2 by)
    {
        Point2 shift = Lattice.Snap(by);
        return Mapped(p => p + shift);
    }

    /// <summary>This region turned counter-clockwise about the origin; exact at quarter turns, rounded otherwise.</summary>
    public Region Turned(Angle by)
    {
        double quarters = by.Normalized.Degrees / 90;
        if (quarters == Math.Floor(quarters))
        {
            return Mapped(p => p.Turned(by));
        }

        return Union(PartLoops.Select(part => Polygon(
            [.. part[0].Select(p => p.Turned(by))],
            [.. part.Skip(1).Select(h => (IReadOnlyList<Point2>)[.. h.Select(p => p.Turned(by))])])));
    }

    /// <summary>This region mirrored at the y axis: x becomes -x.</summary>
    public Region MirroredX() => Mapped(p => new Point2(0 - p.X, p.Y));

    /// <summary>Whether a point lies inside or on the outline.</summary>
    public bool Contains(Point2 point) =>
        !IsEmpty && Outline.Encloses(point);

    /// <summary>Whether every point of another region lies in this one, outlines included.</summary>
    public bool Contains(Region other) => other.Less(this).IsEmpty;

    /// <summary>Distance in mm from a point to the nearest point of the region: 0 inside.</summary>
    /// <exception cref="InvalidOperationException">The region is empty.</exception>
    public double Distance(Point2 point) => Contains(point) ? 0 : DistanceToOutline(point);

    /// <summary>Distance in mm from a point to the nearest outline, from inside or outside.</summary>
    /// <exception cref="InvalidOperationException">The region is empty.</exception>
    public double DistanceToOutline(Point2 point)
    {
        RefuseEmpty();
        return Outline.Distance(point);
    }

    /// <summary>Whether a point lies no farther than a distance in mm from the nearest outline: quicker than to measure.</summary>
    public bool IsNearOutline(Point2 point, double distance) => !IsEmpty && Outline.IsNear(point, distance);

    /// <summary>Smallest distance in mm between two regions: 0 when they share a point.</summary>
    /// <exception cref="InvalidOperationException">A region is empty.</exception>
    public double Distance(Region other)
    {
        RefuseEmpty();
        other.RefuseEmpty();
        double between = Outline.Distance(other.Outline);

        // Outlines that don't meet leave two cases: apart, or a whole part in the other region.
        return between > 0 && (other.PartLoops.Any(part => Contains(part[0][0])) || PartLoops.Any(part => other.Contains(part[0][0])))
            ? 0
            : between;
    }

    /// <summary>
    /// Distance in mm from the origin to the farthest place where a ray from there crosses an outline: 0 where it crosses none.
    /// </summary>
    public double FarthestAlong(Angle direction)
    {
        Point2 ray = Point2.Polar(1, direction);
        double farthest = 0;
        foreach (ImmutableArray<Point2> loop in Loops)
        {
            for (int i = 0; i < loop.Length; i++)
            {
                Point2 a = loop[i];
                Point2 side = loop[(i + 1) % loop.Length] - a;
                double across = Point2.Cross(ray, side);
                if (across == 0)
                {
                    continue;
                }

                double share = Point2.Cross(a, ray) / across;
                if (share is >= 0 and <= 1)
                {
                    farthest = Math.Max(farthest, Point2.Cross(a, side) / across);
                }
            }
        }

        return farthest;
    }

    /// <summary>Same outlines, corner by corner.</summary>
    public bool Equals(Region? other) =>
        ReferenceEquals(this, other) || (other is not null && PartLoops.Length == other.PartLoops.Length
        && GetHashCode() == other.GetHashCode() && PartLoops.Zip(other.PartLoops).All(p => p.First.Length == p.Second.Length
            && p.First.Zip(p.Second).All(l => l.First.AsSpan().SequenceEqual(l.Second.AsSpan()))));

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Region);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        // Regions are keys of many memories: theirs is worked out once. 0 stands for not yet.
        if (_hash == 0)
        {
            HashCode hash = default;
            foreach (Point2 p in Loops.SelectMany(l => l))
            {
                hash.Add(p);
            }

            _hash = hash.ToHashCode() is var code && code == 0 ? 1 : code;
        }

        return _hash;
    }

    private Region Mapped(Func<Point2, Point2> map) => new(Overlay.Assemble(
        [.. PartLoops.Select(part => part.Select(loop => loop.Select(p => Lattice.Snap(map(p))).ToImmutableArray()).ToImmutableArray())]));

    private void RefuseEmpty()
    {
        if (IsEmpty)
        {
            throw new InvalidOperationException("An empty region has no distance.");
        }
    }
}
