using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Housing.Tests.CoverSide;
using ShellForge.Planning.Batteries;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Housing.Tests.Tub;

/// <summary>A battery's bay as it is made: the battery, its strap and its wires tried in it as bodies.</summary>
public sealed class BatteryBayTests
{
    private static readonly WrittenBoard Written = new()
    {
        Outline = "{disc: 110}",
        Holes = ["{circle: 100, count: 4, from: 45, diameter: 2.7}"],
        Closure = "screws",
    };

    public static TheoryData<string> Batteries =>
    [
        "18650-bare", "aaa", "pouch-602040", "{cell: aa, count: 2}", "{cell: aaa, count: 3, strap: tie, along: 17}",
        "{flat: [3, 14, 25], count: 2, at: [4, -7], along: 61}", "{cell: 18650, strap: tie, at: [-5, 3], along: 140}",
    ];

    [Theory]
    [MemberData(nameof(Batteries))]
    public void Battery_strap_and_wires_find_their_room(string battery)
    {
        BuiltHousing housing = BuiltHousing.Of("board.yaml", Written.Text, $"housing.battery={battery}");
        Solid tub = housing.Solid(PartNames.Tub).AsOperand();
        BatteryBayPlan bay = housing.Plan.Bay!;
        BatteryBaySize size = bay.Size;

        // At its largest it touches the seat alone; a little wider or longer it would not go in.
        foreach (Point2 middle in bay.Middles)
        {
            Assert.Equal(0, BuiltHousing.Shared(tub, Body(bay, middle, 0.02, size.Battery.Length)), 3);
            double wider = size.PocketWidth - size.Battery.Width + 0.2;
            Assert.True(BuiltHousing.Shared(tub, Body(bay, middle, wider, size.Battery.Length)) > 0.5);
            Assert.True(BuiltHousing.Shared(tub, Body(bay, middle, 0, size.PocketLength + 0.2)) > 0.5);
        }

        // The strap goes through under it, and up on both sides.
        (double wide, double thick) = size.Battery.Strap == StrapKind.Tie ? (4.8, 1.3) : (10, 1.6);
        double over = size.OuterWidth + 4;
        Solid under = Lying(bay, wide, over, bay.FloorTop + 0.05, bay.FloorTop + thick);
        Assert.Equal(0, BuiltHousing.Shared(tub, under), 3);
        foreach (int side in new[] { 1, -1 })
        {
            Solid up = Shapes.Extrude(Rectangle(bay.Point(0, side * (size.OuterWidth + 0.2 + (2 * thick)) / 2), wide, 2 * thick, bay.Along),
                bay.FloorTop + 0.05, bay.StrapTop - 0.5);
            Assert.Equal(0, BuiltHousing.Shared(tub, up), 3);
        }

        // It can't come out of the bay with the battery: plastic closes the slots above it.
        double roof = bay.Seat + size.SlotRise;
        Assert.True(BuiltHousing.Shared(tub, Lying(bay, wide, over, roof + 0.1, roof + 1)) > 2 * 0.8 * wide);

        // A wire of 2 leaves at its end.
        Solid wire = Shapes.Extrude(
            Rectangle(bay.Point((size.OuterLength / 2) - 1, bay.AcrossOf(0)), 6, 2, bay.Along), bay.Seat + 0.6, bay.Seat + 2.6);
        Assert.True(BuiltHousing.Shared(tub, wire) < (size.IsRound ? 2 : 0.001));
    }

    [Theory]
    [MemberData(nameof(Batteries))]
    public void Walls_hold_at_least_half_of_a_cylinder_and_most_of_a_pouch(string battery)
    {
        BuiltHousing housing = BuiltHousing.Of("board.yaml", Written.Text, $"housing.battery={battery}");
        BatteryBayPlan bay = housing.Plan.Bay!;
        BatteryBaySize size = bay.Size;
        double height = bay.Seat + (size.IsRound ? size.Battery.Thickness / 2 : 0.6 * size.Battery.Thickness);
        Solid tub = housing.Solid(PartNames.Tub).AsOperand();
        foreach (int side in new[] { 1, -1 })
        {
            Solid wall = Shapes.Extrude(
                Rectangle(bay.Point(size.PocketLength / 4, side * (size.InnerWidth + size.Wall) / 2), 5, size.Wall - 0.04, bay.Along),
                height - 0.3, height - 0.05);
            Assert.Equal(5 * (size.Wall - 0.04) * 0.25, BuiltHousing.Shared(tub, wall), 1);
        }
    }

    private static Region Rectangle(Point2 middle, double length, double width, Angle along) =>
        PartEnvelope.Rectangle(middle, length, width, along);

    private static Solid Lying(BatteryBayPlan bay, double along, double across, double from, double to) =>
        Shapes.Extrude(Rectangle(bay.At, along, across, bay.Along), from, to);

    // A cylinder is turned by hand here, not by the frame that the builder uses.
    private static Solid Body(BatteryBayPlan bay, Point2 middle, double wider, double length)
    {
        double width = bay.Size.Battery.Width + wider;
        if (!bay.Size.IsRound)
        {
            return Shapes.Extrude(Rectangle(middle, length, width, bay.Along), bay.Seat + 0.02, bay.Top);
        }

        return Shapes.Extrude(Region.Disc(Point2.Origin, Ring.Peg(width / 2)), -length / 2, length / 2)
            .Moved(Transform3.TurnY(Angle.FromDegrees(90)).Then(Transform3.TurnZ(bay.Along))
                .Then(Transform3.Shift(middle.X, middle.Y, bay.Seat + 0.02 + (width / 2))));
    }
}
