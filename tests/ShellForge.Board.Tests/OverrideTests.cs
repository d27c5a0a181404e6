using ShellForge.Board.Description;
using ShellForge.Board.Diagnostics;
using ShellForge.Board.Yaml;

namespace ShellForge.Board.Tests;

public class OverrideTests
{
    private static readonly string Ring = File.ReadAllText(BoardTexts.Folder("tests", "boards", "valid", "ring-92.yaml"));

    [Fact]
    public void A_value_is_replaced_and_added() =>
        Assert.Equal((4, 3.0), Read(f => (f.Housing.WallLines!.Value, f.Housing.Floor!.Value), "housing.walls=4", "housing.floor=3"));

    [Fact]
    public void A_part_is_found_by_its_designator()
    {
        Assert.Equal(1.5, Read(f => f.Board.Parts.Single(p => p.Ref == "J1").Mouth!.PastEdge, "board.parts[J1].past-edge=1.5"), 9);
        Assert.Equal(9.0, Read(f => f.Board.Parts.Single(p => p.Ref == "C9").Height!.Value, "board.parts[C9].height=9"));
    }

    [Fact]
    public void An_entry_is_found_by_its_number_and_added_at_the_end()
    {
        Assert.Equal(3.2, Read(f => f.Board.Holes[0].Diameter, "board.holes[0].diameter=3.2"));
        Assert.Equal(5, Read(f => f.Board.Holes.Length, "board.holes[+]={at: [40, 0], diameter: 1.5, for: tooling}"));
        Assert.Equal(5, Read(f => f.Board.Holes.Length, "board.holes[1]={at: [40, 0], diameter: 1.5, for: tooling}"));
    }

    [Fact]
    public void A_new_part_is_made_by_naming_it() =>
        Assert.Equal(
            4.3,
            Read(
                f => f.Board.Parts.Single(p => p.Ref == "U7").Height!.Value,
                "board.parts[U7].size=[5, 5]",
                "board.parts[U7].at=[0, 35]",
                "board.parts[U7].height=4.3"));

    [Fact]
    public void A_word_gives_way_to_a_mapping() =>
        Assert.IsType<RoundCable>(Read(f => f.Housing.Cables.Single(), "housing.cable=none", "housing.cable.round=4.5"));

    [Fact]
    public void One_circle_of_LEDs_counts_as_a_list_of_one() =>
        Assert.Equal(12, Read(f => f.Board.PixelCircles[0].Count, "board.pixels[0].count=12"));

    [Theory]
    [InlineData("housing.walls=many", 15, "wrong-kind")]
    [InlineData("housing.wals=4", 9, "unknown-key")]
    [InlineData("housing.walls", 1, "bad-override")]
    [InlineData("housing..walls=4", 1, "bad-override")]
    [InlineData("board.holes[7].diameter=3", 12, "bad-override")]
    [InlineData("board.holes.diameter=3", 13, "bad-override")]
    [InlineData("board.thickness={a: [}", 22, "yaml-syntax")]
    [InlineData("board.thickness=", 17, "wrong-kind")]
    [InlineData("board.parts[C9].size[0]=NaN", 25, "not-a-number")]
    public void A_faulty_override_is_told_at_its_own_place(string text, int column, string code)
    {
        BoardReadResult read = BoardTexts.Read(Ring, "up=90", text);

        Diagnostic first = Assert.Single(read.Diagnostics.Where(d => d.Code == code));
        Assert.Equal(("--set 2", 1, column), (first.File, first.Line, first.Column));
        Assert.Null(read.File);
    }

    [Fact]
    public void Changing_the_insert_alone_changes_the_screw_and_says_so()
    {
        BoardReadResult read = BoardTexts.Read(Ring, "housing.screw=m2.5-cap", "housing.insert=m3x4-od4.6");

        Assert.Equal("m3-cap", read.File!.Housing.Screw!.Name);
        Assert.Equal("thread-differs", Assert.Single(read.Diagnostics).Code);
        Assert.Equal("m3-pan", BoardTexts.Read(Ring, "housing.insert=m3x4-od4.6").File!.Housing.Screw!.Name);
    }

    private static T Read<T>(Func<BoardFile, T> pick, params string[] overrides)
    {
        BoardReadResult read = BoardTexts.Read(Ring, overrides);
        Assert.Empty(read.Diagnostics.Where(d => d.IsError).Select(d => d.ToString()));
        return pick(read.File!);
    }
}
