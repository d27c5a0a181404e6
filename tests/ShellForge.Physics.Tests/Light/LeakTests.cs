using ShellForge.Geometry.Numerics;
using ShellForge.Physics.Light;

namespace ShellForge.Physics.Tests.Light;

public class LeakTests
{
    private static LightScene Box(double wall, double transmissionLength, double reflectance, Action<WallSet>? hole = null)
    {
        WallSet walls = new WallSet().Box(new(-10, -10, -3), new(10, 10, -1));
        if (hole is null)
        {
            walls.Box(new(6, -6 - wall, -1), new(6 + wall, 6 + wall, 8));
        }
        else
        {
            hole(walls);
        }

        walls.Box(new(-6 - wall, -6 - wall, -1), new(-6, 6 + wall, 8))
            .Box(new(-6, 6, -1), new(6, 6 + wall, 8)).Box(new(-6, -6 - wall, -1), new(6, -6, 8));
        return Scenes.Of([Scenes.Up(0, 0)], Scenes.Square(6, 8, 0.5), walls, reflectance,
            DiffuserOptics.Printed(0.8, new SurfaceOptics(0.85, 0.25))) with
        {
            Materials = [new SurfaceOptics(reflectance, transmissionLength)],
        };
    }

    private static LightLeaks Leaks(LightScene scene) => LightLeaks.Of(scene, LightModel.Map(scene));

    [Fact]
    public void A_closed_box_of_an_opaque_plastic_leaks_nothing()
    {
        LightLeaks leaks = Leaks(Box(1.2, 0, 0.85));
        Assert.Equal(0, leaks.SeamShare);
        Assert.Null(leaks.SeamFrom);
        Assert.Equal(0, leaks.WallGlow);
    }

    [Fact]
    public void A_slot_in_a_wall_lets_out_the_light_that_aims_at_it_and_its_place_is_told()
    {
        // The wall at +x ends 2 mm below the face.
        LightScene scene = Box(1.2, 0, 0, walls => walls.Box(new(6, -7.2, -1), new(7.2, 7.2, 6)));
        LightLeaks leaks = Leaks(scene);
        Assert.InRange(leaks.SeamShare, 0.005, 0.05);
        Assert.NotNull(leaks.SeamFrom);
    }

    [Fact]
    public void Light_through_a_hole_in_the_sheet_is_lost_to_the_map_and_is_no_leak()
    {
        LightScene scene = Box(1.2, 0, 0.85);
        LightScene holed = scene with { Face = scene.Face.WithHoles(at => at.Length < 2) };
        LightMap whole = LightModel.Map(scene);
        LightMap map = LightModel.Map(holed);
        Assert.Equal(whole.Face.OpenArea - (Math.PI * 4), map.Face.OpenArea, 1.0);
        int over = map.Face.CellAt(new Point2(0.1, 0.1));
        Assert.True(map.Face.IsHole(over));
        Assert.False(map.Face.IsOpen(over));
        Assert.Equal(0, map.Seen.All[over]);

        // The LED stands under the hole: what the cosine lobe throws within its angle is gone, the rest lands as before.
        int beside = map.Face.CellAt(new Point2(4.1, 0.1));
        Assert.True(map.DirectShare < whole.DirectShare - 0.02);
        Assert.InRange(map.Seen.All[beside] / whole.Seen.All[beside], 0.8, 1);
        Assert.True(map.SeenShare < whole.SeenShare);
        Assert.Equal(0, Leaks(holed).SeamShare);
    }

    [Fact]
    public void A_sheets_edge_at_a_hole_gives_back_nothing_as_one_behind_a_bezel_does()
    {
        LightScene scene = Box(1.2, 0, 0.85) with { GoesOn = true };
        LightScene window = scene with { Face = scene.Face.Finer(1, at => at.Length >= 2) };
        LightScene holed = scene with { Face = scene.Face.WithHoles(at => at.Length < 2) };
        int edge = scene.Face.CellAt(new Point2(2.3, 0.1));
        Assert.True(holed.Face.IsOpen(edge));
        Assert.True(LightModel.Map(holed).Seen.All[edge] < 0.95 * LightModel.Map(window).Seen.All[edge]);
    }

    [Fact]
    public void A_wall_glows_as_much_as_its_light_and_its_thickness_say()
    {
        LightLeaks thin = Leaks(Box(0.8, 0.25, 0));
        LightLeaks thick = Leaks(Box(2.4, 0.25, 0));
        double ratio = (1 / (1 + (0.8 / 0.25))) / (1 / (1 + (2.4 / 0.25)));
        Assert.InRange(thin.WallThickness, 0.79, 0.81);
        Assert.InRange(thin.WallGlow / thick.WallGlow / ratio, 0.98, 1.02);
        Assert.NotNull(thin.WallAt);
        Assert.InRange(Math.Max(Math.Abs(thin.WallAt.Value.X), Math.Abs(thin.WallAt.Value.Y)), 6.79, 6.81);
    }

    [Fact]
    public void A_wall_beside_an_LED_glows_as_photons_and_the_cosine_law_say()
    {
        // A flat emitter at the foot of a wall at the distance a throws at most 9 / (16 sqrt(3) pi a^2) of its light on each mm2 of it.
        // Photons say how much of it the window gets; 0.8 mm of wall pass 1 / (1 + 0.8 / 0.25) of theirs.
        const double a = 6;
        const int photons = 400_000;
        WallSet walls = new WallSet().Room(a, 8, 0.8);
        double landed = new PhotonTracer(5, walls.Triangles).Land([(new Point3(0, 0, 0), 120, 0)], a, 8, 1, 0, photons)[0, 0] / photons;
        double expected = 9 / (16 * Math.Sqrt(3) * Math.PI * a * a) / (landed / (4 * a * a)) / (1 + (0.8 / 0.25));

        LightLeaks leaks = Leaks(Box(0.8, 0.25, 0) with { Diffuser = Scenes.Clear });
        Assert.InRange(leaks.WallGlow / expected, 0.98, 1.01);
        Assert.Equal(0, leaks.WallMaterial);
    }

    [Fact]
    public void Two_walls_one_behind_the_other_pass_what_one_of_both_thicknesses_passes()
    {
        // A second room of 0.8 mm walls half a millimetre outside of the first.
        LightLeaks two = Leaks(Box(0.8, 0.25, 0, walls => walls
            .Box(new(6, -6.8, -1), new(6.8, 6.8, 8)).Box(new(7.3, -8.1, -1), new(8.1, 8.1, 8)).Box(new(-8.1, -8.1, -1), new(-7.3, 8.1, 8))
            .Box(new(-7.3, 7.3, -1), new(7.3, 8.1, 8)).Box(new(-7.3, -8.1, -1), new(7.3, -7.3, 8))));
        LightLeaks one = Leaks(Box(1.6, 0.25, 0));
        Assert.InRange(two.WallThickness, 1.59, 1.61);
        Assert.InRange(two.WallGlow / one.WallGlow, 0.97, 1.03);
        Assert.InRange(Math.Max(Math.Abs(two.WallAt!.Value.X), Math.Abs(two.WallAt.Value.Y)), 8.09, 8.11);
    }

    [Fact]
    public void The_rim_of_a_diffuser_dims_the_bezel_over_it_and_its_window_is_no_wall()
    {
        // A bezel of 0.8 mm from 3 mm on; behind it, or not, the rim of a sheet of 0.8 mm.
        static LightScene Bezel(double sheet) => Scenes.Of(
            [Scenes.Up(0, 0)], Scenes.Square(3, 4, 0.5),
            new WallSet().Box(new(3, -9, 4.8), new(9, 9, 5.6)).Box(new(-9, -9, 4.8), new(-3, 9, 5.6)), 0,
            DiffuserOptics.Printed(0.8, new SurfaceOptics(0.85, 0.25))) with
        {
            Materials = [new SurfaceOptics(0, 0.25)],
            Sheet = new WallSet().Box(new(-9, -9, 4), new(9, 9, 4.8)).Tree(),
            SheetOptics = new SurfaceOptics(0, sheet),
        };
        double bare = Leaks(Bezel(0)).WallGlow;
        LightLeaks rim = Leaks(Bezel(0.25));
        Assert.InRange(Math.Abs(rim.WallAt!.Value.X), 3.5, 9);
        double ratio = (1 + (0.8 / 0.25)) / (1 + (1.6 / 0.25));
        Assert.InRange(rim.WallGlow / bare / ratio, 0.98, 1.02);
    }

    [Fact]
    public void Light_that_a_wall_throws_back_into_the_rim_of_a_sheet_leaves_through_the_window()
    {
        // A room of 18 x 18 with white walls, a window of 6 x 6 in its bezel; a sheet lies behind the bezel, or nothing does.
        WallSet walls = new WallSet().Box(new(-10, -10, -3), new(10, 10, -1))
            .Box(new(9, -10, -1), new(10, 10, 5.6)).Box(new(-10, -10, -1), new(-9, 10, 5.6)).Box(new(-9, 9, -1), new(9, 10, 5.6))
                .Box(new(-9, -10, -1), new(9, -9, 5.6))
            .Box(new(3, -9, 4.8), new(9, 9, 5.6)).Box(new(-9, -9, 4.8), new(-3, 9, 5.6)).Box(new(-3, 3, 4.8), new(3, 9, 5.6))
                .Box(new(-3, -9, 4.8), new(3, -3, 5.6));
        LightScene open =
            Scenes.Of([Scenes.Up(0, 0)], Scenes.Square(3, 4, 0.5), walls, 0.85,
                DiffuserOptics.Printed(0.8, new SurfaceOptics(0.85, 0.25))) with
            {
                Materials = [new SurfaceOptics(0.85, 0)],
            };
        Assert.True(Leaks(open).SeamShare > 0.002);
        Assert.Equal(0, Leaks(open with
        {
            Sheet = new WallSet().Box(new(-9, -9, 4), new(9, 9, 4.8)).Tree(),
            SheetOptics = new SurfaceOptics(0, 0.25),
        }).SeamShare);
    }

    [Fact]
    public void The_least_distance_is_the_first_step_that_is_even_enough()
    {
        static double Grows(double distance) => distance / 20;
        Assert.Equal(12.1, LeastDistance.For(Grows, 0.601, 1, 30, 0.1).Distance, 6);
        Assert.Equal(1, LeastDistance.For(Grows, 0.02, 1, 30, 0.1).Distance, 6);
        Assert.Equal(12.1, LeastDistance.For(Grows, 0.601, 1, 12.25, 0.1).Distance, 6);
        Assert.Equal(1.2, LeastDistance.For(Grows, 0.06, 1, 1.3, 0.1).Distance, 6);
        (double anywhere, bool enough) = LeastDistance.For(_ => 0.1, 0.9, 1, 30, 0.1);
        Assert.InRange(anywhere, 1, 2.5);
        Assert.False(enough);
    }

    [Fact]
    public void Where_the_farthest_distance_is_not_even_enough_few_others_are_tried()
    {
        int tried = 0;
        double Never(double distance)
        {
            tried++;
            return distance / 200;
        }

        Assert.Equal((100, false), LeastDistance.For(Never, 0.9, 1, 100, 0.1));
        Assert.InRange(tried, 2, 10);
    }

    [Theory]
    [InlineData(0.9, 6.0, 9.0)]
    [InlineData(0.54, 4.5, 5.5)]
    public void Where_light_gets_less_even_again_far_away_the_most_even_distance_is_taken(double wanted, double from, double to)
    {
        // Even at 7 mm with 0.6, darker at the ends from there on.
        static double Hump(double distance) => 0.6 - (0.04 * Math.Abs(distance - 7) * (distance < 7 ? 0.85 : 1));
        Assert.InRange(LeastDistance.For(Hump, wanted, 1, 30, 0.1).Distance, from, to);
    }

    [Fact]
    public void Words_of_evenness_ask_for_distances_that_the_trade_uses()
    {
        // Row of cosine emitters without walls: dots 0.3 to 0.5 pitches, soft 0.6 to 0.8 at most, even at least 0.7.
        double For(double wanted) => LeastDistance.For(
            h =>
            {
                ReceiverGrid face = ReceiverGrid.Flat(new Box2(new Point2(-6, -1), new Point2(6, 1)), h, 0.5, _ => true);
                LightMap map = LightModel.Map(Scenes.Of(Enumerable.Range(-20, 41).Select(i => Scenes.Up(i * 10, 0)), face));
                return Evenness.Along(map, PitchLine.Row([Point2.Origin], 10)).MinimumOverMean;
            }, wanted, 1, 30, 0.1).Distance / 10;
        Assert.InRange(For(0.35), 0.3, 0.5);
        Assert.InRange(For(0.6), 0.43, 0.8);
        Assert.InRange(For(0.9), 0.7, 1.0);
    }

    [Fact]
    public void Colours_run_from_dark_to_light()
    {
        double Lightness(double share)
        {
            (byte r, byte g, byte b) = LightColours.False(share);
            return (0.2126 * r) + (0.7152 * g) + (0.0722 * b);
        }

        for (int i = 0; i < 20; i++)
        {
            Assert.True(Lightness(i / 20.0) < Lightness((i + 1) / 20.0));
        }

        Assert.Equal(((byte)255, (byte)255, (byte)255), LightColours.Seen(1, 1, 1));
        Assert.Equal((byte)188, LightColours.Seen(0.5, 0, 0).R);
    }
}
