using FsCheck.Xunit;
using ShellForge.Geometry.Numerics;
using ShellForge.Physics.Light;

namespace ShellForge.Physics.Tests.Light;

public class EnergyTests
{
    [Theory]
    [InlineData(120)]
    [InlineData(60)]
    public void A_wide_face_takes_in_what_the_lobe_sends_to_it(double viewingAngle)
    {
        // A disc of radius R at height h takes 1 - cos(a)^(m + 1) of the flux, cos(a) = h / sqrt(h2 + R2).
        const double h = 4;
        const double radius = 40;
        double m = Math.Log(0.5) / Math.Log(Math.Cos(viewingAngle / 2 * Math.PI / 180));
        double expected = 1 - Math.Pow(h / Math.Sqrt((h * h) + (radius * radius)), m + 1);
        LightMap map =
            LightModel.Map(Scenes.Of([Scenes.Up(0.1, 0.07, viewingAngle)], Scenes.Square(40, h, 0.25, at => at.Length < radius)));
        Assert.InRange(map.DirectShare / expected, 0.99, 1.01);
        Assert.InRange(map.DirectShare, 0, 1);
    }

    [Property(MaxTest = 40)]
    public bool No_housing_gives_off_more_light_than_its_LEDs_do(byte half, byte height, byte reflectance, byte thickness)
    {
        double room = 4 + (half % 12);
        double h = 2 + (height % 10);
        DiffuserOptics sheet = DiffuserOptics.Printed(0.2 + (thickness / 100.0), new SurfaceOptics(0.85, 0.25));
        LightMap map = LightModel.Map(Scenes.Of(
            [Scenes.Up(-1, 0, 120, 2), Scenes.Up(1.5, 0.5, 90, 2)], Scenes.Square(room, h, 0.5),
            new WallSet().Room(room, h, 1), reflectance / 255.0, sheet));

        // What gets into the sheet stays there but for the share that is seen; what is seen leaves a little at the edges.
        return map.DirectShare > 0.05 && map.SeenShare / sheet.Transmission * (1 - sheet.Reflectance) <= 1.01
            && sheet.Transmission + sheet.Reflectance <= 1;
    }

    [Fact]
    public void Light_that_goes_up_or_hits_the_four_walls_of_a_room_is_all_the_light_there_is()
    {
        // What misses the face hits the walls, which throw 100 % back; half of that at most comes up again at first order.
        WallSet walls = new WallSet().Room(5, 6, 1);
        LightMap black = LightModel.Map(Scenes.Of([Scenes.Up(0, 0)], Scenes.Square(5, 6, 0.25), walls));
        LightMap white = LightModel.Map(Scenes.Of([Scenes.Up(0, 0)], Scenes.Square(5, 6, 0.25), walls, 1));
        Assert.Equal(0, black.ReflectedShare);
        Assert.InRange(white.DirectShare / black.DirectShare, 0.9999, 1.0001);
        Assert.InRange(white.ReflectedShare, 0.2 * (1 - black.DirectShare), 1 - black.DirectShare);
    }

    [Fact]
    public void A_sheet_spreads_a_spot_without_making_or_losing_light_in_its_middle()
    {
        var sheet = new DiffuserOptics(0.3, 0.6, 1.2);
        LightMap map = LightModel.Map(Scenes.Of([Scenes.Up(0, 0)], Scenes.Square(40, 2, 0.5), sheet: sheet));
        LightMap sharp = LightModel.Map(Scenes.Of([Scenes.Up(0, 0)], Scenes.Square(40, 2, 0.5), sheet: sheet with { Spread = 0 }));
        double before = 0;
        double after = 0;
        for (int i = 0; i < map.Face.Count; i++)
        {
            before += sharp.Seen.All[i];
            after += map.Seen.All[i];
        }

        Assert.InRange(after / before, 0.999, 1.0001);
        Assert.True(map.Face.Sample(map.Seen.All, 0, 0) < 0.8 * map.Face.Sample(sharp.Seen.All, 0, 0));
    }

    // Walls, floor and sheet swallow nothing, so whatever gets in at once or is thrown back and forth is seen in the end. The room is
    // low as housings are: in a tall white one the coarse patches of its walls add up to some per cent.
    [Theory]
    [InlineData(3, 0.4)]
    [InlineData(3, 0.15)]
    public void A_low_white_room_gives_off_all_the_light_of_its_LEDs_through_a_sheet_that_swallows_none(double height, double transmission)
    {
        const double half = 5;
        WallSet walls = new WallSet().Room(half, height, 1).Box(new(-half - 1, -half - 1, -1), new(half + 1, half + 1, 0));
        LightMap map = LightModel.Map(Scenes.Of(
            [Scenes.Up(-2, 0.1, 120, 2), Scenes.Up(2, -0.3, 60, 2)], Scenes.Square(half, height, 0.5), walls, 1,
            new DiffuserOptics(transmission, 1 - transmission, 0)));
        Assert.InRange(map.SeenShare, 0.98, 1.02);
    }

    [Property(MaxTest = 30)]
    public bool More_reflectance_never_darkens_and_a_thicker_sheet_never_brightens(byte reflectance, byte more, byte thickness)
    {
        WallSet walls = new WallSet().Room(4, 5, 1);
        double low = reflectance / 512.0;
        double high = low + (more / 512.0);
        double t = 0.2 + (thickness / 128.0);
        LightMap Map(double r, double thick) => LightModel.Map(Scenes.Of(
            [Scenes.Up(0.5, 0, 120, 3)], Scenes.Square(4, 5, 1), walls, r, DiffuserOptics.Printed(thick, new SurfaceOptics(0.85, 0.25))));
        return Map(low, t).SeenShare <= Map(high, t).SeenShare * 1.000001 && Map(low, t + 0.2).SeenShare < Map(low, t).SeenShare;
    }

    [Fact]
    public void A_sheet_that_goes_on_behind_a_bar_is_beside_it_as_bright_as_without_the_bar()
    {
        DiffuserOptics sheet = new(0.3, 0.5, 0.7);
        static bool Beside(Point2 at) => Math.Abs(at.X) > 0.6;
        LightMap whole = LightModel.Map(Scenes.Of([Scenes.Up(0, 0)], Scenes.Square(12, 8, 0.5), sheet: sheet));
        LightScene barred = Scenes.Of([Scenes.Up(0, 0)], Scenes.Square(12, 8, 0.5, Beside), sheet: sheet);
        LightMap goesOn = LightModel.Map(barred with { GoesOn = true });
        LightMap ends = LightModel.Map(barred);

        Assert.Equal(1, Seen(goesOn, 0.9) / Seen(whole, 0.9), 0.02);
        Assert.InRange(Seen(ends, 0.9) / Seen(whole, 0.9), 0.3, 0.9);

        static double Seen(LightMap map, double x) => map.Face.Sample(map.Seen.All, x, 0);
    }

    [Fact]
    public void Halving_the_grid_changes_contrast_by_less_than_a_hundredth()
    {
        Evenness[] found =
        [
            .. new[] { 1.0, 0.5, 0.25 }.Select(step =>
            {
                WallSet walls = new WallSet().Box(new(-60, 6, -1), new(60, 7, 6)).Box(new(-60, -7, -1), new(60, -6, 6));
                var leds = Enumerable.Range(-6, 13).Select(i => Scenes.Up(i * 8, 0, 120, 4));
                ReceiverGrid face = ReceiverGrid.Flat(new Box2(new Point2(-16, -6), new Point2(16, 6)), 6, step, _ => true);
                LightMap map =
                    LightModel.Map(Scenes.Of(leds, face, walls, 0.85, DiffuserOptics.Printed(0.8, new SurfaceOptics(0.85, 0.25))));
                return Evenness.Along(map, PitchLine.Row([new(-8, 0), Point2.Origin, new(8, 0)], 8));
            }),
        ];
        Assert.InRange(found[0].MinimumOverMean, 0.5, 0.99);
        Assert.True(Math.Abs(found[2].Michelson - found[1].Michelson) < 0.01, $"{found[1]} against {found[2]}");
        Assert.True(Math.Abs(found[2].MinimumOverMean - found[1].MinimumOverMean) < 0.01, $"{found[1]} against {found[2]}");
        Assert.True(Math.Abs(found[1].Michelson - found[0].Michelson) < 0.01, $"{found[0]} against {found[1]}");
    }
}
