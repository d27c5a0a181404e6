using ShellForge.Geometry.Auditing;
using ShellForge.Geometry.Numerics;
using ShellForge.Testing;

namespace ShellForge.Geometry.Tests.Auditing;

public sealed class TriangleMeetingTests
{
    [Theory]
    [InlineData(1, 2, 1.0)]
    [InlineData(2, 3, 1.0)]
    [InlineData(3, 5, 1.0)]
    [InlineData(4, 2, 1 << 22)]
    [InlineData(5, 1, 1 << 24)]
    public void Lattice_triangles_meet_as_exact_cutting_says(int seed, int reach, double scale) =>
        CompareWithCutting<LatticeOrientation>(new Random(seed), r => scale * r.Next(-reach, reach + 1));

    [Theory]
    [InlineData(11, 2)]
    [InlineData(12, 3)]
    public void Floating_triangles_meet_as_exact_cutting_says(int seed, int reach) =>
        CompareWithCutting<FloatingOrientation>(new Random(seed), r => (float)(r.Next(-reach, reach + 1) * 0.1));

    [Fact]
    public void Floating_triangles_of_wild_exponents_meet_as_exact_cutting_says() =>
        CompareWithCutting<FloatingOrientation>(new Random(13), r => r.Next(4) switch
        {
            0 => 0,
            1 => (float)((r.Next(5) - 2) * 1e-17),
            2 => r.Next(5) - 2,
            _ => (float)((r.Next(5) - 2) * (1 + 1e-7)),
        });

    private static void CompareWithCutting<TOrientation>(Random random, Func<Random, double> coordinate)
        where TOrientation : struct, IOrientation
    {
        int proper = 0;
        int overlapping = 0;
        int crossing = 0;
        int[] shared = new int[3];
        for (int i = 0; i < 4000; i++)
        {
            int common = random.Next(3);
            Point3[] p = [.. Enumerable.Range(0, 6).Select(_ => new Point3(coordinate(random), coordinate(random), coordinate(random)))];
            if (random.Next(3) == 0)
            {
                // In one plane, as faces of parts nearly always are.
                int axis = random.Next(3);
                p = [.. p.Select(q => axis == 0 ? q with { X = p[0].X } : axis == 1 ? q with { Y = p[0].Y } : q with { Z = p[0].Z })];
            }

            Point3[] s = [p[0], p[1], p[2]];
            Point3[] t = [.. s.Take(common), .. p.Skip(3).Take(3 - common)];
            if (s.Intersect(t).Count() != common || IsFlat(s) || IsFlat(t))
            {
                continue;
            }

            Meeting meeting = common switch
            {
                0 => TriangleMeeting<TOrientation>.Apart(s[0], s[1], s[2], t[0], t[1], t[2]),
                1 => TriangleMeeting<TOrientation>.AtCorner(s[0], s[1], s[2], t[1], t[2]),
                _ => TriangleMeeting<TOrientation>.AtEdge(s[0], s[1], s[2], t[2]),
            };
            bool expected = Exact(s).MeetsProperly(Exact(t));
            Assert.True(expected == (meeting == Meeting.Proper), $"{meeting}: {string.Join(' ', s)} | {string.Join(' ', t)}");
            _ = meeting switch
            {
                Meeting.Proper => proper++,
                Meeting.Crossing => crossing++,
                _ => overlapping++,
            };
            shared[common]++;
        }

        // The comparison has met what it is about.
        Assert.True(proper > 100 && overlapping > 100 && crossing > 30, $"{proper} {overlapping} {crossing}");
        Assert.All(shared, n => Assert.True(n > 300));
    }

    private static RationalTriangle Exact(Point3[] t) =>
        new(RationalPoint.From(t[0]), RationalPoint.From(t[1]), RationalPoint.From(t[2]));

    private static bool IsFlat(Point3[] t)
    {
        bool flat = Exact(t).IsDegenerate;
        Assert.Equal(flat, TriangleMeeting<FloatingOrientation>.IsFlat(t[0], t[1], t[2]));
        return flat;
    }
}
