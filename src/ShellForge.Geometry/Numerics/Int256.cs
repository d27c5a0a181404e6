using System.Runtime.CompilerServices;

namespace ShellForge.Geometry.Numerics;

/// <summary>
/// A signed integer of 256 bits, two's complement, for predicates on constructed points. Results must fit: the callers state
/// their bit budgets (at most 237 bits) and tests hold them against a library of arbitrary size.
/// </summary>
internal readonly struct Int256
{
    private readonly ulong _a0;
    private readonly ulong _a1;
    private readonly ulong _a2;
    private readonly ulong _a3;

    private Int256(ulong a0, ulong a1, ulong a2, ulong a3)
    {
        _a0 = a0;
        _a1 = a1;
        _a2 = a2;
        _a3 = a3;
    }

    public int Sign => (long)_a3 < 0 ? -1 : (_a0 | _a1 | _a2 | _a3) == 0 ? 0 : 1;

    public static Int256 From(Int128 value)
    {
        ulong extension = value < 0 ? ulong.MaxValue : 0;
        return new Int256(Low(value), High(value), extension, extension);
    }

    public static Int256 operator +(Int256 x, Int256 y)
    {
        ulong r0 = x._a0 + y._a0;
        ulong carry = r0 < x._a0 ? 1UL : 0;
        ulong r1 = AddCarry(x._a1, y._a1, ref carry);
        ulong r2 = AddCarry(x._a2, y._a2, ref carry);
        return new Int256(r0, r1, r2, x._a3 + y._a3 + carry);
    }

    public static Int256 operator -(Int256 x)
    {
        ulong r0 = ~x._a0 + 1;
        ulong carry = r0 == 0 ? 1UL : 0;
        ulong r1 = AddCarry(~x._a1, 0, ref carry);
        ulong r2 = AddCarry(~x._a2, 0, ref carry);
        return new Int256(r0, r1, r2, ~x._a3 + carry);
    }

    public static Int256 operator -(Int256 x, Int256 y) => x + (-y);

    /// <summary>The exact product.</summary>
    public static Int256 Product(Int128 x, Int128 y)
    {
        ulong x0 = Low(x), x1 = High(x), y0 = Low(y), y1 = High(y);
        ulong h00 = Math.BigMul(x0, y0, out ulong r0);
        ulong h01 = Math.BigMul(x0, y1, out ulong l01);
        ulong h10 = Math.BigMul(x1, y0, out ulong l10);
        ulong h11 = Math.BigMul(x1, y1, out ulong l11);
        ulong carry = 0;
        ulong r1 = AddCarry(h00, l01, ref carry);
        ulong r2 = AddCarry(h01, l11, ref carry);
        ulong r3 = h11 + carry;
        carry = 0;
        r1 = AddCarry(r1, l10, ref carry);
        r2 = AddCarry(r2, h10, ref carry);
        r3 += carry;
        if (x < 0)
        {
            ulong borrow = r2 < y0 ? 1UL : 0;
            r2 -= y0;
            r3 = r3 - y1 - borrow;
        }

        if (y < 0)
        {
            ulong borrow = r2 < x0 ? 1UL : 0;
            r2 -= x0;
            r3 = r3 - x1 - borrow;
        }

        return new Int256(r0, r1, r2, r3);
    }

    /// <summary>The exact product.</summary>
    public static Int256 Product(Int128 x, long y)
    {
        UInt128 size = (UInt128)Int128.Abs(x);
        ulong factor = Magnitude(y);
        ulong h0 = Math.BigMul((ulong)size, factor, out ulong r0);
        ulong h1 = Math.BigMul((ulong)(size >> 64), factor, out ulong l1);
        ulong r1 = h0 + l1;
        Int256 product = new(r0, r1, h1 + (r1 < l1 ? 1UL : 0), 0);
        return (x < 0) == (y < 0) ? product : -product;
    }

    /// <summary>The product modulo 2^256: exact whenever it fits.</summary>
    public static Int256 Product(Int256 x, long y)
    {
        ulong factor = Magnitude(y);
        ulong h0 = Math.BigMul(x._a0, factor, out ulong r0);
        ulong h1 = Math.BigMul(x._a1, factor, out ulong l1);
        ulong h2 = Math.BigMul(x._a2, factor, out ulong l2);
        ulong carry = 0;
        ulong r1 = AddCarry(h0, l1, ref carry);
        ulong r2 = AddCarry(h1, l2, ref carry);
        Int256 product = new(r0, r1, r2, (x._a3 * factor) + h2 + carry);
        return y < 0 ? -product : product;
    }

    /// <summary>The product modulo 2^256: exact whenever it fits.</summary>
    public static Int256 Product(Int256 x, Int128 y)
    {
        ulong extension = y < 0 ? ulong.MaxValue : 0;
        ReadOnlySpan<ulong> a = [x._a0, x._a1, x._a2, x._a3];
        ReadOnlySpan<ulong> b = [Low(y), High(y), extension, extension];
        Span<ulong> r = stackalloc ulong[4];
        r.Clear();
        for (int i = 0; i < 4; i++)
        {
            ulong carry = 0;
            for (int j = 0; i + j < 4; j++)
            {
                ulong high = Math.BigMul(a[i], b[j], out ulong low);
                low += carry;
                high += low < carry ? 1UL : 0;
                r[i + j] += low;
                high += r[i + j] < low ? 1UL : 0;
                carry = high;
            }
        }

        return new Int256(r[0], r[1], r[2], r[3]);
    }

    /// <summary>Sign of x1·y1 - x2·y2, in 512 bits.</summary>
    public static int CompareProducts(Int256 x1, Int256 y1, Int256 x2, Int256 y2)
    {
        int s1 = x1.Sign * y1.Sign;
        int s2 = x2.Sign * y2.Sign;
        if (s1 != s2)
        {
            return s1.CompareTo(s2);
        }

        if (s1 == 0)
        {
            return 0;
        }

        Span<ulong> p1 = stackalloc ulong[8];
        Span<ulong> p2 = stackalloc ulong[8];
        WideProduct(x1.Magnitude(), y1.Magnitude(), p1);
        WideProduct(x2.Magnitude(), y2.Magnitude(), p2);
        for (int i = 7; i >= 0; i--)
        {
            if (p1[i] != p2[i])
            {
                return p1[i] > p2[i] ? s1 : -s1;
            }
        }

        return 0;
    }

    /// <summary>The nearest double but for a relative error below 2^-51.</summary>
    public double ToDouble()
    {
        Int256 m = Magnitude();
        double value = (((((m._a3 * 18446744073709551616.0) + m._a2) * 18446744073709551616.0) + m._a1) * 18446744073709551616.0) + m._a0;
        return (long)_a3 < 0 ? -value : value;
    }

    private static ulong Magnitude(long value) => value < 0 ? 0 - (ulong)value : (ulong)value;

    private Int256 Magnitude() => (long)_a3 < 0 ? -this : this;

    private static void WideProduct(Int256 x, Int256 y, Span<ulong> r)
    {
        ReadOnlySpan<ulong> a = [x._a0, x._a1, x._a2, x._a3];
        ReadOnlySpan<ulong> b = [y._a0, y._a1, y._a2, y._a3];
        r.Clear();
        for (int i = 0; i < 4; i++)
        {
            ulong carry = 0;
            for (int j = 0; j < 4; j++)
            {
                ulong high = Math.BigMul(a[i], b[j], out ulong low);
                low += carry;
                high += low < carry ? 1UL : 0;
                r[i + j] += low;
                high += r[i + j] < low ? 1UL : 0;
                carry = high;
            }

            r[i + 4] = carry;
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ulong AddCarry(ulong x, ulong y, ref ulong carry)
    {
        ulong sum = x + y;
        ulong first = sum < x ? 1UL : 0;
        ulong total = sum + carry;
        carry = first | (total < sum ? 1UL : 0);
        return total;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ulong Low(Int128 value) => (ulong)value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ulong High(Int128 value) => (ulong)(value >> 64);
}
