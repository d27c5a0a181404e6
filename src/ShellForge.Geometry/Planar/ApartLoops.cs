using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Planar;

/// <summary>Loops on the lattice that share no point with each other or themselves: told exactly, by a sweep over their sides.</summary>
internal static class ApartLoops
{
    /// <summary>Whether loops, corners not repeated, are such.</summary>
    public static bool Are(params IEnumerable<IReadOnlyList<Point2>> loops)
    {
        var sides = new List<LatticeSide>();
        var nextOf = new List<int>();
        foreach (IReadOnlyList<Point2> loop in loops)
        {
            int start = sides.Count;
            for (int i = 0; i < loop.Count; i++)
            {
                bool isLast = i + 1 == loop.Count;
                ((int X, int Y) from, (int X, int Y) to) = (Steps(loop[i]), Steps(loop[isLast ? 0 : i + 1]));
                if (from == to)
                {
                    return false;
                }

                nextOf.Add(isLast ? start : sides.Count + 1);
                sides.Add(new LatticeSide(sides.Count, from, to));
            }
        }

        foreach ((LatticeSide a, LatticeSide b) in LatticeSide.Pairs([.. sides]))
        {
            bool isNext = nextOf[a.From] == b.From;
            bool isBefore = nextOf[b.From] == a.From;
            if (isNext || isBefore ? (isNext && isBefore) || (isNext ? a.TurnsBack(b) : b.TurnsBack(a)) : a.Meets(b))
            {
                return false;
            }
        }

        return true;
    }

    private static (int X, int Y) Steps(Point2 p) => (Lattice.ToSteps(p.X), Lattice.ToSteps(p.Y));
}
