using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Exact;

/// <summary>Wide numerators over wide denominators above zero: what the store of points needs to know of them.</summary>
internal static class Fractions
{
    // A quarter of the work of the platform's product of two 128-bit numbers.
    public static Int128 Times(Int128 x, int y)
    {
        ulong low = (ulong)x, factor = (ulong)Math.Abs((long)y);
        ulong p = (low & uint.MaxValue) * factor, q = (low >> 32) * factor;
        ulong sum = p + (q << 32);
        ulong high = ((ulong)(x >> 64) * factor) + (q >> 32) + (sum < p ? 1UL : 0);
        Int128 product = new(high, sum);
        return y < 0 ? -product : product;
    }

    // Halves go up: the largest k with k <= x/w + 1/2.
    public static int Round(double approximate, Int128 x, Int128 w) =>
        IsClear(approximate, out int k) || (2 * x) + w >= 2 * w * k ? k : k - 1;

    public static int Round(double approximate, Int256 x, Int256 w) =>
        IsClear(approximate, out int k) || (x + x + w - Int256.Product(w, 2 * k)).Sign >= 0 ? k : k - 1;

    // Whether a quotient known but for a little rounds to k for certain; if not, it rounds to k or to the one below.
    private static bool IsClear(double approximate, out int k)
    {
        double shifted = approximate + 0.5;
        double nearest = Math.Floor(shifted + 0.5);
        bool clear = Math.Abs(shifted - nearest) > PointStore.Slack;
        k = (int)(clear ? Math.Floor(shifted) : nearest);
        return clear;
    }

    public static bool IsWhole(Int256 x, Int256 w, int value) => (x - Int256.Product(w, value)).Sign == 0;
}
