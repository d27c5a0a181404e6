using ShellForge.Geometry.Numerics;
using ShellForge.Physics.Light;

namespace ShellForge.Physics.Tests.Light;

public class ClosedFormTests
{
    [Theory]
    [InlineData(120, 0.0)]
    [InlineData(120, 7.25)]
    [InlineData(60, 0.0)]
    [InlineData(60, 4.25)]
    [InlineData(140, 12.25)]
    public void One_LED_lights_a_plane_as_the_closed_form_says(double viewingAngle, double offset)
    {
        const double h = 8;
        double m = Math.Log(0.5) / Math.Log(Math.Cos(viewingAngle / 2 * Math.PI / 180));
        double expected = (m + 1) / (2 * Math.PI) * Math.Pow(h, m + 1) / Math.Pow((h * h) + (offset * offset), (m + 3) / 2);
        LightMap map = LightModel.Map(Scenes.Of([Scenes.Up(0, 0, viewingAngle)], Scenes.Square(15.25, h, 0.5)));
        Assert.InRange(Scenes.AtPlace(map, offset, 0) / expected, 0.99, 1.01);
    }

    [Theory]
    [InlineData(24, 38, 12, 120)]
    [InlineData(60, 64, 40, 90)]
    public void A_ring_of_LEDs_lights_its_axis_as_the_closed_form_says(int count, double radius, double h, double viewingAngle)
    {
        double m = Math.Log(0.5) / Math.Log(Math.Cos(viewingAngle / 2 * Math.PI / 180));
        double expected = count * (m + 1) / (2 * Math.PI) * Math.Pow(h, m + 1) / Math.Pow((h * h) + (radius * radius), (m + 3) / 2);
        LightMap map = LightModel.Map(Scenes.Of(Scenes.Ring(radius, count, 0, viewingAngle), Scenes.Square(70.25, h, 0.5)));
        Assert.InRange(Scenes.AtPlace(map, 0, 0) / expected, 0.99, 1.01);
    }

    [Fact]
    public void A_wall_throws_its_shadow_edge_where_similar_triangles_put_it()
    {
        // LED at the origin, wall from x = 3 to 4 up to z = 5, face at z = 9: the shadow begins at 3 * 9 / 5.
        const double edge = 3.0 * 9 / 5;
        WallSet walls = new WallSet().Box(new(3, -50, -1), new(4, 50, 5));
        LightMap map = LightModel.Map(Scenes.Of([Scenes.Up(0, 0)], Scenes.Square(8, 9, 0.05, at => Math.Abs(at.Y) < 0.06), walls));
        double last = Enumerable.Range(0, 160).Select(i => (i + 0.5) * 0.05).Last(x => Scenes.AtPlace(map, x, 0.025) > 0);
        Assert.InRange((last + 0.025) / edge, 0.99, 1.01);
        Assert.Equal(0, Scenes.AtPlace(map, 6, 0.025));
        Assert.True(Scenes.AtPlace(map, -6, 0.025) > 0);
    }

    [Fact]
    public void A_side_facing_LED_lights_a_band_most_where_its_axis_meets_it()
    {
        var led = new LedSource(new Point3(20, 0, 5), new Point3(1, 0, 0), 120, 0);
        ReceiverGrid face = ReceiverGrid.Band(26, 0, 10, 0.25, litFromInside: true, _ => true);
        LightMap map = LightModel.Map(Scenes.Of([led], face));
        Assert.InRange(Scenes.AtPlace(map, 0, 5) / (1 / (Math.PI * 36)), 0.99, 1.01);
        Assert.Equal(0, Scenes.AtPlace(map, Math.PI * 26, 5));
        Assert.InRange(Scenes.AtPlace(map, 3, 5) / Scenes.AtPlace(map, (2 * Math.PI * 26) - 3, 5), 0.99, 1.01);
    }

    [Theory]
    [InlineData(140, 0.65)]
    [InlineData(120, 1.0)]
    [InlineData(110, 1.25)]
    [InlineData(90, 2.0)]
    [InlineData(60, 4.8)]
    [InlineData(40, 11.1)]
    [InlineData(30, 20)]
    public void The_exponent_of_a_viewing_angle_is_the_one_in_the_trades_table(double viewingAngle, double exponent) =>
        Assert.InRange(new Lobe(viewingAngle).Exponent / exponent, 0.98, 1.02);

    // An endless row stands in for the table's; 81 LEDs, judged about the middle one.
    [Theory]
    [InlineData(0.4, 0.50, 0.54)]
    [InlineData(0.5, 0.67, 0.35)]
    [InlineData(0.6, 0.79, 0.22)]
    [InlineData(0.8, 0.92, 0.08)]
    [InlineData(1.0, 0.97, 0.03)]
    public void A_row_of_LEDs_is_as_even_as_the_table_of_the_trade_says(double heightPerPitch, double minimumOverMean, double michelson)
    {
        const double pitch = 10;
        var leds = Enumerable.Range(-40, 81).Select(i => Scenes.Up(i * pitch, 0));
        ReceiverGrid face = ReceiverGrid.Flat(
            new Box2(new Point2(-6, -0.5), new Point2(6, 0.5)), heightPerPitch * pitch, 0.2, _ => true);
        LightMap map = LightModel.Map(Scenes.Of(leds, face));
        Evenness along = Evenness.Along(map, PitchLine.Row([Point2.Origin], pitch));
        Assert.InRange(along.MinimumOverMean, minimumOverMean - 0.012, minimumOverMean + 0.012);
        Assert.InRange(along.Michelson, michelson - 0.012, michelson + 0.012);
    }
}
