using ShellForge.Geometry.Booleans.Exact;
using ShellForge.Geometry.Booleans.Ingest;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Settling;

/// <summary>
/// Partners for all half-edges of a clean closed mesh, also where more than two faces meet in an edge: there the two faces that
/// bound one wedge of solid are partners, so that each wedge goes round the edge by itself.
/// </summary>
internal static class SolidWedges
{
    /// <summary>The partner of each half-edge, and the half-edges of each edge with more than two faces.</summary>
    internal readonly record struct Pairing(int[] Partner, List<int[]> CrowdedEdges);

    /// <summary>
    /// The partners, or null when faces that bound solid from one side and from the other do not alternate round some edge.
    /// </summary>
    public static Pairing? Pair(Operand mesh)
    {
        int[] partner = [.. mesh.Partner];
        Dictionary<(int, int), List<int>> crowded = [];
        List<(int, int)> order = [];
        for (int h = 0; h < partner.Length; h++)
        {
            if (partner[h] < 0)
            {
                int from = mesh.Corners[h], to = mesh.Corners[Operand.Next(h)];
                (int, int) key = (Math.Min(from, to), Math.Max(from, to));
                if (!crowded.TryGetValue(key, out List<int>? uses))
                {
                    uses = [];
                    crowded.Add(key, uses);
                    order.Add(key);
                }

                uses.Add(h);
            }
        }

        List<int[]> edges = [];
        foreach ((int, int) key in order)
        {
            int[] fan = Sorted(mesh, key.Item1, crowded[key]);
            for (int i = 0; i < fan.Length; i++)
            {
                // Solid lies between a face that runs against the edge and the next one counter-clockwise, which runs along it.
                int next = fan[i + 1 == fan.Length ? 0 : i + 1];
                bool along = mesh.Corners[fan[i]] == key.Item1;
                if (along == (mesh.Corners[next] == key.Item1))
                {
                    return null;
                }

                if (!along)
                {
                    partner[fan[i]] = next;
                    partner[next] = fan[i];
                }
            }

            edges.Add(fan);
        }

        return new Pairing(partner, edges);
    }

    // Counter-clockwise about the direction from the lower vertex number to the higher.
    private static int[] Sorted(Operand mesh, int low, List<int> uses)
    {
        int first = uses[0];
        LatticePoint3 a = mesh.Vertices[low];
        int other = mesh.Corners[first] == low ? mesh.Corners[Operand.Next(first)] : mesh.Corners[first];
        LatticePoint3 b = mesh.Vertices[other];
        int[] fan = [.. uses];
        Array.Sort(fan, (g, h) =>
        {
            int byHalf = Half(g).CompareTo(Half(h));
            int turn = byHalf != 0 ? byHalf : -Turn(g, h);
            return turn != 0 ? turn : g.CompareTo(h);
        });
        return fan;

        int Half(int h)
        {
            int turn = Turn(first, h);
            if (turn != 0)
            {
                return turn > 0 ? 0 : 1;
            }

            int dot = Plane.NormalDotSign(mesh.PlaneOf(first / 3), mesh.PlaneOf(h / 3));
            return (Along(first) == Along(h) ? dot : -dot) > 0 ? 0 : 1;
        }

        int Turn(int g, int h)
        {
            (Int128 x, Int128 y, Int128 z) = Plane.NormalCross(mesh.PlaneOf(g / 3), mesh.PlaneOf(h / 3));

            // The product lies along the edge: any component in which the edge is not zero has its sense.
            int sense = b.X != a.X ? Int128.Sign(x) * Math.Sign(b.X - a.X)
                : b.Y != a.Y ? Int128.Sign(y) * Math.Sign(b.Y - a.Y) : Int128.Sign(z) * Math.Sign(b.Z - a.Z);
            return Along(g) == Along(h) ? sense : -sense;
        }

        bool Along(int h) => mesh.Corners[h] == low;
    }
}
