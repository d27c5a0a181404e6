namespace ShellForge.Geometry.Numerics;

/// <summary>
/// Exact sums and products of doubles as expansions: unevaluated sums of doubles that don't overlap, smallest first, without
/// zeros; the last one has the sign of the whole.
/// Source: J. R. Shewchuk, Adaptive precision floating-point arithmetic and fast robust geometric predicates, 1997.
/// </summary>
internal static class Expansion
{
    /// <summary>a - b exactly; returns how many terms it has (0 to 2).</summary>
    public static int Difference(double a, double b, Span<double> result)
    {
        double high = a - b;
        double bVirtual = a - high;
        double aVirtual = high + bVirtual;
        double low = (bVirtual - b) + (a - aVirtual);
        int count = 0;
        Append(low, result, ref count);
        Append(high, result, ref count);
        return count;
    }

    /// <summary>e + f (or e - f) exactly; returns how many terms it has, at most as many as both together.</summary>
    public static int Sum(ReadOnlySpan<double> e, ReadOnlySpan<double> f, bool minus, Span<double> result)
    {
        int count = 0;
        int i = 0;
        int j = 0;
        double sign = minus ? -1 : 1;
        if (e.Length + f.Length == 0)
        {
            return 0;
        }

        double q = TakeSmaller(e, f, sign, ref i, ref j);
        while (i < e.Length || j < f.Length)
        {
            double next = TakeSmaller(e, f, sign, ref i, ref j);
            double high = q + next;
            double nextVirtual = high - q;
            double qVirtual = high - nextVirtual;
            Append((next - nextVirtual) + (q - qVirtual), result, ref count);
            q = high;
        }

        Append(q, result, ref count);
        return count;
    }

    /// <summary>e times b exactly; returns how many terms it has, at most twice as many.</summary>
    public static int Scale(ReadOnlySpan<double> e, double b, Span<double> result)
    {
        int count = 0;
        if (e.Length == 0)
        {
            return 0;
        }

        double q = e[0] * b;
        Append(Math.FusedMultiplyAdd(e[0], b, -q), result, ref count);
        for (int i = 1; i < e.Length; i++)
        {
            double product = e[i] * b;
            double productLow = Math.FusedMultiplyAdd(e[i], b, -product);
            double sum = q + productLow;
            double virtualLow = sum - q;
            Append((productLow - virtualLow) + (q - (sum - virtualLow)), result, ref count);
            q = product + sum;
            Append(sum - (q - product), result, ref count);
        }

        Append(q, result, ref count);
        return count;
    }

    /// <summary>e times an expansion of at most two terms; returns how many terms it has, at most four times as many as e.</summary>
    public static int Product(ReadOnlySpan<double> e, ReadOnlySpan<double> two, Span<double> result)
    {
        if (two.Length == 0)
        {
            return 0;
        }

        if (two.Length == 1)
        {
            return Scale(e, two[0], result);
        }

        Span<double> low = stackalloc double[2 * e.Length];
        Span<double> high = stackalloc double[2 * e.Length];
        int lowCount = Scale(e, two[0], low);
        int highCount = Scale(e, two[1], high);
        return Sum(low[..lowCount], high[..highCount], minus: false, result);
    }

    /// <summary>The sign of the value.</summary>
    public static int Sign(ReadOnlySpan<double> e) => e.Length == 0 ? 0 : Math.Sign(e[^1]);

    private static double TakeSmaller(ReadOnlySpan<double> e, ReadOnlySpan<double> f, double sign, ref int i, ref int j) =>
        j >= f.Length || (i < e.Length && Math.Abs(e[i]) < Math.Abs(f[j])) ? e[i++] : sign * f[j++];

    private static void Append(double term, Span<double> result, ref int count)
    {
        if (term != 0)
        {
            result[count++] = term;
        }
    }
}
