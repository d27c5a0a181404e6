using ShellForge.Formats.Png;
using ShellForge.Formats.Rendering;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Testing;

namespace ShellForge.Formats.Tests.Rendering;

public sealed class RendererTests
{
    private static readonly Rgb Blue = new(60, 90, 200);

    private static Scene BoxScene { get; } = new()
    {
        Parts = [new PicturedPart(Meshes.Of(Shapes.Box(new(-10, -10, 0), new(10, 10, 10))), Blue)],
        Width = 120,
        Height = 80,
        View = View.Top,
    };

    [Fact]
    public void A_box_seen_from_above_fills_its_square_and_nothing_else()
    {
        Picture picture = Renderer.Render(BoxScene);
        Assert.Equal(Rgb.White, picture[2, 40]);
        Assert.True(IsBluish(picture[60, 40]));

        // 20 mm fill 90 % of the 80 rows: 72 pixels, 36 to each side of the middle.
        Assert.True(IsBluish(picture[60 - 33, 40]) && IsBluish(picture[60 + 33, 40]));
        Assert.Equal(Rgb.White, picture[60 - 39, 40]);
        Assert.Equal(Rgb.White, picture[60 + 39, 40]);
        int dark = Enumerable.Range(20, 10).Min(x => picture[x, 40].B);
        Assert.True(dark < 140, "the outline is drawn");
    }

    [Fact]
    public void The_nearer_part_hides_the_farther_one_whatever_their_order()
    {
        var top = new PicturedPart(Meshes.Of(Shapes.Box(new(-4, -4, 20), new(4, 4, 22))), new Rgb(220, 60, 40));
        foreach (PicturedPart[] parts in new[] { new[] { BoxScene.Parts[0], top }, [top, BoxScene.Parts[0]] })
        {
            Rgb middle = Renderer.Render(BoxScene with { Parts = [.. parts] })[60, 40];
            Assert.True(middle.R > middle.B);
        }
    }

    [Fact]
    public void A_section_shows_the_cut_where_there_is_material_and_the_void_where_there_is_none()
    {
        Ring rim = Ring.Peg(20);
        Region annulus = Region.Annulus(rim, rim.Coaxial(10, RingSide.Outside));
        Scene scene = BoxScene with
        {
            Parts = [new PicturedPart(Meshes.Of(Shapes.Extrude(annulus, 0, 20)), Blue)],
            View = View.Front,
            Section = new SectionPlane(default, new Point3(0, -3, 0)),
            Width = 400,
            Height = 240,
        };
        Picture picture = Renderer.Render(scene);
        double perMillimetre = 0.9 * 400 / 40;
        int At(double x) => (int)(200 + (x * perMillimetre));

        // In the wall lines of hatching alternate with light colour, in the bore the far wall is evenly shaded.
        int[] wall = [.. Enumerable.Range(At(11), At(19) - At(11)).Select(x => (int)picture[x, 120].B)];
        int[] bore = [.. Enumerable.Range(At(-3), At(3) - At(-3)).Select(x => (int)picture[x, 120].B)];
        Assert.True(wall.Max() - wall.Min() > 60);
        Assert.True(bore.Max() - bore.Min() < 25);
        Assert.Equal(Rgb.White, picture[At(21), 120]);
    }

    [Fact]
    public void A_series_shows_in_each_picture_what_it_names_and_lifts_the_one_that_is_lifted()
    {
        var red = new PicturedPart(Meshes.Of(Shapes.Box(new(-10, -10, 10), new(10, 10, 14))), new Rgb(220, 60, 40));
        var series = new PictureSeries
        {
            Things = [[BoxScene.Parts[0]], [red]],
            Shots = [new Shot([new(0)]), new Shot([new(0), new(1)]), new Shot([new(0), new(1, 1)])],
            Lift = 20,
            View = View.Front with { Elevation = Angle.FromDegrees(30) },
            Width = 160,
            Height = 160,
        };
        Picture[] pictures = [.. Renderer.Render(series)];
        int[] Rows(Picture picture, Func<Rgb, bool> isIt) => [.. Enumerable.Range(0, 160).Where(y => isIt(picture[80, y]))];
        bool IsRed(Rgb colour) => colour.R > colour.B + 40;
        Assert.Empty(Rows(pictures[0], IsRed));
        int[] resting = Rows(pictures[1], IsRed);
        int[] lifted = Rows(pictures[2], IsRed);

        // 20 mm up are 20 x cos 30 = 17.3 mm of the picture; its height is the box's depth, both boxes' heights and the lift.
        double perMillimetre = 0.9 * 160 / ((20 * 0.5) + (34 * 0.866));
        Assert.InRange(resting[0] - lifted[0], (17.3 * perMillimetre) - 2, (17.3 * perMillimetre) + 2);
        Assert.Equal(resting.Length, lifted.Length);
        Assert.True(Rows(pictures[2], IsBluish).Length > Rows(pictures[1], IsBluish).Length, "lifted, it hides less");
        Assert.Equal(pictures[0][80, 100], Renderer.Render(series)[0][80, 100]);
    }

    [Fact]
    public void The_same_scene_gives_the_same_bytes()
    {
        Scene scene = BoxScene with { View = View.Corner, Parts = [new PicturedPart(Meshes.Of(Shapes.Sphere(9, 48)), Blue)] };
        Assert.Equal(PngWriter.ToBytes(Renderer.Render(scene)), PngWriter.ToBytes(Renderer.Render(scene)));
    }

    [Fact]
    public void An_empty_scene_is_an_empty_picture()
    {
        Picture picture = Renderer.Render(BoxScene with { Parts = [] });
        Assert.Equal(Rgb.White, picture[60, 40]);
    }

    private static bool IsBluish(Rgb colour) => colour.B > colour.R + 40;
}
