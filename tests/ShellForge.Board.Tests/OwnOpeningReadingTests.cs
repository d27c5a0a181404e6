using ShellForge.Board.Description;
using ShellForge.Board.Yaml;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Tests;

public class OwnOpeningReadingTests
{
    private static BoardReadResult Read(params string[] openings) => BoardTexts.Read(string.Join('\n',
    [
        "format: shellforge/1", "name: Openings", "board:", "  outline: {disc: 70}", "  centre: [100, 50]", "  thickness: 1.6",
        "  pixels: {package: \"2020\", circle: 40, count: 8}", "  parts:", "    - {ref: MK1, size: [4, 3, 1.1], at: [110, 52]}",
        "housing:", "  cable: none", "  openings:", .. openings.Select(opening => $"    - {opening}"),
    ]));

    private static OwnOpening One(string opening) => Assert.Single(Read(opening).File!.Housing.Openings);

    [Theory]
    [InlineData("{name: a, floor: [103, 46], diameter: 3}", 3, -4)]
    [InlineData("{name: a, floor: {polar: [10, 90]}, diameter: 3}", 0, 10)]
    [InlineData("{name: a, floor: MK1, diameter: 3}", 10, 2)]
    public void One_in_the_floor_is_placed_by_point_by_polar_coordinates_or_under_a_part(string text, double x, double y)
    {
        OwnOpening opening = One(text);
        Assert.Equal(OpenedSide.Floor, opening.In);
        Assert.Equal(0, Point2.Distance(new Point2(x, y), opening.At!.Value), 9);
        Assert.True(opening.Shape.IsRound);
    }

    [Fact]
    public void One_in_the_front_is_placed_as_one_in_the_floor()
    {
        OwnOpening opening = One("{name: a, front: MK1, diameter: 3}");
        Assert.Equal((OpenedSide.Front, new Point2(10, 2)), (opening.In, opening.At!.Value));
    }

    [Fact]
    public void One_in_the_wall_is_placed_by_an_angle_or_before_a_part_and_by_a_height()
    {
        OwnOpening angled = One("{name: lever, wall: 30, over-board: -2, slot: [9, 3]}");
        Assert.Equal((OpenedSide.Wall, 30.0, -2.0), (angled.In, angled.Angle!.Value.Degrees, angled.OverBoard!.Value));
        Assert.Null(angled.At);
        Assert.Equal(1.5, angled.Shape.Corner);
        OwnOpening before = One("{name: sound, wall: MK1, height: 6, rectangle: [5, 4], corner: 1, turn: 45}");
        Assert.Equal(("MK1", 6.0, 1.0, 45.0), (before.PartRef, before.Height!.Value, before.Shape.Corner, before.Turn.Degrees));
        Assert.Null(before.Angle);
        Assert.Equal("D3", One("{name: sound, wall: D3, diameter: 2}").PartRef);
        Assert.Equal(0.5, One("{name: sound, wall: 3, rectangle: [5, 4]}").Shape.Corner);
        Assert.Equal(0.45, One("{name: sound, wall: 3, rectangle: [5, 0.9]}").Shape.Corner);
    }

    [Theory]
    [InlineData("{name: a, floor: MK2, diameter: 3}", "unknown-part", "MK2")]
    [InlineData("{name: a, wall: U9, diameter: 3}", "unknown-part", "U9")]
    [InlineData("{name: a, floor: [100, 50]}", "missing-key", "diameter")]
    [InlineData("{name: a, diameter: 3}", "missing-key", "wall")]
    [InlineData("{name: a, floor: [100, 50], height: 3, diameter: 3}", "missing-key", "wall")]
    [InlineData("{name: a, front: [100, 50], height: 3, diameter: 3}", "missing-key", "wall")]
    [InlineData("{name: a, front: MK1, floor: MK1, diameter: 3}", "conflicting-keys", "front")]
    [InlineData("{name: a, wall: 0, height: 3, over-board: 2, diameter: 3}", "conflicting-keys", "over-board")]
    [InlineData("{name: a, wall: 0, slot: [3, 4], diameter: 3}", "conflicting-keys", "slot")]
    [InlineData("{name: a, wall: 0, rectangle: [3, 4], corner: 2}", "out-of-range", "rounder")]
    [InlineData("{name: a, wall: 0, diameter: 3, corner: 2}", "missing-key", "rectangle")]
    [InlineData("{name: MK1, wall: 0, diameter: 3}", "duplicate-ref", "MK1")]
    public void What_is_wrong_is_told_once_and_where(string text, string code, string about)
    {
        BoardReadResult read = Read(text);
        Assert.Null(read.File);
        var told = Assert.Single(read.Diagnostics, diagnostic => diagnostic.Code == code);
        Assert.Contains(about, told.Message, StringComparison.Ordinal);
        Assert.Equal(13, told.Line);
    }

    [Fact]
    public void Two_of_one_name_are_refused_and_a_turn_that_changes_nothing_is_told()
    {
        Assert.Contains(Read("{name: a, wall: 0, diameter: 3}", "{name: a, wall: 90, diameter: 3}").Diagnostics,
            diagnostic => diagnostic.Code == "duplicate-ref");
        BoardReadResult turned = Read("{name: a, wall: 0, diameter: 3, turn: 30}");
        Assert.NotNull(turned.File);
        Assert.Contains(turned.Diagnostics, diagnostic => diagnostic.Code == "turn-of-round");
    }
}
