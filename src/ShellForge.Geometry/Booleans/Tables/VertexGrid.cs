using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Tables;

/// <summary>Vertices in cubes of a fixed size, to find the nearest within one cube's size.</summary>
internal sealed class VertexGrid
{
    private readonly int _size;
    private readonly Dictionary<LatticePoint3, List<(LatticePoint3 Place, int Vertex)>> _cells = [];

    public VertexGrid(int size) => _size = size;

    public void Add(LatticePoint3 p, int vertex)
    {
        LatticePoint3 cell = Cell(p);
        if (!_cells.TryGetValue(cell, out List<(LatticePoint3, int)>? members))
        {
            members = [];
            _cells.Add(cell, members);
        }

        members.Add((p, vertex));
    }

    /// <summary>The vertex nearest to the place (of equals the smaller place), or -1 when none lies within the reach.</summary>
    public int Nearest(LatticePoint3 p, int reach)
    {
        LatticePoint3 home = Cell(p);
        long best = ((long)reach * reach) + 1;
        (LatticePoint3 Place, int Vertex) nearest = (default, -1);
        for (int dx = -1; dx <= 1; dx++)
        {
            for (int dy = -1; dy <= 1; dy++)
            {
                for (int dz = -1; dz <= 1; dz++)
                {
                    if (!_cells.TryGetValue(new LatticePoint3(home.X + dx, home.Y + dy, home.Z + dz),
                        out List<(LatticePoint3, int)>? members))
                    {
                        continue;
                    }

                    foreach ((LatticePoint3 place, int vertex) in members)
                    {
                        long x = place.X - p.X, y = place.Y - p.Y, z = place.Z - p.Z;
                        long distance = (x * x) + (y * y) + (z * z);
                        if (distance < best || (distance == best && nearest.Vertex >= 0 && place < nearest.Place))
                        {
                            best = distance;
                            nearest = (place, vertex);
                        }
                    }
                }
            }
        }

        return nearest.Vertex;
    }

    private LatticePoint3 Cell(LatticePoint3 p) => new(Floor(p.X), Floor(p.Y), Floor(p.Z));

    private int Floor(int value) => value >= 0 ? value / _size : -((-value + _size - 1) / _size);
}
