using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.Print;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Testing;
using Region = ShellForge.Geometry.Planar.Region;

namespace ShellForge.Checks.Tests.Print;

/// <summary>Print rules on shapes whose answers are known beforehand.</summary>
public class KnownShapesTests
{
    [Theory]
    [InlineData(40, false)]
    [InlineData(44, false)]
    [InlineData(46, true)]
    [InlineData(60, true)]
    public void A_cone_that_widens_upward_is_told_from_46_degrees_on(double degrees, bool told)
    {
        double tangent = Math.Tan(degrees * Math.PI / 180);
        int count = Ring.CountFor(10 + (8 * tangent));
        Solid cone = Shapes.Taper(new Ring(10, RingSide.Outside, count, Angle.Zero), 0,
            new Ring(10 + (8 * tangent), RingSide.Outside, count, Angle.Zero), 8, Point2.Origin);
        Finding[] found = KnownShapes.Found(new NothingBelow(), cone);
        Assert.Equal(told, found.Length > 0);
        Assert.All(found, finding => Assert.Equal(degrees, finding.Measured!.Value, 0.5));
    }

    [Theory]
    [InlineData(9.5, null)]
    [InlineData(11.0, Severity.Note)]
    [InlineData(19.5, Severity.Note)]
    [InlineData(21.0, Severity.Warn)]
    [InlineData(39.5, Severity.Warn)]
    [InlineData(41.0, Severity.Stop)]
    public void A_bridge_is_told_by_its_span(double span, Severity? severity)
    {
        Solid gate = Shapes.Box(new Point3(-30, -4, 0), new Point3(30, 4, 12))
            .Less(Shapes.Box(new Point3(-span / 2, -9, -1), new Point3(span / 2, 9, 10)));
        Finding[] found = KnownShapes.Found(new NothingBelow(), gate);
        Assert.Equal(severity, found.Length == 0 ? null : Assert.Single(found).Severity);

        // What stands out up to the overhang's limit carries itself.
        Assert.All(found, finding => Assert.InRange(finding.Measured!.Value, span - 0.45, span));
        Assert.All(found, finding => Assert.Equal(10, finding.At!.Value.Z, 0.21));
    }

    [Fact]
    public void A_cantilever_is_no_bridge()
    {
        Solid arm = Shapes.Box(new Point3(-10, -4, 0), new Point3(0, 4, 12)).And(Shapes.Box(new Point3(-10, -4, 10), new Point3(9, 4, 12)));
        Finding finding = Assert.Single(KnownShapes.Found(new NothingBelow(), arm));
        Assert.Equal(Severity.Stop, finding.Severity);
        Assert.Contains("overhang", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_island_in_the_air_is_a_stop_where_it_starts()
    {
        Solid floating =
            Shapes.Box(new Point3(-10, -10, 0), new Point3(10, 10, 2)).And(Shapes.Box(new Point3(3, 4, 6), new Point3(6, 7, 8)));
        Finding finding = Assert.Single(KnownShapes.Found(new NothingBelow(), floating));
        Assert.Equal(Severity.Stop, finding.Severity);
        Assert.Equal(6, finding.At!.Value.Z, 0.01);
        Assert.Equal(3, finding.Measured!.Value, 0.01);
    }

    [Theory]
    [InlineData(0.39, true)]
    [InlineData(0.42, true)]
    [InlineData(0.45, false)]
    [InlineData(0.90, false)]
    public void A_wall_narrower_than_a_line_vanishes(double wall, bool told)
    {
        Finding[] found = KnownShapes.Found(new FeatureVanishes(), WallOnPlate(wall));
        Assert.Equal(told, found.Length > 0);
        Assert.All(found, finding => Assert.Equal(wall, finding.Measured!.Value, 0.03));
    }

    [Theory]
    [InlineData(0.45, false)]
    [InlineData(0.60, true)]
    [InlineData(0.75, true)]
    [InlineData(0.86, false)]
    [InlineData(0.90, false)]
    public void A_wall_between_one_line_and_two_is_told(double wall, bool told)
    {
        Finding[] found = KnownShapes.Found(new WallBetweenLines(), WallOnPlate(wall));
        Assert.Equal(told, found.Length > 0);
        Assert.All(found, finding => Assert.Equal(wall, finding.Measured!.Value, 0.03));
    }

    [Theory]
    [InlineData(0.3, true)]
    [InlineData(0.4, true)]
    [InlineData(0.8, false)]
    public void A_pin_is_drawn_from_a_line_on(double diameter, bool vanishes)
    {
        Solid pin = Plate.And(Shapes.Extrude(Region.Disc(new Point2(3, 3), Ring.Hole(diameter / 2)), 1, 6));
        Finding[] found = KnownShapes.Found(new FeatureVanishes(), pin);
        Assert.Equal(vanishes, found.Length > 0);
        Assert.All(found, finding => Assert.Equal(3, finding.At!.Value.X, 0.3));
    }

    [Theory]
    [InlineData(0.3, true)]
    [InlineData(0.6, false)]
    [InlineData(0.8, false)]
    public void Raised_letters_vanish_when_their_strokes_are_finer_than_a_line(double stroke, bool vanishes)
    {
        // The letters E and T from strokes.
        Region letters = Region.Union(
            Stroke(0, 0, 0, 5, stroke), Stroke(0, 0, 3, 0, stroke), Stroke(0, 2.5, 2.5, 2.5, stroke), Stroke(0, 5, 3, 5, stroke),
            Stroke(5, 5, 9, 5, stroke), Stroke(7, 0, 7, 5, stroke));
        Finding[] found = KnownShapes.Found(new FeatureVanishes(), Plate.And(Shapes.Extrude(letters, 1, 1.6)));
        Assert.Equal(vanishes, found.Length > 0);
    }

    [Theory]
    [InlineData(0.15, true)]
    [InlineData(0.40, false)]
    public void A_slot_narrower_than_half_a_line_closes(double slot, bool told)
    {
        Solid slotted =
            Shapes.Box(new Point3(-10, -10, 0), new Point3(10, 10, 4)).Less(Shapes.Box(new Point3(-6, 0, -1), new Point3(6, slot, 5)));
        Assert.Equal(told, KnownShapes.Found(new GapCloses(), slotted).Length > 0);
    }

    [Fact]
    public void Slots_alike_are_one_finding_with_their_places_and_another_slot_is_its_own()
    {
        Solid plate = Shapes.Box(new Point3(-20, -20, 0), new Point3(20, 20, 4));
        (double Y, double Width)[] slots = [(-12, 0.15), (-6, 0.15), (0, 0.15), (6, 0.15), (9, 0.15), (12, 0.1)];
        foreach ((double y, double width) in slots)
        {
            plate = plate.Less(Shapes.Box(new Point3(-6, y, -1), new Point3(6, y + width, 5)));
        }

        Finding[] found = [.. KnownShapes.Found(new GapCloses(), plate).OrderByDescending(finding => finding.Measured)];

        Assert.Equal(2, found.Length);
        Assert.StartsWith("5 gaps 0.15 mm wide", found[0].Message, StringComparison.Ordinal);
        Assert.EndsWith(" and 1 more", found[0].Message, StringComparison.Ordinal);
        Assert.Equal(4, found[0].Message.Count(each => each == '('));
        Assert.StartsWith("a gap 0.10 mm wide", found[1].Message, StringComparison.Ordinal);
        Assert.All(found, finding => Assert.Empty(MessageStyle.Faults(finding.Message, finding.Remedy)));
    }

    [Fact]
    public void Walls_of_nearly_one_width_are_one_finding_with_their_places_and_others_are_their_own()
    {
        Solid plate = Shapes.Box(new Point3(-20, -20, 0), new Point3(20, 20, 1));
        (double Y, double Width)[] walls = [(-12, 0.22), (-6, 0.24), (0, 0.26), (6, 0.28), (9, 0.3), (12, 0.6), (18, 0.62)];
        foreach ((double y, double width) in walls)
        {
            plate = plate.And(Shapes.Box(new Point3(-8, y, 1), new Point3(8, y + width, 5)));
        }

        Finding fine = Assert.Single(KnownShapes.Found(new FeatureVanishes(), plate));
        Assert.StartsWith("5 features 0.2", fine.Message, StringComparison.Ordinal);
        Assert.EndsWith(" and 1 more", fine.Message, StringComparison.Ordinal);
        Assert.Equal(0.22, fine.Measured!.Value, 0.02);
        Finding between = Assert.Single(KnownShapes.Found(new WallBetweenLines(), plate));
        Assert.StartsWith("2 walls of 0.6", between.Message, StringComparison.Ordinal);
        Assert.All(new[] { fine, between }, finding => Assert.Empty(MessageStyle.Faults(finding.Message, finding.Remedy)));
    }

    [Theory]
    [InlineData(0.2, true)]
    [InlineData(0.4, false)]
    [InlineData(1.0, false)]
    public void A_skin_of_one_layer_is_told_with_its_place(double skin, bool told)
    {
        Solid box =
            Shapes.Box(new Point3(-10, -10, 0), new Point3(10, 10, 6)).Less(Shapes.Box(new Point3(-7, -7, skin), new Point3(7, 7, 8)));
        Finding[] found = KnownShapes.Found(new SkinTooThin(), box);
        Assert.Equal(told, found.Length > 0);
        Assert.All(found, finding => Assert.Equal(skin, finding.Measured!.Value, 0.01));
    }

    [Theory]
    [InlineData(1.26)]
    [InlineData(2.08)]
    public void The_thinnest_place_of_a_tube_is_its_wall(double wall)
    {
        int count = Ring.CountFor(30);
        Solid tube =
            Shapes.Extrude(Region.Annulus(new Ring(30, RingSide.Outside, count, Angle.Zero),
                new Ring(30 - wall, RingSide.Outside, count, Angle.Zero)), 0, 20);
        Assert.Equal(wall, ThinnestPlace.Of(new SurfaceTree(SolidEvaluator.Evaluate(tube).Require().Mesh))!.Value.Thickness, 0.01);
    }

    [Property(MaxTest = 12)]
    public Property Layers_add_up_to_the_volume_within_a_thousandth()
    {
        Gen<double> size = Gen.Choose(40, 200).Select(n => n / 10.0);
        return Prop.ForAll(size.Three().ToArbitrary(), sizes =>
        {
            // A cone on a plate with a hole: level and sloping faces, heights that are whole layers.
            (double a, double b, double c) = sizes;
            int count = Ring.CountFor(24);
            Solid shape = Shapes.Box(new Point3(-a - 4, -b - 4, 0), new Point3(a + 4, b + 4, 2))
                .And(Shapes.Taper(new Ring(a, RingSide.Outside, count, Angle.Zero), 2, new Ring(a / 2, RingSide.Outside, count, Angle.Zero),
                    12, Point2.Origin))
                .Less(Shapes.Extrude(Region.Disc(new Point2(a, b), new Ring(c / 10, RingSide.Outside, count, Angle.Zero)), -1, 3));
            double volume = Measure.Volume(SolidEvaluator.Evaluate(shape).Require().Mesh);
            return Math.Abs(KnownShapes.Layers(shape).Volume - volume) <= 0.001 * volume;
        });
    }

    [Fact]
    public void A_part_too_long_for_the_bed_fits_turned_or_is_a_stop()
    {
        Assert.Empty(KnownShapes.Found(new OffTheBed(), Shapes.Box(new Point3(-120, -3, 0), new Point3(120, 3, 5))));
        Finding stop = Assert.Single(KnownShapes.Found(new OffTheBed(), Shapes.Box(new Point3(-120, -60, 0), new Point3(120, 60, 5))));
        Assert.Equal(Severity.Stop, stop.Severity);
        Assert.DoesNotContain("turned", stop.Message, StringComparison.Ordinal);
        Assert.Contains("even turned by", Assert.Single(
            KnownShapes.Found(new OffTheBed(), Shapes.Box(new Point3(-160, -3, 0), new Point3(160, 3, 5)))).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_part_whose_weight_hangs_over_its_foot_tips()
    {
        Solid hammer =
            Shapes.Box(new Point3(0, 0, 0), new Point3(10, 10, 20)).And(Shapes.Box(new Point3(0, 0, 20), new Point3(60, 10, 30)));
        Assert.Contains(KnownShapes.Found(new PoorFooting(), hammer), finding => finding.Severity == Severity.Stop);
        Solid steady = Shapes.Box(new Point3(0, 0, 0), new Point3(30, 30, 10));
        Assert.DoesNotContain(KnownShapes.Found(new PoorFooting(), steady), finding => finding.Severity != Severity.Note);
    }

    private static Solid Plate => Shapes.Box(new Point3(-2, -2, 0), new Point3(12, 12, 1));

    private static Solid WallOnPlate(double wall) => Plate.And(Shapes.Box(new Point3(0, 4, 1), new Point3(10, 4 + wall, 6)));

    private static Region Stroke(double x0, double y0, double x1, double y1, double width) =>
        Region.Slot(new Point2(x0, y0), new Point2(x1, y1), width);
}
