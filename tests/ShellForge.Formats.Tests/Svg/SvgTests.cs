using System.Globalization;
using System.Xml.Linq;
using ShellForge.Formats.Svg;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Tests.Svg;

public class SvgTests
{
    private static readonly XNamespace Ns = "http://www.w3.org/2000/svg";

    private static XElement Parsed(SvgSheet sheet) => XDocument.Parse(sheet.ToString()).Root!;

    private static double Number(XElement element, string name) =>
        double.Parse(element.Attribute(name)!.Value, CultureInfo.InvariantCulture);

    [Fact]
    public void A_sheet_prints_at_its_true_size()
    {
        XElement svg = Parsed(new SvgSheet(210, 148.5, "Plan"));

        Assert.Equal("210mm", svg.Attribute("width")!.Value);
        Assert.Equal("0 0 210 148.5", svg.Attribute("viewBox")!.Value);
        Assert.Equal("Plan", svg.Element(Ns + "title")!.Value);
    }

    [Fact]
    public void Numbers_are_written_to_a_thousandth_as_the_runtime_writes_them()
    {
        var random = new Random(5);
        for (int i = 0; i < 2000; i++)
        {
            double value = i < 8 ? new[] { 0, -0.0, -0.0004, 0.001, -0.05, 12, 0.9996, -7.25 }[i]
                : Math.Round((random.NextDouble() - 0.5) * 900, random.Next(6));
            var sheet = new SvgSheet(10, 10, "numbers");
            sheet.Line(new Point2(value, 1), new Point2(2, value), Stroke.Thin);
            string expected = value.ToString("0.###", CultureInfo.InvariantCulture);
            expected = expected == "-0" ? "0" : expected;
            Assert.Contains($"d=\"M{expected} 1L2 {expected}\"", sheet.ToString(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Text_is_escaped()
    {
        var sheet = new SvgSheet(10, 10, "a<b & c");
        sheet.Lettering(new Point2(1, 1), "3 < 5 & \u0001", 2.5, TextAnchor.Start);

        Assert.Equal("3 < 5 & \uFFFD", Parsed(sheet).Element(Ns + "text")!.Value);
    }

    [Fact]
    public void A_loop_inside_another_is_one_path_with_a_hole()
    {
        var sheet = new SvgSheet(10, 10, "t");
        Point2[] outer = [new(0, 0), new(4, 0), new(4, 4)];
        Point2[] inner = [new(1, 0.5), new(3, 0.5), new(3, 2)];
        sheet.Area([outer, inner], Stroke.Outline, Fill.HatchRising);

        XElement path = Parsed(sheet).Elements(Ns + "path").Single();
        Assert.Equal("M0 0L4 0L4 4ZM1 0.5L3 0.5L3 2Z", path.Attribute("d")!.Value);
        Assert.Equal("url(#hr)", path.Attribute("fill")!.Value);
    }

    [Fact]
    public void A_long_dimension_carries_its_value_between_its_arrows()
    {
        var sheet = new SvgSheet(100, 50, "t");
        DimensionLines.Horizontal(sheet, new Point2(60, 10), new Point2(20, 10), 30, "40");

        XElement text = Parsed(sheet).Element(Ns + "text")!;
        Assert.Equal(40, Number(text, "x"));
        Assert.Equal("middle", text.Attribute("text-anchor")!.Value);
        Assert.True(Number(text, "y") < 30);
    }

    [Fact]
    public void A_dimension_too_short_for_its_value_carries_it_outside()
    {
        var sheet = new SvgSheet(100, 50, "t");
        DimensionLines.Horizontal(sheet, new Point2(20, 10), new Point2(21, 10), 30, "1.25");

        Assert.True(Number(Parsed(sheet).Element(Ns + "text")!, "x") > 21);
    }

    [Fact]
    public void A_vertical_dimension_reads_from_the_right()
    {
        var sheet = new SvgSheet(100, 50, "t");
        DimensionLines.Vertical(sheet, new Point2(10, 40), new Point2(10, 10), 5, "30");

        Assert.StartsWith("rotate(-90", Parsed(sheet).Element(Ns + "text")!.Attribute("transform")!.Value, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(12, "12")]
    [InlineData(12.5, "12.5")]
    [InlineData(0.8, "0.8")]
    [InlineData(1.667, "1.67")]
    public void Lengths_are_written_as_on_drawings(double value, string text) => Assert.Equal(text, DimensionLines.Value(value));
}
