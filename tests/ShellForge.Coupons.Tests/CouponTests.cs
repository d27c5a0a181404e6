using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Testing;

namespace ShellForge.Coupons.Tests;

/// <summary>Every kind of coupon, as its file gives it back: sound, quick, light, its figures readable.</summary>
public sealed class CouponTests
{
    private const double Hundredth = 0.01;

    // Where the steps of each kind are measured back from its file.
    private static readonly Dictionary<string, (Type Tests, string Test)> MeasuredBack = new()
    {
        ["size-bar"] = (typeof(MeasuredBackTests), nameof(MeasuredBackTests.The_size_bar_has_the_sizes_that_are_asked_for)),
        ["lid-fit"] = (typeof(MeasuredBackTests), nameof(MeasuredBackTests.Rings_and_lid_differ_by_the_gap_of_their_figures)),
        ["slot-fit"] = (typeof(MeasuredBackTests), nameof(MeasuredBackTests.Slots_and_tongue_differ_by_the_gap_of_their_figures)),
        ["insert-holes"] = (typeof(MeasuredBackTests), nameof(MeasuredBackTests.Insert_holes_have_the_diameter_of_their_figures)),
        ["diffuser-steps"] =
            (typeof(MeasuredBackTests), nameof(MeasuredBackTests.Windows_of_the_diffuser_strip_are_as_thick_as_their_figures)),
        ["inlay-fit"] =
            (typeof(MeasuredBackByHandTests), nameof(MeasuredBackByHandTests.Seats_and_tile_differ_by_the_gap_of_their_figures)),
        ["layer-fit"] = (typeof(MeasuredBackByHandTests),
            nameof(MeasuredBackByHandTests.Tunnels_are_higher_than_the_bar_by_their_figures_and_end_on_layers)),
        ["magnet-pockets"] = (typeof(MeasuredBackByHandTests),
            nameof(MeasuredBackByHandTests.Magnet_pockets_are_wider_than_the_magnet_by_their_figures)),
        ["battery-bays"] = (typeof(MeasuredBackByHandTests),
            nameof(MeasuredBackByHandTests.Walls_for_a_cell_stand_apart_by_fourteen_and_their_figures)),
        ["plug-openings"] = (typeof(MeasuredBackByHandTests),
            nameof(MeasuredBackByHandTests.Openings_for_every_connector_are_larger_than_its_own_by_their_figures)),
        ["snap-rings"] = (typeof(MeasuredBackByHandTests),
            nameof(MeasuredBackByHandTests.Bead_and_rings_overlap_by_their_figures_and_strain_no_more_than_the_filament_bears)),
        ["thin-walls"] = (typeof(MeasuredBackByHandTests),
            nameof(MeasuredBackByHandTests.Thin_walls_have_the_thickness_of_their_figures_from_half_a_line_on)),
        ["bridges"] =
            (typeof(MeasuredBackByHandTests), nameof(MeasuredBackByHandTests.Decks_span_what_their_figures_say_with_nothing_below)),
        ["overhangs"] =
            (typeof(MeasuredBackByHandTests), nameof(MeasuredBackByHandTests.Walls_lean_by_the_degrees_of_their_figures)),
    };

    [Fact]
    public void The_steps_of_every_kind_are_measured_back_somewhere()
    {
        Assert.Equal(CouponKinds.All.Select(kind => kind.Name).Order(StringComparer.Ordinal),
            MeasuredBack.Keys.Order(StringComparer.Ordinal));
        Assert.All(MeasuredBack.Values, each => Assert.NotEmpty(
            each.Tests.GetMethod(each.Test)!.GetCustomAttributes(typeof(TheoryAttribute), inherit: true)));
        Assert.Equal(MeasuredBack.Count, MeasuredBack.Values.Distinct().Count());
    }

    public static IEnumerable<object[]> All() => Samples.KindsAndPrinters();

    [Theory]
    [MemberData(nameof(All))]
    public void A_coupon_is_sound_and_takes_less_than_half_an_hour_and_ten_grams(string kind, string printer)
    {
        MadeCoupon made = Samples.Make(kind, Samples.Wish(printer));
        Assert.All(made.Pieces, piece => Samples.Written(piece));
        Assert.All(made.Pieces, piece => Assert.Equal(0, Measure.Bounds(piece.Mesh).Min.Z));
        Assert.InRange(made.Estimate.Minutes, 1, MadeCoupon.MostMinutes);
        Assert.InRange(made.Estimate.Grams, 0.5, MadeCoupon.MostGrams);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Every_figure_stands_on_its_face_as_drawn_to_a_hundredth(string kind, string printer)
    {
        MadeCoupon made = Samples.Make(kind, Samples.Wish(printer));
        double scale = made.Coupon.WrittenScale;
        int met = 0;
        foreach (MadePiece piece in made.Pieces)
        {
            Mesh mesh = Samples.Written(piece);
            foreach (IGrouping<(double FromZ, double ToZ), CouponMark> face in piece.Piece.Marks.GroupBy(mark => (mark.FromZ, mark.ToZ)))
            {
                (double from, double to) = face.Key;
                Region[] letters = [Slicing.At(mesh, from + Hundredth), Slicing.At(mesh, to - Hundredth)];
                Region over = Slicing.At(mesh, to + Hundredth);
                Region under = Slicing.At(mesh, from - Hundredth);
                foreach (CouponMark mark in face)
                {
                    Region drawn = Scaled(mark.Strokes, scale);
                    Region around = drawn.Offset(0.3);
                    foreach (Region section in letters.Select(section => section.Intersect(around)))
                    {
                        Assert.True(section.Less(drawn.Offset(Hundredth)).IsEmpty, $"{mark.Text} is wider than drawn");
                        Assert.True(drawn.Offset(-Hundredth).Less(section).IsEmpty, $"{mark.Text} lacks a stroke");
                    }

                    Assert.True(over.Intersect(around).IsEmpty, $"{mark.Text} is higher than {to:0.00}");
                    Assert.True(under.Intersect(around).Area > 0.999 * around.Area, $"{mark.Text} hangs over an edge");
                    met++;
                }
            }
        }

        // Fewer than three steps are no scale.
        Assert.True(met >= Math.Max(3, made.Pieces.Sum(piece => piece.Piece.Steps.Length)), "a step has no figure");
    }

    [Theory]
    [MemberData(nameof(All))]
    public void No_two_figures_say_the_same_and_each_step_has_one(string kind, string printer)
    {
        MadeCoupon made = Samples.Make(kind, Samples.Wish(printer));
        CouponPiece piece = made.Pieces[0].Piece;
        Assert.Equal(piece.Marks.Length, piece.Marks.Select(mark => mark.Text).Distinct().Count());
        foreach (CouponStep step in piece.Steps)
        {
            CouponMark own = Assert.Single(piece.Marks, mark => mark.Text == step.Mark);
            double reach = Point2.Distance(own.Strokes.Bounds.Centre, step.At);
            Assert.All(piece.Steps.Where(other => other != step), other =>
                Assert.True(reach < Point2.Distance(own.Strokes.Bounds.Centre, other.At), $"{step.Mark} stands nearer to {other.Mark}"));
        }
    }

    public static IEnumerable<object[]> Kinds() => CouponKinds.All.Select(kind => new object[] { kind.Name });

    [SkippableTheory]
    [MemberData(nameof(Kinds))]
    public void A_slicer_draws_every_figure(string kind)
    {
        Skip.If(Slicer.Executable is null, "no slicer is installed: prusa-slicer");
        MadeCoupon made = Samples.Make(kind);
        foreach (MadePiece piece in made.Pieces.Where(piece => piece.Piece.Marks.Length > 0))
        {
            CouponWish wish = made.Coupon.Wish;
            IReadOnlyList<SlicedLine> lines = Slicer.Lines(piece.Mesh, wish.Printer, wish.Filament.Density, TimeSpan.FromMinutes(2));
            foreach (CouponMark mark in piece.Piece.Marks)
            {
                // Each stroke of each figure, in its middle layer.
                double z = mark.FromZ + (2 * wish.Printer.LayerHeight);
                SlicedLine[] layer = [.. lines.Where(line => Math.Abs(line.Z - z) < 0.01)];
                foreach (Region glyph in Scaled(mark.Strokes, made.Coupon.WrittenScale).Parts)
                {
                    double laid = layer.Sum(line => LengthIn(line, glyph)) * wish.Printer.LineWidth;

                    // A dot is one turn of the nozzle: its line overlaps itself.
                    Assert.True(laid > (glyph.Area < 1 ? 0.4 : 0.6) * glyph.Area,
                        $"{kind}: a figure of {mark.Text} is lost: {laid:0.00} of {glyph.Area:0.00} mm2");
                }
            }
        }
    }

    private static double LengthIn(SlicedLine line, Region region)
    {
        double length = Point2.Distance(line.From, line.To);
        Box2 bounds = region.Bounds;
        if (Math.Max(line.From.X, line.To.X) < bounds.Min.X || Math.Min(line.From.X, line.To.X) > bounds.Max.X
            || Math.Max(line.From.Y, line.To.Y) < bounds.Min.Y || Math.Min(line.From.Y, line.To.Y) > bounds.Max.Y)
        {
            return 0;
        }

        int pieces = Math.Max(1, (int)Math.Ceiling(length / 0.05));
        return length * Enumerable.Range(0, pieces).Count(i => region.Contains(line.From + (((i + 0.5) / pieces) * (line.To - line.From))))
            / pieces;
    }

    private static Region Scaled(Region region, double scale) => Region.Union(region.Parts.Select(part => Region.Polygon(
        [.. part.Loops[0].Select(p => scale * p)],
        [.. part.Loops.Skip(1).Select(hole => (IReadOnlyList<Point2>)[.. hole.Select(p => scale * p)])])));
}
