using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

/// <summary>The lit window lies where the LEDs are, whatever they are arranged in.</summary>
public sealed class LitWindowTests
{
    private static readonly WrittenBoard Grid = new()
    {
        Outline = "{disc: 66}",
        Holes = ["{circle: 56, count: 4, from: 0, diameter: 2.7}"],
        Pixels = Single("5050", from x in Row(10) from y in Row(10) select (x, y)),
    };

    private static readonly WrittenBoard HalfMoon = new()
    {
        Outline = "{arcs: [[-40, 0], [40, 0], [-40, 0, 180]]}\n  centre: [0, 0]",
        Holes = ["{at: [0, 34], diameter: 2.7}"],
        Pixels = "{package: \"5050\", circle: 56, count: 24, from: 0, skip: [1, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24]}",
    };

    private static readonly WrittenBoard Quarter = new()
    {
        Outline = "{arcs: [[30, 0], [50, 0], [0, 50, 90], [0, 30], [30, 0, -90]]}\n  centre: [0, 0]",
        Holes = [],
        Pixels = "{package: \"5050\", circle: 80, count: 32, from: 5.625, skip: [" + string.Join(", ", Enumerable.Range(9, 24)) + "]}",
    };

    private static readonly WrittenBoard Spiral = new()
    {
        Outline = "{disc: 84}",
        Holes = ["{circle: 76, count: 3, from: 30, diameter: 2.7}"],
        Pixels = Single("3535", Along(6.5, 11)),
    };

    public static TheoryData<string> Arrangements => ["grid", "half moon", "quarter", "spiral"];

    [Theory]
    [MemberData(nameof(Arrangements))]
    public void Every_led_lies_behind_the_window(string arrangement)
    {
        HousingPlan plan = HousingPlanner.Plan(Of(arrangement).Read());
        Pixel[] leds = [.. plan.Source.Board.PixelCircles.SelectMany(circle => circle.Pixels)];
        Assert.NotEmpty(leds);
        Assert.All(leds, led => Assert.True(
            plan.Cover.Window.Contains(led.At) && plan.Cover.Window.DistanceToOutline(led.At) > 1,
            $"{led.Ref} lies at the window's edge or beside it"));
        Assert.True(plan.Cover.Cavity.Contains(plan.Cover.Window), "the window cuts the cover's wall");
        Assert.NotNull(plan.Diffuser.Field);
    }

    [Theory]
    [InlineData("grid", "auto")]
    [InlineData("half moon", "auto")]
    [InlineData("quarter", "auto")]
    [InlineData("spiral", "auto")]
    [InlineData("grid", "disc")]
    [InlineData("spiral", "disc")]
    [InlineData("spiral", "ring")]
    public void Pixels_have_a_cell_each(string arrangement, string window)
    {
        HousingPlan plan = HousingPlanner.Plan((Of(arrangement) with { Light = $"{{look: pixels, window: {window}}}" }).Read());
        Region walls = plan.Baffle!.Walls;
        LedFieldPlan field = plan.Diffuser.Field!;
        Assert.All(field.Links, link =>
        {
            (Point2 a, Point2 b) = (field.Leds[link.From].At, field.Leds[link.To].At);
            Assert.True(walls.Distance(0.5 * (a + b)) < 0.3, $"no wall between {field.Leds[link.From].Ref} and {field.Leds[link.To].Ref}");
        });
        Assert.Single(walls.And(plan.Baffle.Bridges).Parts);
    }

    [Fact]
    public void A_grid_of_ten_millimetres_stays_flat()
    {
        HousingPlan plan = HousingPlanner.Plan(Grid.Read());
        Assert.InRange(plan.Stack.Front, 10, 25);
        Assert.True(plan.Diffuser.ExpectedMinimumOverMean >= 0.6, "it is planned less even than asked");

        // 12 ways along each axis, and both diagonals of 9 squares.
        Assert.Equal(12 + 12 + 18, plan.Diffuser.Field!.Links.Length);
    }

    [Fact]
    public void Circles_about_the_middle_keep_their_ring()
    {
        HousingPlan plan = HousingPlanner.Plan((new WrittenBoard { Diffuser = "{fit: printed-in}" }).Read());
        Assert.Null(plan.Diffuser.Field);
        Assert.False(plan.Cover.Window.Contains(Point2.Origin));
    }

    [Theory]
    [InlineData("follow", false)]
    [InlineData("disc", true)]
    [InlineData("ring", false)]
    [InlineData("{polygon: [[-30, -30], [30, -30], [30, 30], [-30, 30]]}", true)]
    public void A_window_has_the_shape_that_was_asked_for(string shape, bool middleIsLit)
    {
        HousingPlan plan = HousingPlanner.Plan((new WrittenBoard { Light = $"{{window: {shape}}}" }).Read());
        Assert.Equal(middleIsLit, plan.Cover.Window.Contains(Point2.Origin));
        Assert.Equal(shape.StartsWith('{'), Math.Abs(plan.Cover.Window.Bounds.Max.X - 30) < 0.01);
    }

    [Fact]
    public void A_spiral_keeps_bezel_between_its_turns()
    {
        Region window = HousingPlanner.Plan(Spiral.Read()).Cover.Window;
        Assert.True(window.Area < 0.7 * window.Hull().Area, "the turns have run into one");
    }

    [Fact]
    public void Directions_are_seen_from_a_place_on_the_board()
    {
        BoardFile half = HalfMoon.Read();
        BoardFile quarter = Quarter.Read();
        Assert.True(half.Board.Outline.Region.Contains(Point2.Origin) && quarter.Board.Outline.Region.Contains(Point2.Origin));
        Assert.True(half.Board.Outline.Region.DistanceToOutline(Point2.Origin) > 15);
        PixelCircle circle = Assert.Single(quarter.Board.PixelCircles);
        Assert.All(circle.Pixels, led => Assert.Equal(40, Point2.Distance(led.At, circle.Centre), 6));
        Assert.Equal(Point2.Origin - circle.Centre, quarter.Board.FileCentre);
    }

    private static WrittenBoard Of(string arrangement) => arrangement switch
    {
        "grid" => Grid,
        "half moon" => HalfMoon,
        "quarter" => Quarter,
        _ => Spiral,
    };

    private static IEnumerable<double> Row(double pitch) => Enumerable.Range(0, 4).Select(i => pitch * (i - 1.5));

    private static (double X, double Y) Turned(double radius, double degrees)
    {
        var at = Point2.Polar(radius, Angle.FromDegrees(degrees));
        return (Math.Round(at.X, 2), Math.Round(at.Y, 2));
    }

    // Places a pitch apart along a spiral whose turns lie so far apart.
    private static IEnumerable<(double X, double Y)> Along(double pitch, double turn)
    {
        double degrees = 90;
        for (int i = 0; i < 24; i++)
        {
            double radius = 3 + (turn * degrees / 360);
            yield return Turned(radius, degrees);
            degrees += Angle.FromRadians(pitch / radius).Degrees;
        }
    }

    private static string Single(string package, IEnumerable<(double X, double Y)> places) => "[" + string.Join(", ", places.Select(at =>
        FormattableString.Invariant($"{{package: \"{package}\", at: [{at.X}, {at.Y}]}}"))) + "]";
}
