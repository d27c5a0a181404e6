using System.Numerics;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Testing.Solids;

/// <summary>
/// Whether a place lies in a solid, by whole numbers of any size: rays against every triangle, no tree of boxes, no filter, no line
/// shared with the kernel. Places lie halfway between lattice points.
/// </summary>
public static class ExactMembership
{
    // Directions that no edge of a made body has; the next is taken when a ray meets an edge.
    private static readonly (int X, int Y, int Z)[] Directions = [(1000003, 7919, -104729), (-15485863, 99991, 611953),
        (31, -1299709, 15487)];

    /// <summary>In a tree of sources, maps and booleans, each leaf on the lattice as it is.</summary>
    /// <param name="solid">The tree.</param>
    /// <param name="place">Twice the place, in lattice steps: odd numbers.</param>
    public static bool IsIn(Solid solid, LatticePoint3 place) => IsIn(solid, Transform3.Identity, place);

    /// <summary>The winding number of a mesh round a place.</summary>
    public static int Winding(Mesh mesh, LatticePoint3 place)
    {
        foreach ((int X, int Y, int Z) direction in Directions)
        {
            if (Winding(mesh, place, direction) is { } winding)
            {
                return winding;
            }
        }

        throw new InvalidOperationException("Every ray meets an edge.");
    }

    /// <summary>All leaves of a tree, each on the lattice as it is.</summary>
    public static IEnumerable<Mesh> Leaves(Solid solid) => Leaves(solid, Transform3.Identity);

    private static IEnumerable<Mesh> Leaves(Solid solid, Transform3 map) => solid switch
    {
        MovedSolid moved => Leaves(moved.Operand, moved.Map.Then(map)),
        TaggedSolid tagged => Leaves(tagged.Operand, map),
        UnionSolid union => union.Operands.SelectMany(o => Leaves(o, map)),
        IntersectionSolid common => common.Operands.SelectMany(o => Leaves(o, map)),
        DifferenceSolid cut => cut.Cutters.Prepend(cut.Body).SelectMany(o => Leaves(o, map)),
        _ => [Meshes.Of(solid.Moved(map))],
    };

    private static bool IsIn(Solid solid, Transform3 map, LatticePoint3 place) => solid switch
    {
        MovedSolid moved => IsIn(moved.Operand, moved.Map.Then(map), place),
        TaggedSolid tagged => IsIn(tagged.Operand, map, place),
        UnionSolid union => union.Operands.Any(o => IsIn(o, map, place)),
        IntersectionSolid common => common.Operands.Length > 0 && common.Operands.All(o => IsIn(o, map, place)),
        DifferenceSolid cut => IsIn(cut.Body, map, place) && !cut.Cutters.Any(o => IsIn(o, map, place)),
        _ => Winding(Meshes.Of(solid.Moved(map)), place) > 0,
    };

    private static int? Winding(Mesh mesh, LatticePoint3 place, (int X, int Y, int Z) direction)
    {
        int winding = 0;
        BigInteger[] ray = [direction.X, direction.Y, direction.Z];
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            BigInteger[] a = From(mesh, 3 * t, place), b = From(mesh, (3 * t) + 1, place), c = From(mesh, (3 * t) + 2, place);
            int ab = Determinant(ray, a, b), bc = Determinant(ray, b, c), ca = Determinant(ray, c, a);
            if ((ab >= 0 && bc >= 0 && ca >= 0) || (ab <= 0 && bc <= 0 && ca <= 0))
            {
                if (ab == 0 || bc == 0 || ca == 0)
                {
                    // Along an edge, through a corner, or in the triangle's plane; a triangle seen edge-on and missed is no matter.
                    if (ab == 0 && bc == 0 && ca == 0 && Determinant(a, b, c) != 0)
                    {
                        continue;
                    }

                    return null;
                }

                // Ahead when the place lies on the side of the plane that the ray comes from.
                winding += Determinant(a, b, c) == ab ? ab : 0;
            }
        }

        return winding;
    }

    private static BigInteger[] From(Mesh mesh, int corner, LatticePoint3 place)
    {
        LatticePoint3 v = mesh.Vertices[mesh.Triangles[corner]];
        return [(2 * (BigInteger)v.X) - place.X, (2 * (BigInteger)v.Y) - place.Y, (2 * (BigInteger)v.Z) - place.Z];
    }

    private static int Determinant(BigInteger[] a, BigInteger[] b, BigInteger[] c) =>
        ((a[0] * ((b[1] * c[2]) - (b[2] * c[1]))) + (a[1] * ((b[2] * c[0]) - (b[0] * c[2])))
            + (a[2] * ((b[0] * c[1]) - (b[1] * c[0])))).Sign;
}
