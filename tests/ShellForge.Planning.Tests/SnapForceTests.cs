using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Closures;

namespace ShellForge.Planning.Tests;

/// <summary>The force of a snap against models that share nothing with it.</summary>
public sealed class SnapForceTests
{
    private const double Poisson = 0.35;
    private static readonly Angle LeadIn = Angle.FromDegrees(30);

    // A strip of the wall, 1 mm of the round, as a beam of finite elements on the springs of its hoops, loaded near its free end.
    [Theory]
    [InlineData(46.5, 1.67, 1900, 0)]
    [InlineData(46.5, 1.67, 1900, 1.1)]
    [InlineData(18, 1.26, 2600, 0.7)]
    [InlineData(60, 2.41, 1900, 3)]
    [InlineData(46.5, 1.67, 1900, 30)]
    public void The_end_of_a_wall_resists_as_a_beam_of_elements_on_springs(double radius, double thickness, double modulus, double fromEnd)
    {
        const int Elements = 600;
        const double length = 0.1;
        double bending = modulus * thickness * thickness * thickness / (12 * (1 - (Poisson * Poisson)));
        double spring = modulus * thickness / (radius * radius);
        int size = 2 * (Elements + 1);
        double[,] banded = new double[size, 4];
        double[,] element =
        {
            { 12, 6 * length, -12, 6 * length }, { 6 * length, 4 * length * length, -6 * length, 2 * length * length },
            { -12, -6 * length, 12, -6 * length }, { 6 * length, 2 * length * length, -6 * length, 4 * length * length },
        };
        for (int e = 0; e < Elements; e++)
        {
            for (int i = 0; i < 4; i++)
            {
                for (int j = i; j < 4; j++)
                {
                    banded[(2 * e) + i, j - i] += bending / (length * length * length) * element[i, j];
                }
            }

            banded[2 * e, 0] += spring * length / 2;
            banded[(2 * e) + 2, 0] += spring * length / 2;
        }

        int loaded = 2 * (int)Math.Round(fromEnd / length);
        double give = Solve(banded, size, loaded)[loaded];
        Assert.Equal(1, SnapForce.EndStiffness(radius, thickness, modulus, fromEnd) * give, 0.01);
    }

    [Fact]
    public void Pressed_flat_the_whole_ring_rides_at_once()
    {
        RidingBead bead = new RidingBead(40, 0.4, 0.5, 3, []).Without([]);
        double slope = Math.Tan(Math.PI / 6);
        double expected = 3 * 0.4 * 2 * Math.PI * 40 * (slope + 0.3) / (1 - (0.3 * slope));
        Assert.InRange(SnapForce.Closing([bead], LeadIn, 0), 0.98 * expected, expected);
    }

    [Theory]
    [InlineData(30, 0.57)]
    [InlineData(35, 0.68)]
    public void A_flatter_flank_takes_less_by_the_wedge_with_friction(double degrees, double share)
    {
        double Wedge(double angle) => Math.Tan((angle * Math.PI / 180) + Math.Atan(0.3));
        Assert.Equal(Wedge(degrees) / Wedge(45),
            SnapForce.AlongAxis(Angle.FromDegrees(degrees)) / SnapForce.AlongAxis(Angle.FromDegrees(45)), 9);
        Assert.Equal(share, Wedge(degrees) / Wedge(45), 0.01);
    }

    // What rides at once while a tilted cover comes down: seeded points round the rim, each put on the flank, the land or in the groove.
    [Theory]
    [InlineData(46.5, 2.6, 0.76)]
    [InlineData(30.5, 2.2, 0.3)]
    public void A_tilted_cover_has_about_a_fifth_of_its_bead_riding_at_once(double radius, double tilt, double land)
    {
        RidingBead bead = new RidingBead(radius, 0.4, land, 3, []).Without([]);
        double run = 0.4 / Math.Tan(Math.PI / 6);
        double wedge = Math.Tan((Math.PI / 6) + Math.Atan(0.3));
        var dice = new System.Random(3);
        double[] round = [.. Enumerable.Range(0, 20_000).Select(_ => 2 * Math.PI * dice.NextDouble())];
        double most = 0;
        for (double deep = 0.02; deep < tilt + run + land; deep += 0.02)
        {
            double mean = round.Average(at =>
            {
                double past = deep - (tilt * (1 - Math.Cos(at)) / 2);
                return past <= 0 || past > run + land ? 0 : past < run ? wedge * past / run : 0.3;
            });
            most = Math.Max(most, mean * 3 * 0.4 * 2 * Math.PI * radius);
        }

        double force = SnapForce.Closing([bead], LeadIn, tilt);
        Assert.InRange(force / most, 0.96, 1.04);
        Assert.InRange(force / SnapForce.Closing([bead], LeadIn, 0), 0.15, 0.25);
    }

    [Fact]
    public void Sectors_without_bead_count_once_where_they_overlap()
    {
        RidingBead bead = new RidingBead(40, 0.4, 0.5, 3, []);
        double Force(params (double From, double Sweep)[] gaps) => SnapForce.Closing(
            [bead.Without(gaps.Select(g => (Angle.FromDegrees(g.From), Angle.FromDegrees(g.Sweep))))], LeadIn, 0);
        Assert.Equal(0.75 * Force(), Force((350, 40), (20, 60)), 6);
        Assert.Equal(0.5 * Force(), Force((300, 120), (0, 30), (50, 70)), 6);
        ImmutableArray<bool> only = bead.Only([(Angle.FromDegrees(355), Angle.FromDegrees(10))]).HasBead;
        Assert.Equal(10, only.Count(b => b));
    }

    // Elimination in a symmetric band of width 4, for a unit load in one row.
    private static double[] Solve(double[,] band, int size, int loaded)
    {
        double[] right = new double[size];
        right[loaded] = 1;
        for (int row = 0; row < size; row++)
        {
            for (int below = 1; below < 4 && row + below < size; below++)
            {
                double factor = band[row, below] / band[row, 0];
                for (int column = below; column < 4; column++)
                {
                    band[row + below, column - below] -= factor * band[row, column];
                }

                right[row + below] -= factor * right[row];
            }
        }

        for (int row = size - 1; row >= 0; row--)
        {
            for (int beyond = 1; beyond < 4 && row + beyond < size; beyond++)
            {
                right[row] -= band[row, beyond] * right[row + beyond];
            }

            right[row] /= band[row, 0];
        }

        return right;
    }
}
