using ShellForge.Geometry.Numerics;
using ShellForge.Import.Merging;

namespace ShellForge.Import.Tests;

public class PitchGridsTests
{
    [Fact]
    public void Six_places_in_columns_and_rows_are_a_grid()
    {
        Point2[] places = [.. Enumerable.Range(0, 6).Select(i => new Point2(8 * (i % 3), -8 * (i / 3)))];

        PitchGrid grid = Assert.IsType<PitchGrid>(PitchGrids.Of(places));

        Assert.Equal((3, 2), (grid.Order.Columns, grid.Order.Rows));
    }

    // Columns times rows are more than a whole number holds: no part was in the grid that this once gave.
    [Theory]
    [InlineData(70_000, 70_000)]
    [InlineData(1e9, 1e9)]
    [InlineData(1e300, 1e300)]
    [InlineData(1e300, 4)]
    public void Places_far_apart_are_no_grid(double far, double high)
    {
        Assert.Null(PitchGrids.Of([new(0, 0), new(1, 1), new(far, high), new(far, 0), new(0, high)]));
    }
}
