using System.Numerics;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Physics.Light;

/// <summary>
/// Triangles of all solids that may stand in the light, in a tree of boxes kept in flat arrays. It answers two questions: whether anything
/// lies between two points, and what a ray meets first. Triangles are two-sided. Coordinates are float32, which holds lattice places
/// within 256 mm exactly; a ray through a shared edge meets one of its triangles or both, never none.
/// </summary>
public sealed class ShadowTree
{
    // Barycentric slack that closes the seam between neighbouring triangles: some units in the last place of float32 products.
    private const double Seam = 1e-6;

    // A ray this steeply along a triangle's plane doesn't meet it: the determinant is lost in rounding.
    private const double Grazing = 1e-12;

    // Stands for a slope of zero; its reciprocal times 512 mm is still finite in float32.
    private const double Flat = 1e-30;

    private readonly Node[] _nodes;
    private readonly Vector3[] _corners;
    private readonly Vector3[] _firstEdges;
    private readonly Vector3[] _secondEdges;
    private readonly int[] _materials;

    internal ShadowTree(Node[] nodes, Vector3[] corners, Vector3[] firstEdges, Vector3[] secondEdges, int[] materials)
    {
        _nodes = nodes;
        _corners = corners;
        _firstEdges = firstEdges;
        _secondEdges = secondEdges;
        _materials = materials;
    }

    /// <summary>A tree without a triangle.</summary>
    public static ShadowTree Empty { get; } = new ShadowTreeBuilder().Build();

    /// <summary>How many triangles there are.</summary>
    public int TriangleCount => _corners.Length;

    /// <summary>Whether a triangle lies on the open segment between two points.</summary>
    /// <param name="from">One end, mm.</param>
    /// <param name="to">The other end, mm.</param>
    public bool Blocks(Point3 from, Point3 to) => BlocksSegment(Single(from), Single(to));

    private bool BlocksSegment(Vector3 from, Vector3 to)
    {
        if (_corners.Length == 0)
        {
            return false;
        }

        Vector3 along = to - from;
        Vector3 inverse = Inverse(along);
        Span<int> stack = stackalloc int[64];
        int top = 0;
        stack[top++] = 0;
        while (top > 0)
        {
            ref readonly Node node = ref _nodes[stack[--top]];
            if (!Enters(node, from, inverse, 1))
            {
                continue;
            }

            if (node.Count == 0)
            {
                stack[top++] = node.First;
                stack[top++] = node.First + 1;
                continue;
            }

            for (int i = node.First; i < node.First + node.Count; i++)
            {
                float t = Meets(i, from, along);
                if (t > 0 && t < 1)
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>The nearest triangle along a ray.</summary>
    /// <param name="from">Where the ray starts, mm.</param>
    /// <param name="along">Its direction, of length 1.</param>
    /// <param name="most">How far it is followed, mm.</param>
    /// <param name="hit">What it meets, when it does.</param>
    public bool Meets(Point3 from, Point3 along, double most, out SurfaceHit hit)
    {
        Vector3 origin = Single(from);
        Vector3 direction = Single(along);
        Vector3 inverse = Inverse(direction);
        float nearest = (float)most;
        int found = -1;
        Span<int> stack = stackalloc int[64];
        int top = 0;
        if (_corners.Length > 0)
        {
            stack[top++] = 0;
        }

        while (top > 0)
        {
            ref readonly Node node = ref _nodes[stack[--top]];
            if (!Enters(node, origin, inverse, nearest))
            {
                continue;
            }

            if (node.Count == 0)
            {
                // The child on the ray's side is looked at first: it shortens the ray for the other.
                bool forward = direction[node.Axis] >= 0;
                stack[top++] = forward ? node.First + 1 : node.First;
                stack[top++] = forward ? node.First : node.First + 1;
                continue;
            }

            for (int i = node.First; i < node.First + node.Count; i++)
            {
                float t = Meets(i, origin, direction);
                if (t > 0 && t < nearest)
                {
                    (nearest, found) = (t, i);
                }
            }
        }

        if (found < 0)
        {
            hit = default;
            return false;
        }

        Vector3 across = Cross(_firstEdges[found], _secondEdges[found]);
        Vector3 normal = across / MathF.Sqrt(Dot(across, across));
        bool outside = Dot(normal, direction) < 0;
        Point3 outward = new(normal.X, normal.Y, normal.Z);
        hit = new SurfaceHit(from + ((double)nearest * along), outside ? outward : -1 * outward, nearest, _materials[found], outside);
        return true;
    }

    // An axis-parallel ray gets a slope too small to matter: zero times infinity would be no number.
    private static Vector3 Inverse(Vector3 along) => new(
        1 / (along.X == 0 ? (float)Flat : along.X), 1 / (along.Y == 0 ? (float)Flat : along.Y), 1 / (along.Z == 0 ? (float)Flat : along.Z));

    // Slabs: the parts of the ray between the box's pairs of planes must overlap within (0, most). No operand is ever no number, so the
    // processor's own least and greatest will do.
    private static bool Enters(in Node node, Vector3 from, Vector3 inverse, float most)
    {
        Vector3 low = (node.Low - from) * inverse;
        Vector3 high = (node.High - from) * inverse;
        Vector3 near = Vector3.MinNative(low, high);
        Vector3 far = Vector3.MaxNative(low, high);
        float enter = float.MaxNative(float.MaxNative(near.X, near.Y), float.MaxNative(near.Z, 0));
        float leave = float.MinNative(float.MinNative(far.X, far.Y), float.MinNative(far.Z, most));
        return enter <= leave;
    }

    // Parameter along the ray, or -1. Source: Moeller and Trumbore, Fast, minimum storage ray/triangle intersection, 1997.
    private float Meets(int triangle, Vector3 from, Vector3 along)
    {
        Vector3 first = _firstEdges[triangle];
        Vector3 second = _secondEdges[triangle];
        Vector3 p = Cross(along, second);
        float determinant = Dot(first, p);
        if (MathF.Abs(determinant) < (float)Grazing)
        {
            return -1;
        }

        float inverse = 1 / determinant;
        Vector3 s = from - _corners[triangle];
        float u = Dot(s, p) * inverse;
        if (u < -(float)Seam || u > 1 + (float)Seam)
        {
            return -1;
        }

        Vector3 q = Cross(s, first);
        float v = Dot(along, q) * inverse;
        return v < -(float)Seam || u + v > 1 + (float)Seam ? -1 : Dot(second, q) * inverse;
    }

    // Written out: the platform's own may fuse multiplication and addition where the processor can, and the last bit would differ.
    private static Vector3 Cross(Vector3 a, Vector3 b) =>
        new((a.Y * b.Z) - (a.Z * b.Y), (a.Z * b.X) - (a.X * b.Z), (a.X * b.Y) - (a.Y * b.X));

    private static float Dot(Vector3 a, Vector3 b) => (a.X * b.X) + (a.Y * b.Y) + (a.Z * b.Z);

    private static Vector3 Single(Point3 point) => new((float)point.X, (float)point.Y, (float)point.Z);

    /// <summary>A box with its children (<see cref="Count"/> is 0) or its triangles.</summary>
    /// <param name="Low">Lower corner.</param>
    /// <param name="High">Upper corner.</param>
    /// <param name="First">First of two neighbouring children, or first triangle.</param>
    /// <param name="Count">How many triangles; 0 for a box of boxes.</param>
    /// <param name="Axis">Axis along which the children were parted.</param>
    internal readonly record struct Node(Vector3 Low, Vector3 High, int First, int Count, int Axis);
}

/// <summary>Where a ray meets a surface.</summary>
/// <param name="At">The place, mm.</param>
/// <param name="Normal">The surface's direction on the ray's side, of length 1.</param>
/// <param name="Distance">Length of the ray, mm.</param>
/// <param name="Material">Number of the surface's material.</param>
/// <param name="FromOutside">Whether the ray came from outside the solid.</param>
public readonly record struct SurfaceHit(Point3 At, Point3 Normal, double Distance, int Material, bool FromOutside);
