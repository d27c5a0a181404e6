using ShellForge.Board.Diagnostics;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml;

namespace ShellForge.Board.Tests;

public class SampleTests
{
    [Fact]
    public void Shipped_profiles_have_no_fault() => Assert.Empty(ProfileLibrary.Load([]).Diagnostics.Select(d => d.ToString()));

    [Theory]
    [InlineData("mooring-beacon", 12, 4)]
    [InlineData("tide-lamp", 24, 6)]
    [InlineData("dome-dial", 60, 6)]
    public void A_sample_reads_without_a_word(string name, int pixels, int holes)
    {
        BoardReadResult read = BoardTexts.Read(BoardTexts.Sample(name));

        Assert.Empty(read.Diagnostics.Where(d => d.Severity != DiagnosticSeverity.Note).Select(d => d.ToString()));
        Assert.Equal(pixels, read.File!.Board.PixelCircles.Sum(c => c.Pixels.Length));
        Assert.Equal(holes, read.File.Board.Holes.Length);
    }
}
