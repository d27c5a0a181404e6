using ShellForge.Planning.Draft;

namespace ShellForge.Planning.Tests;

public sealed class PrintBasisTests
{
    private static readonly PrintBasis Basis = new(0.45, 0.2, 0.2);

    [Theory]
    [InlineData(1, 0.45)]
    [InlineData(2, 0.86)]
    [InlineData(3, 1.26)]
    [InlineData(4, 1.67)]
    [InlineData(5, 2.08)]
    [InlineData(6, 2.49)]
    public void Walls_come_in_lines_that_overlap(int lines, double thickness) => Assert.Equal(thickness, Basis.Wall(lines));

    [Theory]
    [InlineData(0.2, 1)]
    [InlineData(0.45, 1)]
    [InlineData(1.26, 3)]
    [InlineData(1.3, 3)]
    [InlineData(1.46, 3)]
    [InlineData(1.47, 4)]
    [InlineData(1.6, 4)]
    public void The_count_of_lines_is_the_nearest_one(double thickness, int lines) =>
        Assert.Equal(lines, Basis.LinesNear(thickness));

    [Theory]
    [InlineData(4.2, 4.2)]
    [InlineData(4.21, 4.4)]
    [InlineData(0.05, 0.2)]
    [InlineData(2.0000000001, 2.0)]
    public void Heights_go_up_to_whole_layers_and_not_further_through_a_last_bit(double z, double layered) =>
        Assert.Equal(layered, Basis.Up(z));

    [Fact]
    public void A_thick_first_layer_shifts_all_others()
    {
        var basis = new PrintBasis(0.45, 0.2, 0.3);
        Assert.Equal(0.3, basis.Up(0.1));
        Assert.Equal(2.1, basis.Up(2.0));
        Assert.Equal(1.9, basis.Down(2.0));
        Assert.Equal(2.0, basis.UpDistance(2.0));
    }
}
