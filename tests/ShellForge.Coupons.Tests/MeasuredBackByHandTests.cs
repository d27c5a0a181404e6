using ShellForge.Board.Profiles;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;

namespace ShellForge.Coupons.Tests;

/// <summary>Steps of fits by hand and of what is looked at, measured back from the files: within a hundredth of their figures.</summary>
public sealed class MeasuredBackByHandTests
{
    private const double Hundredth = 0.01;

    public static TheoryData<string> Printers() => new() { "fdm-0.4", "fdm-0.6", "fdm-0.4-fine" };

    [Theory]
    [MemberData(nameof(Printers))]
    public void Magnet_pockets_are_wider_than_the_magnet_by_their_figures(string printer)
    {
        MadeCoupon made = Samples.Make("magnet-pockets", Samples.Wish(printer));
        double scale = made.Coupon.WrittenScale;
        Region section = Top(made, 0, 0.5);
        foreach (CouponStep step in made.Pieces[0].Piece.Steps)
        {
            Assert.False(section.Contains(scale * step.At));
            double pocket = 2 * section.DistanceToOutline(scale * step.At) / scale;
            Assert.InRange(pocket - 8, step.Value - 0.001, step.Value + Hundredth);
        }
    }

    [Theory]
    [MemberData(nameof(Printers))]
    public void Walls_for_a_cell_stand_apart_by_fourteen_and_their_figures(string printer)
    {
        MadeCoupon made = Samples.Make("battery-bays", Samples.Wish(printer));
        double scale = made.Coupon.WrittenScale;
        Region section = Top(made, 0, 2);
        foreach (CouponStep step in made.Pieces[0].Piece.Steps)
        {
            Assert.Equal(14 + step.Value, Free(section, scale * step.At, alongX: true) / scale, Hundredth);
        }
    }

    [Theory]
    [MemberData(nameof(Printers))]
    public void Seats_and_tile_differ_by_the_gap_of_their_figures(string printer) => SeatsAndTileDiffer(Samples.Wish(printer));

    [Theory]
    [MemberData(nameof(Printers))]
    public void Farther_seats_and_tile_differ_by_the_gap_of_their_figures(string printer) =>
        SeatsAndTileDiffer(Samples.Wish(printer) with { Around = 0.875 });

    private static void SeatsAndTileDiffer(CouponWish wish)
    {
        MadeCoupon made = Samples.Make("inlay-fit", wish);
        double scale = made.Coupon.WrittenScale;
        Region seats = Top(made, 0, 0.5);
        Box2 tile = Top(made, 1, 0.5).Bounds;
        foreach (CouponStep step in made.Pieces[0].Piece.Steps)
        {
            Point2 at = scale * step.At;
            Assert.Equal(step.Value, (Free(seats, at, alongX: true) - (tile.Max.X - tile.Min.X)) / 2 / scale, Hundredth);
            Assert.Equal(step.Value, (Free(seats, at, alongX: false) - (tile.Max.Y - tile.Min.Y)) / 2 / scale, Hundredth);
        }
    }

    [Theory]
    [MemberData(nameof(Printers))]
    public void Tunnels_are_higher_than_the_bar_by_their_figures_and_end_on_layers(string printer) =>
        TunnelsAreHigher(Samples.Wish(printer));

    [Theory]
    [MemberData(nameof(Printers))]
    public void Farther_tunnels_are_higher_than_the_bar_by_their_figures_and_end_on_layers(string printer) =>
        TunnelsAreHigher(Samples.Wish(printer) with { Around = 1.1 });

    private static void TunnelsAreHigher(CouponWish wish)
    {
        MadeCoupon made = Samples.Make("layer-fit", wish);
        double scale = made.Coupon.WrittenScale;
        Mesh tunnels = Samples.Written(made.Pieces[0]);
        Box3 bar = Measure.Bounds(Samples.Written(made.Pieces[1]));
        double layer = made.Coupon.Wish.Printer.LayerHeight;
        Assert.True(made.Pieces[0].Piece.Steps[^1].Value >= 0.6 - Hundredth);
        foreach (CouponStep step in made.Pieces[0].Piece.Steps)
        {
            Point2 at = scale * step.At;
            double floor = Face(tunnels, at, 0.2, 1.5);
            double roof = Face(tunnels, at, floor + bar.Max.Z, floor + bar.Max.Z + step.Value + 0.5);
            Assert.Equal(step.Value, roof - floor - (bar.Max.Z - bar.Min.Z), Hundredth);
            Assert.Equal(0, Math.IEEERemainder(step.Value, layer), Hundredth);
        }
    }

    [Theory]
    [MemberData(nameof(Printers))]
    public void Thin_walls_have_the_thickness_of_their_figures_from_half_a_line_on(string printer)
    {
        MadeCoupon made = Samples.Make("thin-walls", Samples.Wish(printer));
        double scale = made.Coupon.WrittenScale;
        Region walls = Top(made, 0, 0.5);
        double line = made.Coupon.Wish.Printer.LineWidth;
        Assert.InRange(made.Pieces[0].Piece.Steps[0].Value, 0.4 * line, 0.6 * line);
        Assert.Contains(made.Pieces[0].Piece.Steps, step => step.Value > 1.2 * line && step.Mark != "L4");
        foreach (CouponStep step in made.Pieces[0].Piece.Steps)
        {
            Assert.True(walls.Contains(scale * step.At), step.Mark);
            Assert.Equal(step.Value, 2 * walls.DistanceToOutline(scale * step.At) / scale, Hundredth);
        }
    }

    [Theory]
    [MemberData(nameof(Printers))]
    public void Decks_span_what_their_figures_say_with_nothing_below(string printer)
    {
        MadeCoupon made = Samples.Make("bridges", Samples.Wish(printer));
        double scale = made.Coupon.WrittenScale;
        Mesh mesh = Samples.Written(made.Pieces[0]);
        double top = Measure.Bounds(mesh).Max.Z;
        foreach (CouponStep step in made.Pieces[0].Piece.Steps)
        {
            Point2 at = scale * step.At;
            Assert.True(Slicing.At(mesh, top - 0.1).Contains(at), step.Mark);
            foreach (double z in new[] { 0.8, 1.6, 2.4 })
            {
                Assert.Equal(step.Value, Free(Slicing.At(mesh, z), at, alongX: true) / scale, Hundredth);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Printers))]
    public void Walls_lean_by_the_degrees_of_their_figures(string printer)
    {
        MadeCoupon made = Samples.Make("overhangs", Samples.Wish(printer));
        double scale = made.Coupon.WrittenScale;
        Mesh mesh = Samples.Written(made.Pieces[0]);
        Region low = Slicing.At(mesh, 1.3);
        Region high = Slicing.At(mesh, 2.3);
        foreach (CouponStep step in made.Pieces[0].Piece.Steps)
        {
            double lean = Math.Tan(step.Value * Math.PI / 180);
            Point2 Middle(double z) => scale * (step.At + new Point2(0, lean * (z - made.Coupon.Wish.Basis.Up(0.6))));
            double Front(Region section, Point2 at) => Filled(section, at).Low;
            double shift = (Front(high, Middle(2.3)) - Front(low, Middle(1.3))) / scale;
            Assert.Equal(lean, shift, Hundredth);
        }
    }

    public static IEnumerable<object[]> Connectors() => ShellForge.Testing.WrittenBoard.Shipped.Packages.Names
        .Where(name => ShellForge.Testing.WrittenBoard.Shipped.Packages.Find(name)!.Mouth is not null)
        .Select(name => new object[] { name });

    [Theory]
    [MemberData(nameof(Connectors))]
    public void Openings_for_every_connector_are_larger_than_its_own_by_their_figures(string connector)
    {
        PackageProfile package = ShellForge.Testing.WrittenBoard.Shipped.Packages.Find(connector)!;
        MadeCoupon made = Samples.Make("plug-openings", Samples.Wish() with { Plug = package });
        Assert.InRange(made.Estimate.Minutes, 1, MadeCoupon.MostMinutes);
        Assert.InRange(made.Estimate.Grams, 0.5, MadeCoupon.MostGrams);
        double scale = made.Coupon.WrittenScale;
        double layer = made.Coupon.Wish.Printer.LayerHeight;
        Mesh mesh = Samples.Written(made.Pieces[0]);
        foreach (CouponStep step in made.Pieces[0].Piece.Steps)
        {
            Point2 at = scale * step.At;
            double bottom = Face(mesh, at, 1, 3);
            double roof = Face(mesh, at, bottom + (package.Mouth!.RecessHeight / 2), Measure.Bounds(mesh).Max.Z - 0.1);
            Assert.InRange(roof - bottom, package.Mouth.RecessHeight + step.Value - Hundredth,
                package.Mouth.RecessHeight + step.Value + layer + Hundredth);
            Region section = Slicing.At(mesh, (bottom + roof) / 2);
            Assert.Equal(package.Mouth.RecessWidth + step.Value, Free(section, at, alongX: true) / scale, Hundredth);
        }
    }

    [Theory]
    [InlineData("petg-black")]
    [InlineData("pla-black")]
    public void Bead_and_rings_overlap_by_their_figures_and_strain_no_more_than_the_filament_bears(string filament)
    {
        MadeCoupon made = Samples.Make("snap-rings", Samples.Wish(filament: filament));
        double scale = made.Coupon.WrittenScale;
        Mesh lid = Samples.Written(made.Pieces[1]);
        Region rings = Top(made, 0, 0.5);
        double bead = Enumerable.Range(10, 40).Max(i =>
        {
            Region section = Slicing.At(lid, i * 0.07);
            return i * 0.07 < 1.3 ? 0 : section.IsEmpty ? 0 : section.Bounds.Max.X;
        });
        foreach (CouponStep step in made.Pieces[0].Piece.Steps)
        {
            double overlap = bead - rings.DistanceToOutline(scale * step.At);
            Assert.Equal(step.Value, overlap / scale, Hundredth);
            Assert.True(step.Value / 14 < made.Coupon.Wish.Filament.StrainAlongLayers);
        }
    }

    private static Region Top(MadeCoupon made, int piece, double below)
    {
        Mesh mesh = Samples.Written(made.Pieces[piece]);
        return Slicing.At(mesh, Measure.Bounds(mesh).Max.Z - below);
    }

    // What lies free through a point between the plastic on either side of it.
    private static double Free(Region section, Point2 at, bool alongX)
    {
        Assert.False(section.Contains(at), "there is plastic");
        (double, double)[] spans = Spans(section, at, alongX);
        double here = alongX ? at.X : at.Y;
        return spans.Where(span => span.Item1 > here).Min(span => span.Item1)
            - spans.Where(span => span.Item2 < here).Max(span => span.Item2);
    }

    // Where the plastic round a point begins and ends along y.
    private static (double Low, double High) Filled(Region section, Point2 at)
    {
        Assert.True(section.Contains(at), "there is no plastic");
        return Spans(section, at, alongX: false).Single(span => span.Item1 < at.Y && span.Item2 > at.Y);
    }

    private static (double Low, double High)[] Spans(Region section, Point2 at, bool alongX)
    {
        var along = alongX ? new Point2(100, 0.002) : new Point2(0.002, 100);
        return [.. section.Intersect(Region.Rectangle(at - along, at + along)).Parts.Select(part => alongX
            ? (part.Bounds.Min.X, part.Bounds.Max.X) : (part.Bounds.Min.Y, part.Bounds.Max.Y))];
    }

    // The height at which plastic begins or ends over a point: a plumb line through the triangles of the file.
    private static double Face(Mesh mesh, Point2 at, double from, double to)
    {
        // Off the grid that edges of triangles lie on.
        Point2 line = at + new Point2(0.00137, 0.00071);
        double[] met =
        [
            .. Enumerable.Range(0, mesh.TriangleCount)
                .Select(i => Plumb(Corner(mesh, 3 * i), Corner(mesh, (3 * i) + 1), Corner(mesh, (3 * i) + 2), line))
                .OfType<double>().Where(z => z > from && z < to),
        ];
        return Assert.Single(met);
    }

    private static Point3 Corner(Mesh mesh, int number) => mesh.Vertices[mesh.Triangles[number]].ToMillimetres();

    // z of a triangle over a point; null beside it, or where it stands upright.
    private static double? Plumb(Point3 a, Point3 b, Point3 c, Point2 at)
    {
        double Side(Point3 p, Point3 q) => ((q.X - p.X) * (at.Y - p.Y)) - ((q.Y - p.Y) * (at.X - p.X));
        (double ab, double bc, double ca) = (Side(a, b), Side(b, c), Side(c, a));
        double whole = ab + bc + ca;
        return whole == 0 || ab * whole < 0 || bc * whole < 0 || ca * whole < 0 ? null
            : ((bc * a.Z) + (ca * b.Z) + (ab * c.Z)) / whole;
    }
}
