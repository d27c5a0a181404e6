using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Geometry.Solids;

/// <summary>
/// The bodies that parts are made from. Corners lie on the lattice as long as nothing is mapped, and every planar face is one
/// sheet, so that coplanar faces of different bodies stay coplanar to the bit.
/// </summary>
public static class Shapes
{
    /// <summary>A straight prism over a region. An empty region gives the empty solid.</summary>
    /// <param name="region">Its cross-section.</param>
    /// <param name="fromZ">Lower end in mm.</param>
    /// <param name="toZ">Upper end in mm, above the lower one by at least a lattice step.</param>
    /// <returns>
    /// A solid whose caps have the region's corners and no others. Where parts of the region touch at a point, the prism touches
    /// itself along an edge: the evaluator opens that contact and lists it.
    /// </returns>
    /// <exception cref="ArgumentException">There is no height.</exception>
    public static Solid Extrude(Region region, double fromZ, double toZ)
    {
        (double low, double high) = Heights(fromZ, toZ);
        if (region.IsEmpty)
        {
            return Solid.Empty;
        }

        var builder = new SourceBuilder();
        foreach (ImmutableArray<ImmutableArray<Point2>> part in region.PartLoops)
        {
            AddCap(builder, part, low, up: false);
            AddCap(builder, part, high, up: true);
        }

        foreach (ImmutableArray<Point2> loop in region.Loops)
        {
            AddWall(builder, loop, low, loop, high);
        }

        return builder.ToSolid();
    }

    /// <summary>A cone frustum between two rings of one count and phase.</summary>
    /// <param name="lower">Ring at the lower end.</param>
    /// <param name="lowerZ">Lower end in mm.</param>
    /// <param name="upper">Ring at the upper end.</param>
    /// <param name="upperZ">Upper end in mm.</param>
    /// <param name="axis">Where the axis stands; goes onto the lattice.</param>
    /// <exception cref="ArgumentException">Counts or phases differ, or there is no height.</exception>
    public static Solid Taper(Ring lower, double lowerZ, Ring upper, double upperZ, Point2 axis)
    {
        if (lower.Count != upper.Count || lower.Phase != upper.Phase)
        {
            throw new ArgumentException("Coaxial rings must share count and phase.");
        }

        Point2 shift = Lattice.Snap(axis);
        return Loft([.. lower.Points.Select(p => p + shift)], lowerZ, [.. upper.Points.Select(p => p + shift)], upperZ);
    }

    /// <summary>
    /// The body between two outlines of equal counts; corner i below is joined to corner i above. A side that does not come out flat is
    /// two triangles.
    /// </summary>
    /// <param name="lower">Outline of the lower end, counter-clockwise.</param>
    /// <param name="lowerZ">Lower end in mm.</param>
    /// <param name="upper">Outline of the upper end, counter-clockwise.</param>
    /// <param name="upperZ">Upper end in mm.</param>
    /// <exception cref="ArgumentException">Counts differ, an outline crosses itself or runs clockwise, or there is no height.</exception>
    public static Solid Loft(IReadOnlyList<Point2> lower, double lowerZ, IReadOnlyList<Point2> upper, double upperZ) =>
        Loft([(lower, lowerZ), (upper, upperZ)]);

    /// <summary>
    /// The body through outlines of equal counts, one over the other; corner i of each is joined to corner i of the next.
    /// </summary>
    /// <param name="levels">Two outlines or more, counter-clockwise, each with its z in mm, rising.</param>
    /// <exception cref="ArgumentException">
    /// Fewer than two, counts differ, an outline crosses itself or runs clockwise, or two lie at one height.
    /// </exception>
    public static Solid Loft(IReadOnlyList<(IReadOnlyList<Point2> Outline, double Z)> levels)
    {
        if (levels.Count < 2)
        {
            throw new ArgumentException("A body between outlines needs two of them.");
        }

        int count = levels[0].Outline.Count;
        for (int i = 1; i < levels.Count; i++)
        {
            _ = Heights(levels[i - 1].Z, levels[i].Z);
            if (levels[i].Outline.Count != count)
            {
                throw new ArgumentException(
                    $"Outlines of {count} and {levels[i].Outline.Count} corners can't be joined corner by corner.");
            }
        }

        ImmutableArray<Point2>[] outlines = [.. levels.Select(level => Outline(level.Outline))];
        double[] heights = [.. levels.Select(level => Lattice.Snap(level.Z))];
        var builder = new SourceBuilder();
        AddCap(builder, [outlines[0]], heights[0], up: false);
        AddCap(builder, [outlines[^1]], heights[^1], up: true);
        for (int i = 1; i < outlines.Length; i++)
        {
            AddWall(builder, outlines[i - 1], heights[i - 1], outlines[i], heights[i]);
        }

        return builder.ToSolid();
    }

    /// <summary>The box between two corners.</summary>
    /// <exception cref="ArgumentException">It has no volume.</exception>
    public static Solid Box(Point3 min, Point3 max) => Extrude(Region.Rectangle(min.XY, max.XY), min.Z, max.Z);

    /// <summary>
    /// A ball about the origin as a globe of flat faces: corners on the sphere, towards its inside to within a lattice step.
    /// </summary>
    /// <param name="radius">In mm, above 0.</param>
    /// <param name="count">Corners round the equator, a multiple of 4.</param>
    /// <exception cref="ArgumentException">The count is not a positive multiple of 4.</exception>
    public static Solid Sphere(double radius, int count)
    {
        if (count < 4 || count % 4 != 0)
        {
            throw new ArgumentException($"A sphere's count must be a positive multiple of 4, not {count}.");
        }

        IEnumerable<Point2> profile = Enumerable.Range(0, (count / 2) + 1)
            .Select(i => Point2.Polar(radius, Angle.FromDegrees(-90 + (360.0 * i / count))));
        return Revolve([.. profile], count, Angle.Zero, RingSide.Inside);
    }

    /// <summary>The body that an outline sweeps when it turns about the z axis.</summary>
    /// <param name="profileRZ">
    /// Corners (r, z) in mm of a simple closed outline, in either direction, r from 0. It may run along the axis or touch it.
    /// </param>
    /// <param name="count">Corners of each ring.</param>
    /// <param name="phase">Direction of the first corner.</param>
    /// <param name="side">On which side of its circle each ring lies.</param>
    /// <exception cref="ArgumentException">The outline crosses itself or has no area.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A radius is negative.</exception>
    public static Solid Revolve(IReadOnlyList<Point2> profileRZ, int count, Angle phase, RingSide side) =>
        new Revolution(Outline(profileRZ, anyDirection: true), count, phase, side).ToSolid();

    private static (double Low, double High) Heights(double fromZ, double toZ)
    {
        (double low, double high) = (Lattice.Snap(fromZ), Lattice.Snap(toZ));
        return low < high ? (low, high) : throw new ArgumentException(FormattableString.Invariant(
            $"A body from z = {fromZ} to z = {toZ} mm has no height."));
    }

    // On the lattice, with all its corners: joining corner by corner allows no dropping of straight ones.
    private static ImmutableArray<Point2> Outline(IReadOnlyList<Point2> corners, bool anyDirection = false)
    {
        ImmutableArray<Point2> snapped = [.. corners.Select(Lattice.Snap)];
        _ = Region.Polygon(snapped);
        bool clockwise = Loop.SignedArea(snapped) < 0;
        return !clockwise ? snapped
            : anyDirection ? [.. snapped.Reverse()]
            : throw new ArgumentException("An outline must run counter-clockwise.");
    }

    private static void AddCap(SourceBuilder builder, IReadOnlyList<ImmutableArray<Point2>> loops, double z, bool up)
    {
        ImmutableArray<int> triangles = ConstrainedDelaunay.Triangulate(loops, out ImmutableArray<Point2> corners);
        int[] numbers = [.. corners.Select(p => builder.Corner(new Point3(p.X, p.Y, z)))];
        int sheet = builder.NewSheet();
        for (int i = 0; i < triangles.Length; i += 3)
        {
            (int b, int c) = up ? (triangles[i + 1], triangles[i + 2]) : (triangles[i + 2], triangles[i + 1]);
            builder.Triangle(numbers[triangles[i]], numbers[b], numbers[c], sheet);
        }
    }

    private static void AddWall(SourceBuilder builder, ImmutableArray<Point2> below, double low, ImmutableArray<Point2> above, double high)
    {
        int[] lower = [.. below.Select(p => builder.Corner(new Point3(p.X, p.Y, low)))];
        int[] upper = [.. above.Select(p => builder.Corner(new Point3(p.X, p.Y, high)))];
        for (int i = 0; i < lower.Length; i++)
        {
            int j = (i + 1) % lower.Length;
            builder.Quad(lower[i], lower[j], upper[j], upper[i]);
        }
    }
}
