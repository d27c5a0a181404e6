using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Rounding;

/// <content>Edges that are not fixed are flipped: first to Delaunay, then away from needles.</content>
internal sealed partial class PlanarMesh
{
    // Passes over all edges; each flip makes the smaller of two altitudes larger, and hardly anything needs more than one pass.
    private const int NeedlePasses = 4;

    /// <summary>Flips edges that are not fixed until every one is locally Delaunay.</summary>
    public void Improve()
    {
        for (int h = 0; h < 3 * TriangleCount; h++)
        {
            if (_twin[h] > h)
            {
                _suspects.Push(h);
            }
        }

        Legalize();
    }

    /// <summary>
    /// Flips what leads past a corner within a step, where that gives better triangles. A Delaunay edge may pass so near on a narrow face;
    /// rounding then tilts the needle between edge and corner out of the face, and it may pierce a neighbour.
    /// </summary>
    public void FlipNeedles()
    {
        bool any = true;
        for (int pass = 0; pass < NeedlePasses && any; pass++)
        {
            any = false;
            for (int h = 0; h < 3 * TriangleCount; h++)
            {
                int g = _twin[h];
                if (g < h || _fixed[h])
                {
                    continue;
                }

                int a = _corner[h], b = _corner[g], c = _corner[Previous(h)], d = _corner[Previous(g)];
                double before = Math.Min(Altitude(a, b, c), Altitude(b, a, d));
                if (before < 1 && Orient(a, d, c) > 0 && Orient(d, b, c) > 0 && Math.Min(Altitude(a, d, c), Altitude(d, b, c)) > before)
                {
                    Flip(h);
                    any = true;
                }
            }
        }
    }

    private double Altitude(int a, int b, int c) =>
        Orient(a, b, c) / Math.Sqrt(Math.Max(Squared(a, b), Math.Max(Squared(b, c), Squared(c, a))));

    private double Squared(int a, int b)
    {
        double u = _u[b] - _u[a], v = _v[b] - _v[a];
        return (u * u) + (v * v);
    }

    private void Legalize()
    {
        while (_suspects.TryPop(out int h))
        {
            int g = _twin[h];
            if (g < 0 || _fixed[h] || !InCircle(_corner[h], _corner[Next(h)], _corner[Previous(h)], _corner[Previous(g)]))
            {
                continue;
            }

            Flip(h);
            int t = h / 3, s = g / 3;
            _suspects.Push(3 * t);
            _suspects.Push((3 * t) + 2);
            _suspects.Push(3 * s);
            _suspects.Push((3 * s) + 1);
        }
    }

    private bool InCircle(int a, int b, int c, int d)
    {
        long au = _u[a] - _u[d], av = _v[a] - _v[d], bu = _u[b] - _u[d], bv = _v[b] - _v[d], cu = _u[c] - _u[d], cv = _v[c] - _v[d];
        long bc = (bu * cv) - (bv * cu), ca = (cu * av) - (cv * au), ab = (au * bv) - (av * bu);
        long al = (au * au) + (av * av), bl = (bu * bu) + (bv * bv), cl = (cu * cu) + (cv * cv);
        double x = (double)al * bc, y = (double)bl * ca, z = (double)cl * ab;
        double value = x + y + z;
        if (Math.Abs(value) > (Math.Abs(x) + Math.Abs(y) + Math.Abs(z)) * Tolerances.ThreeProductShare)
        {
            return value > 0;
        }

        return ((Int128)al * bc) + ((Int128)bl * ca) + ((Int128)cl * ab) > 0;
    }
}
