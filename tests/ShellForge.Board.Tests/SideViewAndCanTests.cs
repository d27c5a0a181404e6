using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml;

namespace ShellForge.Board.Tests;

public class SideViewAndCanTests
{
    private static readonly ProfileLibrary Profiles = ProfileLibrary.Load([]).Library;

    private static BoardFile Read(string pixels, string parts = "[]")
    {
        string text =
            $"format: shellforge/1\nname: T\nboard:\n  outline: {{disc: 80}}\n  thickness: 1.6\n  pixels: {pixels}\n  parts: {parts}\n"
            + "housing: {insert: m2x3-od3.6, cable: none}\n";
        BoardReadResult read = BoardFileReader.Read("board.yaml", text, Profiles, []);
        Assert.True(read.File is not null, string.Join("\n", read.Diagnostics));
        return read.File;
    }

    [Theory]
    [InlineData("out", 0)]
    [InlineData("in", 180)]
    public void The_face_of_a_side_view_LED_that_shines_is_turned_to_where_it_faces(string facing, double turn)
    {
        PixelCircle circle = Read($"{{package: 4020-side, circle: 60, count: 8, from: 20, facing: {facing}}}").Board.PixelCircles[0];
        foreach (Pixel pixel in circle.Pixels)
        {
            double looks = pixel.Rotation.Degrees + circle.Led.ShiningFaceDegrees.Value;
            double outward = Math.Atan2(pixel.At.Y, pixel.At.X) * 180 / Math.PI;
            Assert.Equal(0, Math.IEEERemainder(looks - outward - turn, 360), 6);
        }
    }

    [Fact]
    public void A_can_is_as_tall_as_its_maker_allows_and_says_so()
    {
        BoardPart can =
            Read("{package: \"5050\", circle: 60, count: 8}", "[{ref: C1, package: electrolytic-smd-6.3x5.4, side: bottom, at: [0, 0]}]")
                .Board.Parts.First(part => part.Ref == "C1");
        Assert.Equal(5.7, can.Height!.Value, 9);
        Assert.Equal(0.3, can.HeightTolerance, 9);
        Assert.Contains("5.4", can.HeightFrom, StringComparison.Ordinal);
    }
}
