using ShellForge.Board.Description;
using ShellForge.Board.Yaml;

namespace ShellForge.Board.Tests;

public class CableReadingTests
{
    private static BoardReadResult Read(string cable, params string[] wires) => BoardTexts.Read(string.Join('\n',
    [
        "format: shellforge/1", "name: Cables", "up: 90", "board:", "  outline: {disc: 70}", "  thickness: 1.6",
        "  pixels: {package: \"2020\", circle: 40, count: 8}", "  parts:",
        "    - {ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: 0}",
        "    - {ref: J2, package: usb-c-receptacle, side: bottom, faces: 90, past-edge: 0}",
        "  wires:", .. wires.Select(wire => $"    - {wire}"), "housing:", $"  cable: {cable}",
    ]));

    private const string Feed = "{name: feed, at: [0, 2], gauge: 26}";

    [Fact]
    public void One_in_a_list_is_read_as_one_by_itself()
    {
        BoardReadResult list = Read("[{round: 4, through: floor, plug: [9, 4]}]", Feed);
        var alone = Assert.IsType<RoundCable>(Assert.Single(Read("{round: 4, through: floor, plug: [9, 4]}", Feed).File!.Housing.Cables));
        var listed = Assert.IsType<RoundCable>(Assert.Single(list.File!.Housing.Cables));
        Assert.Equal(alone, listed with { Path = alone.Path });
        Assert.Equal(("housing.cable", "housing.cable[0]", "out"), (alone.Path, listed.Path, alone.Name));
        Assert.True(list.File.Places.ContainsKey("housing.cable[0].through"));
    }

    [Fact]
    public void Several_keep_their_order_and_wires_say_which_they_leave_by()
    {
        BoardReadResult read = Read(
            "[{part: J1}, {name: data, round: 3, angle: 45}, {part: J2}, {name: next, round: 5, relief: knot}]",
            "{name: d, at: [0, 2], gauge: 26, to: data}", "{name: n, at: [4, 2], gauge: 26, to: next}");
        BoardFile file = read.File!;
        Assert.Equal(["J1", "data", "J2", "next"],
            file.Housing.Cables.Select(cable => cable is RoundCable round ? round.Name : ((ConnectorCable)cable).PartRef));
        Assert.Equal(["data", "next"], file.Board.Wires.Select(wire => wire.To));
        Assert.Equal(270, ((RoundCable)file.Housing.Cables[3]).At.Degrees);
        Assert.Equal("housing.cable[data]", ((RoundCable)file.Housing.Cables[1]).Path);
    }

    [Theory]
    [InlineData("[{round: 4}, {round: 3, angle: 20}]", "duplicate-name", "'out'")]
    [InlineData("[{name: a, round: 4}, {name: a, round: 3, angle: 20}]", "duplicate-name", "'a'")]
    [InlineData("[{part: J1}, {part: J1}]", "duplicate-name", "J1")]
    [InlineData("[{part: J1, name: a}]", "missing-key", "round")]
    [InlineData("[]", "wrong-count", "0")]
    [InlineData("[{name: a, round: 4}, {name: b, round: 4}]", "wire-to-nowhere", "no cable goes by the name 'out'")]
    [InlineData("[{name: feed, round: 4}, {round: 4}]", "duplicate-name", "of a cable and of a wire")]
    [InlineData("[{name: J2, round: 4}, {round: 4}]", "duplicate-name", "of a cable and of a wire")]
    [InlineData("[{part: J1}, {part: J9}]", "unknown-part", "J9")]
    public void What_does_not_go_together_is_told(string cable, string code, string what)
    {
        BoardReadResult read = Read(cable, Feed);
        Assert.Null(read.File);
        Assert.Contains(read.Diagnostics, told => told.Code == code && told.Message.Contains(what, StringComparison.Ordinal));
    }

    [Fact]
    public void A_wire_to_a_cable_that_is_not_there_is_told_with_the_nearest_name()
    {
        BoardReadResult read = Read("[{name: data, round: 4}, {round: 3}]", "{name: d, at: [0, 2], gauge: 26, to: dta}");
        Assert.Contains("data", Assert.Single(read.Diagnostics, told => told.Code == "wire-to-nowhere").ToString(),
            StringComparison.Ordinal);
    }
}
