using ShellForge.Physics.Heat;

namespace ShellForge.Physics.Tests.Heat;

/// <summary>The model of heat against the field solution, which shares no code with it.</summary>
public class FieldSolutionTests
{
    // What the model may be off by, K.
    private const double Allowed = 3;

    private static void Compare(FieldCase housing, double cell)
    {
        var field = new FieldSolution(housing, cell);
        HeatResult model = HeatModel.Of(HeatCases.InputOf(housing), HeatCases.Typical);
        Assert.InRange(field.Leaving / housing.HeatWatts, 0.999, 1.001);
        Assert.InRange(model[HeatBody.Board].Mean - field.Board, -Allowed, Allowed);
        Assert.InRange(model[HeatBody.Board].Celsius - field.BoardWarmest, -Allowed, Allowed);
        Assert.InRange(model[HeatBody.FrontOutside].Mean - field.FrontOutside, -Allowed, Allowed);
        Assert.InRange(model[HeatBody.FloorInside].Mean - field.Floor, -Allowed, Allowed);
        Assert.InRange(model[HeatBody.SideOutside].Mean - field.SideOutside, -Allowed, Allowed);
    }

    // Board, floor, front as a third solution of other make had them for the samples, degrees Celsius.
    [Theory]
    [InlineData("tide", 50.1, 45.7, 40.3)]
    [InlineData("dome", 50.5, 44.1, 40.7)]
    [InlineData("mooring", 42.8, 40.6, 36.6)]
    public void The_samples_are_as_warm_as_the_field_solution_says(string sample, double board, double floor, double front)
    {
        FieldCase housing = sample == "tide" ? HeatCases.Tide : sample == "dome" ? HeatCases.Dome : HeatCases.Mooring;
        Compare(housing, 1);
        HeatResult model = HeatModel.Of(HeatCases.InputOf(housing), HeatCases.Typical);
        Assert.InRange(model[HeatBody.Board].Mean - board, -Allowed, Allowed);
        Assert.InRange(model[HeatBody.FloorInside].Mean - floor, -Allowed, Allowed);
        Assert.InRange(model[HeatBody.FrontOutside].Mean - front, -Allowed, Allowed);
    }

    [Theory]
    [InlineData(35, 1, 1)]
    [InlineData(35, 15, 15)]
    [InlineData(60, 3, 15)]
    [InlineData(60, 15, 1)]
    [InlineData(100, 1, 5)]
    [InlineData(100, 7, 1)]
    [InlineData(150, 15, 5)]
    [InlineData(200, 1, 1)]
    [InlineData(200, 7, 15)]
    public void Discs_with_other_gaps_are_as_warm_as_the_field_solution_says(double diameter, double below, double above) => Compare(
        new FieldCase
        {
            BoardOuter = diameter / 2,
            Below = below,
            Above = above,
            Sources = [(diameter * 0.35, diameter * 0.4, 0.00012 * diameter * diameter)],
        },
        2);

    [Theory]
    [InlineData(60, 2, 15, 0.3)]
    [InlineData(60, 15, 2, 0.6)]
    [InlineData(100, 5, 6, 0.8)]
    [InlineData(100, 15, 15, 1.6)]
    [InlineData(150, 2, 2, 1.8)]
    [InlineData(200, 15, 6, 3.2)]
    public void Rings_with_a_baffle_are_as_warm_as_the_field_solution_says(double diameter, double below, double above, double watts) =>
        Compare(
        new FieldCase
        {
            BoardOuter = diameter / 2,
            BoardInner = diameter * 0.3,
            BoreGap = 1,
            Below = below,
            Above = above,
            WindowFrom = diameter * 0.35,
            WindowTo = diameter * 0.45,
            Rims = [(diameter * 0.34, 0.86), (diameter * 0.46, 0.86)],
            Sources = [(diameter * 0.38, diameter * 0.42, watts)],
        },
        2);

    [Fact]
    public void A_slab_of_the_field_solution_conducts_as_by_hand()
    {
        // A wide disc close to the front: heat goes straight through 1 mm of still air, 0.027 W/mK, and by radiation between grey plates.
        var housing = new FieldCase { BoardOuter = 100, Below = 15, Above = 1, Sources = [(0, 100, 4.8)] };
        var field = new FieldSolution(housing, 2);
        double front = 30 + ((field.FrontOutside - 30) * 1.0);
        double flux = housing.HeatWatts / (Math.PI * 0.1 * 0.1);
        double most = flux / (0.027 / 0.001) + (flux * 0.0016 / 0.22);
        Assert.InRange(field.Board - front, 0.5 * most, most);
    }
}
