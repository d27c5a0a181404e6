using System.Collections.Immutable;
using NetTopologySuite;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Planar;

/// <summary>
/// The one door to NetTopologySuite. What goes in and comes out is a polygonal geometry whose coordinates are lattice points;
/// overlays round by snapping edges to the lattice (hot pixels), so a result is valid on the lattice and not merely near it.
/// </summary>
internal static class Overlay
{
    private static readonly PrecisionModel LatticeModel = new(Lattice.StepsPerMillimetre);

    private static readonly PrecisionModel FloatingModel = new();

    private static readonly PrecisionModel CoarseModel = new(1000);

    private static readonly GeometryFactory Factory = new NtsGeometryServices(LatticeModel).CreateGeometryFactory(LatticeModel);

    /// <summary>The geometry without a point.</summary>
    public static NetTopologySuite.Geometries.Geometry Empty { get; } = Factory.CreatePolygon();

    /// <summary>A polygon with holes from corner lists in any direction; checked, then brought onto the lattice.</summary>
    /// <exception cref="ArgumentException">A side crosses or touches another where it must not.</exception>
    public static NetTopologySuite.Geometries.Geometry Checked(IReadOnlyList<Point2> outer, IReadOnlyList<IReadOnlyList<Point2>> holes)
    {
        Polygon raw = Raw(outer, holes);
        var validity = new NetTopologySuite.Operation.Valid.IsValidOp(raw);
        if (!validity.IsValid)
        {
            Coordinate at = validity.ValidationError.Coordinate;
            throw new ArgumentException(FormattableString.Invariant(
                $"Not a region: {validity.ValidationError.Message} near ({at.X}, {at.Y}) mm."));
        }

        // The overlay also makes a corner of a side where a hole touches it; without holes there is nothing to touch.
        return Polygonal(holes.Count == 0 && IsOnLattice(outer)
            ? raw
            : PrecisionReducer.ReducePrecision(raw, LatticeModel));
    }

    /// <summary>Loops as a polygon, unchecked.</summary>
    public static NetTopologySuite.Geometries.Geometry RawPolygon(IReadOnlyList<Point2> outer,
        IReadOnlyList<ImmutableArray<Point2>> holes) =>
        Raw(outer, [.. holes.Select(hole => (IReadOnlyList<Point2>)hole)]);

    /// <summary>The geometry grown (or, negative, shrunk) with round corners of four chords a quarter.</summary>
    public static NetTopologySuite.Geometries.Geometry Buffered(NetTopologySuite.Geometries.Geometry geometry, double distance) =>
        Polygonal(geometry.Buffer(distance, 4));

    /// <summary>Points of either.</summary>
    public static NetTopologySuite.Geometries.Geometry Union(NetTopologySuite.Geometries.Geometry a,
        NetTopologySuite.Geometries.Geometry b) =>
        AreApart(a, b) ? Factory.CreateMultiPolygon([.. Polygons(a), .. Polygons(b)]) : OnLattice(a, b, OverlayNG.UNION);

    /// <summary>Points of any.</summary>
    public static NetTopologySuite.Geometries.Geometry Union(IReadOnlyList<NetTopologySuite.Geometries.Geometry> all) =>
        all.Count == 0 ? Empty : Union(all, 0, all.Count);

    /// <summary>Points of both.</summary>
    public static NetTopologySuite.Geometries.Geometry Intersection(NetTopologySuite.Geometries.Geometry a,
        NetTopologySuite.Geometries.Geometry b) =>
        AreApart(a, b) ? Empty : OnLattice(a, b, OverlayNG.INTERSECTION);

    /// <summary>Points of the first alone.</summary>
    public static NetTopologySuite.Geometries.Geometry Difference(NetTopologySuite.Geometries.Geometry a,
        NetTopologySuite.Geometries.Geometry b) =>
        AreApart(a, b) ? a : OnLattice(a, b, OverlayNG.DIFFERENCE);

    /// <summary>Points of the first alone, with corners off the lattice: for looking.</summary>
    public static NetTopologySuite.Geometries.Geometry LooseDifference(NetTopologySuite.Geometries.Geometry a,
        NetTopologySuite.Geometries.Geometry b)
    {
        try
        {
            return Polygonal(OverlayNG.Overlay(a, b, OverlayNG.DIFFERENCE, FloatingModel));
        }
        catch (TopologyException)
        {
            // Rounding has crossed two sides that all but touch, in the overlay or already in an operand that was grown. Cleaned and on a
            // grid of a micrometre they are one.
            return Polygonal(OverlayNG.Overlay(a.Buffer(0), b.Buffer(0), OverlayNG.DIFFERENCE, CoarseModel));
        }
    }

    /// <summary>A geometry of already canonical parts: each an outer loop and its holes.</summary>
    public static NetTopologySuite.Geometries.Geometry Assemble(IReadOnlyList<ImmutableArray<ImmutableArray<Point2>>> parts)
    {
        Polygon[] polygons = [.. parts.Select(part => Raw(part[0], [.. part.Skip(1).Select(h => (IReadOnlyList<Point2>)h)]))];
        return polygons.Length == 1 ? polygons[0] : Factory.CreateMultiPolygon(polygons);
    }

    /// <summary>The connected parts as loops, in the one order that stands for the region.</summary>
    public static ImmutableArray<ImmutableArray<ImmutableArray<Point2>>> Parts(NetTopologySuite.Geometries.Geometry geometry)
    {
        Polygon[] polygons = [.. Polygons(geometry)];
        return Ordered(
            polygons.Select(polygon => ((IReadOnlyList<Point2>)Points(polygon.ExteriorRing),
                polygon.InteriorRings.Select(ring => (IReadOnlyList<Point2>)Points(ring)))),
            Touching(polygons));
    }

    /// <summary>Parts, each an outer loop with its holes, in the one order that stands for the region.</summary>
    /// <param name="parts">Loops on the lattice in any direction; together a region.</param>
    /// <param name="touching">Corners that loops meet in.</param>
    public static ImmutableArray<ImmutableArray<ImmutableArray<Point2>>> Ordered(
        IEnumerable<(IReadOnlyList<Point2> Outer, IEnumerable<IReadOnlyList<Point2>> Holes)> parts, IReadOnlySet<Point2> touching)
    {
        var ordered = new List<ImmutableArray<ImmutableArray<Point2>>>();
        foreach ((IReadOnlyList<Point2> outer, IEnumerable<IReadOnlyList<Point2>> holes) in parts)
        {
            ImmutableArray<Point2> canonical = Loop.Canonical(outer, counterClockwise: true, touching);
            if (!canonical.IsEmpty)
            {
                IEnumerable<ImmutableArray<Point2>> inner = holes
                    .Select(hole => Loop.Canonical(hole, counterClockwise: false, touching))
                    .Where(hole => !hole.IsEmpty)
                    .OrderBy(h => h[0].X).ThenBy(h => h[0].Y).ThenBy(h => h[1].X).ThenBy(h => h[1].Y);
                ordered.Add([canonical, .. inner]);
            }
        }

        return [.. ordered.OrderBy(p => p[0][0].X).ThenBy(p => p[0][0].Y).ThenBy(p => p[0][1].X).ThenBy(p => p[0][1].Y)];
    }

    /// <summary>A point.</summary>
    public static NetTopologySuite.Geometries.Geometry Point(Point2 p) => Factory.CreatePoint(new Coordinate(p.X, p.Y));

    /// <summary>The smallest convex polygon round all points.</summary>
    public static NetTopologySuite.Geometries.Geometry Hull(IEnumerable<Point2> points) =>
        Polygonal(Factory.CreateMultiPointFromCoords([.. points.Select(p => new Coordinate(p.X, p.Y))]).ConvexHull());

    private static NetTopologySuite.Geometries.Geometry OnLattice(
        NetTopologySuite.Geometries.Geometry a, NetTopologySuite.Geometries.Geometry? b, SpatialFunction what) =>
        Polygonal(OverlayNG.Overlay(a, b, what, LatticeModel, new LatticeNoder()));

    // Halves first: what lies together in the list mostly lies together in the plane, and small overlays are quick.
    private static NetTopologySuite.Geometries.Geometry Union(IReadOnlyList<NetTopologySuite.Geometries.Geometry> all, int from, int to)
    {
        if (to - from == 1)
        {
            return all[from];
        }

        int middle = (from + to) / 2;
        return Union(Union(all, from, middle), Union(all, middle, to));
    }

    // Whether rounding can't bring one to the other.
    private static bool AreApart(NetTopologySuite.Geometries.Geometry a, NetTopologySuite.Geometries.Geometry b) =>
        a.EnvelopeInternal.Distance(b.EnvelopeInternal) > 2 * Lattice.Step;

    // Corners that outlines meet in more than once: what touches there must stay a corner of both, straight or not, or the
    // walls over them would not meet in common edges.
    private static HashSet<Point2> Touching(IEnumerable<Polygon> polygons)
    {
        var once = new HashSet<Point2>();
        return [.. polygons.SelectMany(polygon => polygon.InteriorRings.Prepend(polygon.ExteriorRing)).SelectMany(Points)
            .Where(p => !once.Add(p))];
    }

    // Overlays may leave points and lines where regions only touch; a region is its area.
    private static NetTopologySuite.Geometries.Geometry Polygonal(NetTopologySuite.Geometries.Geometry geometry)
    {
        if (geometry is Polygon or MultiPolygon)
        {
            return geometry;
        }

        Polygon[] polygons = [.. Polygons(geometry)];
        return polygons.Length == 0 ? Empty : Factory.CreateMultiPolygon(polygons);
    }

    private static IEnumerable<Polygon> Polygons(NetTopologySuite.Geometries.Geometry geometry) => geometry switch
    {
        Polygon polygon => polygon.IsEmpty ? [] : [polygon],
        GeometryCollection all => all.Geometries.SelectMany(Polygons),
        _ => [],
    };

    private static Polygon Raw(IReadOnlyList<Point2> outer, IReadOnlyList<IReadOnlyList<Point2>> holes) => Factory.CreatePolygon(
        Factory.CreateLinearRing(Coordinates(outer)),
        [.. holes.Select(h => Factory.CreateLinearRing(Coordinates(h)))]);

    private static bool IsOnLattice(IReadOnlyList<Point2> points) => points.All(p => p == Lattice.Snap(p));

    private static Coordinate[] Coordinates(IReadOnlyList<Point2> corners)
    {
        var coordinates = new Coordinate[corners.Count + 1];
        for (int i = 0; i < corners.Count; i++)
        {
            coordinates[i] = new Coordinate(corners[i].X, corners[i].Y);
        }

        coordinates[^1] = coordinates[0].Copy();
        return coordinates;
    }

    private static Point2[] Points(LineString ring)
    {
        CoordinateSequence sequence = ring.CoordinateSequence;
        var points = new Point2[sequence.Count - 1];
        for (int i = 0; i < points.Length; i++)
        {
            points[i] = new Point2(sequence.GetX(i), sequence.GetY(i));
        }

        return points;
    }
}
