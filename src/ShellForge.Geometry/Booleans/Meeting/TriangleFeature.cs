using ShellForge.Geometry.Booleans.Exact;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Meeting;

/// <summary>What of a triangle a point lies on: a corner (0..2), an edge (3..5: from corner k - 3), the face, or nothing.</summary>
internal static class TriangleFeature
{
    public const int Outside = -1;
    public const int Face = 6;

    /// <summary>The feature that a point of the triangle's plane lies on.</summary>
    public static int At(LatticePoint3 p, LatticePoint3[] triangle, in Drawing drawing)
    {
        int s0 = Math.Sign(drawing.Orient(triangle[0], triangle[1], p));
        int s1 = Math.Sign(drawing.Orient(triangle[1], triangle[2], p));
        int s2 = Math.Sign(drawing.Orient(triangle[2], triangle[0], p));
        return Of(s0, s1, s2);
    }

    /// <summary>The feature, by the signs of the point's sides of the three edges.</summary>
    public static int Of(int s0, int s1, int s2)
    {
        if ((s0 > 0 || s1 > 0 || s2 > 0) && (s0 < 0 || s1 < 0 || s2 < 0))
        {
            return Outside;
        }

        int zeros = (s0 == 0 ? 1 : 0) | (s1 == 0 ? 2 : 0) | (s2 == 0 ? 4 : 0);
        return zeros switch
        {
            0 => Face,
            1 => 3,
            2 => 4,
            4 => 5,
            3 => 1,
            6 => 2,
            _ => 0,
        };
    }
}
