using ShellForge.Board.Description;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Planning;
using ShellForge.Planning.Plan;
using ShellForge.Testing;
using Region = ShellForge.Geometry.Planar.Region;

namespace ShellForge.Checks.Tests.Fit;

/// <summary>A square box with a window in its +x wall, and a board whose connector stands 1.5 mm into that window.</summary>
public class TiltInTests
{
    private static readonly PortPlan Port = HousingPlanner.Plan(new WrittenBoard
    {
        Parts = ["{ref: J1, package: usb-c-receptacle, side: bottom, faces: 0, past-edge: 0}"],
        Cable = "{part: J1}",
    }.Read()).Ports.First() with
    { Faces = Angle.Zero, Face = new Point2(21.5, 0), AxisZ = 6.2, WallInner = 20 };

    private static readonly BoardBody[] Board =
    [
        new("board", BoardSide.Bottom, Region.Rectangle(new Point2(-19, -19), new Point2(19, 19)), 8, 9.6, Point2.Origin),
        new("J1", BoardSide.Bottom, Region.Rectangle(new Point2(14, -4), new Point2(21.5, 4)), 4.6, 8, new Point2(18, 0)),
    ];

    [Fact]
    public void It_goes_in_at_a_slant_when_the_far_side_clears_the_rim()
    {
        double slant = Assert.NotNull(TiltIn.LeastSlant(Board, Tub(rim: 14), Port, 2.5));

        // The far edge, 41 mm from the mouth, has to come over the rim 5 mm above it.
        Assert.InRange(slant, 8, 25);
    }

    [Fact]
    public void It_does_not_when_the_walls_are_high() => Assert.Null(TiltIn.LeastSlant(Board, Tub(rim: 60), Port, 2.5));

    [Fact]
    public void It_does_not_when_the_window_is_as_low_as_the_connector() =>
        Assert.Null(TiltIn.LeastSlant(Board, Tub(rim: 14, windowTop: 8.2), Port, 2.5));

    private static SurfaceTree Tub(double rim, double windowTop = 11.5) => new(SolidEvaluator.Evaluate(
        Shapes.Box(new Point3(-22, -22, 0), new Point3(22, 22, rim)).Less(
            Shapes.Box(new Point3(-20, -20, 1), new Point3(20, 20, rim + 1)),
            Shapes.Box(new Point3(19, -5, 3), new Point3(23, 5, windowTop)))).Require().Mesh);
}
