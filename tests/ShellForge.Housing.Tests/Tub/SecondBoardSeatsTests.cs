using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Housing.Tests.CoverSide;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;
using ShellForge.Planning.SecondBoards;
using ShellForge.Testing;

namespace ShellForge.Housing.Tests.Tub;

/// <summary>What holds a second board as it is made: the board, its strap and screws tried in it as bodies.</summary>
public sealed class SecondBoardSeatsTests
{
    private static readonly WrittenBoard Written = new()
    {
        Outline = "{disc: 110}",
        Holes = ["{circle: 100, count: 4, from: 45, diameter: 2.7}"],
        Closure = "screws",
    };

    public static TheoryData<string> Boards =>
    [
        "{size: [36, 24], above: 6, hold: strap}", "{size: [20, 14], above: 4, hold: strap, at: [4, -7], turn: 61}",
        "{round: 30, above: 4, hold: clips}", "{size: [24, 40], above: 3, hold: clips, at: [-5, 3], turn: 17}",
        "{size: [36, 24], above: 6, holes: {at: [[15, 9], [-15, 9], [15, -9], [-15, -9]], diameter: 2.7}, at: [3, 2], turn: 40}",
    ];

    [Theory]
    [MemberData(nameof(Boards))]
    public void The_board_lies_on_its_seat_within_a_twentieth_of_a_millimetre(string board)
    {
        BuiltHousing housing = BuiltHousing.Of("board.yaml", Written.Text, $"housing.second-board={board}");
        Solid tub = housing.Solid(PartNames.Tub).AsOperand();
        SecondBoardPlan second = housing.Plan.SecondBoard!;

        // The laminate goes in from above down to its seat, and no farther.
        Assert.Equal(0, BuiltHousing.Shared(tub, Laminate(second, 0, second.Seat + 0.02, second.Top)), 3);
        Assert.True(BuiltHousing.Shared(tub, Laminate(second, 0, second.Seat - 0.05, second.Top)) > 0.05);

        // Its parts have their room over and under it, inside of what holds its rim.
        double rim = second.Size.IsSeated ? second.Size.SeatReach + 0.1 : 0;
        Assert.Equal(0, BuiltHousing.Shared(tub, Laminate(second, -rim, second.Top, second.Highest)), 3);
        Region under = second.Placed(second.Size.Outline.Offset(-rim).Less(Region.Union(
            [.. second.Board.Holes.Select(hole => Region.Disc(hole, Ring.Hole((second.Size.PostDiameter / 2) + 0.05)))])));
        Assert.Equal(0, BuiltHousing.Shared(tub, Shapes.Extrude(under, second.Lowest, second.Seat - 0.01)), 3);
        if (second.Size.IsSeated)
        {
            // Its walls stand 0.3 off it all round, to a twentieth.
            double free = second.Size.Clips is null ? 0.27 : 0.15;
            Assert.Equal(0, BuiltHousing.Shared(tub, Laminate(second, free, second.Seat + 0.02, second.Top - 0.05)), 3);
            Assert.True(BuiltHousing.Shared(tub, Laminate(second, 0.35, second.Seat + 0.02, second.Top - 0.05)) > 0.05);
        }
    }

    [Theory]
    [MemberData(nameof(Boards))]
    public void What_holds_it_down_is_there(string board)
    {
        BuiltHousing housing = BuiltHousing.Of("board.yaml", Written.Text, $"housing.second-board={board}");
        Solid tub = housing.Solid(PartNames.Tub).AsOperand();
        SecondBoardPlan second = housing.Plan.SecondBoard!;
        switch (second.Size.Hold)
        {
            case SecondBoardHold.Screws:
                // A shank of 2 goes into each post's middle, one of 5 does not.
                Assert.All(second.Holes, hole =>
                {
                    Assert.Equal(0, BuiltHousing.Shared(tub, Pin(hole, 2.0, second.Seat - 4, second.Seat + 1)), 3);
                    Assert.True(BuiltHousing.Shared(tub, Pin(hole, 5.0, second.Seat - 4, second.Seat - 1)) > 1);
                });
                break;
            case SecondBoardHold.Clips:
                // Lifted by a millimetre it meets both hooks; by the hooks' play it does not.
                Assert.Equal(0, BuiltHousing.Shared(tub, Laminate(second, 0, second.Seat + 0.15, second.Top + 0.15)), 3);
                Assert.True(BuiltHousing.Shared(tub, Laminate(second, 0, second.Seat + 1, second.Top + 1)) > 0.5);
                break;
            default:
                SecondBoardStrap strap = second.Size.Strap!;
                (double wide, double thick) = strap.Tie ? (4.8, 1.3) : (10, 1.6);
                double over = (2 * (second.Size.HalfAcross + second.Size.Wall)) + 6;
                Region way = PartEnvelope.Rectangle(second.At, wide, over, second.Turn + second.Size.Across - Angle.FromDegrees(90));
                Assert.Equal(0, BuiltHousing.Shared(tub, Shapes.Extrude(way, second.FloorTop + 0.05, second.FloorTop + thick)), 3);
                double roof = second.FloorTop + strap.Slot + strap.Rise;
                Assert.True(BuiltHousing.Shared(tub, Shapes.Extrude(way, roof + 0.1, roof + 1)) > 2 * 0.8 * wide);
                break;
        }
    }

    private static Solid Laminate(SecondBoardPlan second, double wider, double from, double to) => Shapes.Extrude(
        second.Board.Round ? Region.Disc(second.At, Ring.Peg((second.Board.Length / 2) + wider))
            : PartEnvelope.Rectangle(second.At, second.Board.Length + (2 * wider), second.Board.Width + (2 * wider), second.Turn),
        from, to);

    private static Solid Pin(Point2 at, double diameter, double from, double to) =>
        Shapes.Extrude(Region.Disc(at, Ring.Peg(diameter / 2)), from, to);
}
