using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Output.Drawings;

namespace ShellForge.Output.Tests.Drawings;

public class SectionSizesTests
{
    // A tub of 80 x 20 with walls of 1.6 and a floor of 2; a boss may stand against its right wall.
    [Theory]
    [InlineData(2)]
    [InlineData(8)]
    [InlineData(14)]
    [InlineData(17)]
    public void The_wall_is_measured_where_no_boss_stands_against_it(double bossTop)
    {
        ImmutableArray<Point2> section =
        [
            new(0, 0), new(80, 0), new(80, 20), new(78.4, 20), new(78.4, bossTop), new(70, bossTop), new(70, 2), new(1.6, 2), new(1.6, 20),
            new(0, 20),
        ];
        var sizes = new SectionSizes([section]);
        Assert.Equal((78.4, 80), sizes.Wall!.Value);
        Assert.Equal(2, sizes.Floor!.Value, 6);
    }

    [Fact]
    public void A_thinner_rim_is_not_taken_for_the_wall()
    {
        ImmutableArray<Point2> section =
        [
            new(0, 0), new(80, 0), new(80, 20), new(78.8, 20), new(78.8, 17), new(78.4, 17), new(78.4, 2), new(1.6, 2), new(1.6, 20),
            new(0, 20),
        ];
        Assert.Equal((78.4, 80), new SectionSizes([section]).Wall!.Value);
    }
}
