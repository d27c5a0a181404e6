using ShellForge.Geometry.Booleans.Arranging;
using ShellForge.Geometry.Booleans.Exact;
using ShellForge.Geometry.Booleans.Ingest;
using ShellForge.Geometry.Booleans.Meeting;
using ShellForge.Geometry.Booleans.Tables;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Classifying;

/// <summary>Winding numbers of all operands at a probe, by one exact ray along x.</summary>
internal sealed class WindingRay
{
    private readonly OperandSet _scene;
    private readonly PointStore _points;
    private readonly List<int> _hits = [];

    public WindingRay(OperandSet scene, PointStore points)
    {
        _scene = scene;
        _points = points;
    }

    public void Count(in Probe probe, int[] winding)
    {
        LatticePoint3 near = _points.Rounded(probe.Point);
        IntBox box = new(near.X - 1, near.Y - 1, near.Z - 1, int.MaxValue, near.Y + 1, near.Z + 1);
        for (int operand = 0; operand < winding.Length; operand++)
        {
            Operand mesh = _scene.Operands[operand];
            _hits.Clear();
            mesh.Tree.Query(box, _hits);
            int sum = 0;
            foreach (int triangle in _hits)
            {
                sum += Crossing(probe, mesh.Corner(triangle, 0), mesh.Corner(triangle, 1), mesh.Corner(triangle, 2));
            }

            winding[operand] = sum;
        }
    }

    // 1 when the ray leaves through the triangle, -1 when it enters, else 0. A ray that runs along the triangle's plane meets
    // nothing: the probe is never in that plane.
    private int Crossing(in Probe probe, LatticePoint3 a, LatticePoint3 b, LatticePoint3 c)
    {
        Plane plane = new(a, b, c);
        int facing = Math.Sign(plane.Nx);
        if (facing == 0)
        {
            return 0;
        }

        int side = probe.Orient(_points, a, b, 1, 2);
        if (side != facing || probe.Orient(_points, b, c, 1, 2) != side || probe.Orient(_points, c, a, 1, 2) != side)
        {
            return 0;
        }

        return probe.Side(_points, plane) == -facing ? facing : 0;
    }
}
