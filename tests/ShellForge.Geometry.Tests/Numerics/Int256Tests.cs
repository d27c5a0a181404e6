using System.Numerics;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Tests.Numerics;

public class Int256Tests
{
    private static readonly Int128 Largest = ((Int128)1 << 104) - 1;

    [Fact]
    public void Products_sums_and_comparisons_agree_with_integers_of_any_size()
    {
        Random random = new(20);
        for (int i = 0; i < 2000; i++)
        {
            Int128 a = Value(random), b = Value(random), c = Value(random), d = Value(random);
            Int256 ab = Int256.Product(a, b), cd = Int256.Product(c, d);
            BigInteger exactAb = (BigInteger)a * b, exactCd = (BigInteger)c * d;

            Assert.Equal(exactAb.Sign, ab.Sign);
            Assert.Equal((exactAb + exactCd).Sign, (ab + cd).Sign);
            Assert.Equal((exactAb - exactCd).Sign, (ab - cd).Sign);
            Assert.Equal((exactAb - exactAb).Sign, (ab + -ab).Sign);
            Assert.Equal((exactAb * d).CompareTo(exactCd * b), Int256.CompareProducts(ab, Int256.From(d), cd, Int256.From(b)));
            Assert.Equal((double)exactAb, ab.ToDouble(), Math.Abs((double)exactAb) * 1e-15);
            long small = random.NextInt64(-(1L << 25), 1L << 25);
            Assert.Equal(((exactAb * small) - exactCd).Sign, (Int256.Product(ab, small) - cd).Sign);
            Assert.Equal(0, (Int256.Product(ab, small) - Int256.Product(ab, (Int128)small)).Sign);
            long normal = random.NextInt64(-(1L << 52), 1L << 52);
            Assert.Equal(0, (Int256.Product(a, normal) - Int256.Product(a, (Int128)normal)).Sign);
            Assert.Equal(0, (Int256.Product(ab, -1L) + ab).Sign);
        }
    }

    private static Int128 Value(Random random) => random.Next(6) switch
    {
        0 => Largest,
        1 => -Largest,
        2 => random.Next(-2, 3),
        _ => (((Int128)random.NextInt64() << 40) ^ random.NextInt64()) * (random.Next(2) == 0 ? 1 : -1),
    };
}
