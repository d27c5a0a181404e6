using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Checks.Tests.Print;

public class ScanLinesTests
{
    private const double Step = 0.1;

    // Discs, slots and rectangles with holes, some with a side or a corner right on a line.
    private static Gen<Region> Shapes =>
        from parts in (
            from x in Gen.Choose(-60, 60)
            from y in Gen.Choose(-60, 60)
            from width in Gen.Choose(3, 60)
            from height in Gen.Choose(3, 60)
            from kind in Gen.Choose(0, 2)
            from takes in Gen.Elements(false, false, true)
            select (takes, Shape: Shape(new Point2(x * 0.25, y * 0.25), width * 0.25, height * 0.25, kind))).ListOf(5)
        select parts.Aggregate(Region.Empty, (all, part) => part.takes ? all.Less(part.Shape) : all.And(part.Shape));

    [Property(MaxTest = 100)]
    public Property What_lines_share_is_what_overlaid_regions_share() =>
        Prop.ForAll(Shapes.ToArbitrary(), Shapes.ToArbitrary(), (a, b) =>
        {
            double shared = ScanLines.Of(a, Step).Shared(ScanLines.Of(b, Step)).Area;
            Region exact = a.Intersect(b);
            Assert.Equal(exact.Area, shared, 1e-6 + (0.02 * Step * exact.Perimeter) + Error(exact));
        });

    [Property(MaxTest = 100)]
    public Property Lines_hold_the_area_of_their_region() =>
        Prop.ForAll(Shapes.ToArbitrary(), region =>
            Assert.Equal(region.Area, ScanLines.Of(region, Step).Area, 1e-6 + (0.02 * Step * region.Perimeter) + Error(region)));

    [Fact]
    public void Regions_apart_share_nothing()
    {
        ScanLines low = ScanLines.Of(Region.Rectangle(new Point2(0, 0), new Point2(5, 5)), Step);
        ScanLines high = ScanLines.Of(Region.Rectangle(new Point2(0, 7), new Point2(5, 9)), Step);
        Assert.Equal(0, low.Shared(high).Area);
        Assert.Equal(0, low.Shared(ScanLines.Of(Region.Empty, Step)).Area);
    }

    // A level side between two lines counts by up to half a step of its length.
    private static double Error(Region region) => region.Loops.Sum(loop => loop.Select((from, i) => (from, To: loop[(i + 1) % loop.Length]))
        .Where(side => Math.Abs(side.To.Y - side.from.Y) < Step).Sum(side => Math.Abs(side.To.X - side.from.X) * Step / 2));

    private static Region Shape(Point2 at, double width, double height, int kind) => kind switch
    {
        0 => Region.Rectangle(at, at + new Point2(width, height)),
        1 => Region.Slot(at, at + new Point2(width, height), Math.Min(width, height)),
        _ => Region.RoundedRectangle(at, width, height, Math.Min(width, height) / 3),
    };
}
