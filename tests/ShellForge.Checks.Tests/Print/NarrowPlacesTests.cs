using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Checks.Tests.Print;

public class NarrowPlacesTests
{
    private const double Two = 0.86;

    // Plates with thin walls, slots, pins and holes at odd places and turns.
    private static Gen<Region> Sections =>
        from parts in (
            from x in Gen.Choose(-80, 80)
            from y in Gen.Choose(-80, 80)
            from length in Gen.Choose(2, 90)
            from width in Gen.Elements(0.2, 0.39, 0.44, 0.6, 0.9, 1.5, 6.0)
            from turn in Gen.Elements(0.0, 17, 45, 90, 123)
            from kind in Gen.Choose(0, 3)
            select (Add: kind != 1, Shape: Shape(x / 5.0, y / 5.0, length / 5.0, width, turn, kind))).ListOf(6)
        select parts.Aggregate(
            Region.Rectangle(new Point2(-8, -8), new Point2(8, 8)), (all, part) => part.Add ? all.And(part.Shape) : all.Less(part.Shape));

    // The replayed run has a section whose grown core crosses itself by rounding, once a crash.
    [Property(MaxTest = 60, Replay = "(15661623796836684100,13569004017555474613)")]
    public Property Looking_only_at_narrow_places_finds_what_looking_everywhere_finds() =>
        Prop.ForAll(Sections.ToArbitrary(), section =>
        {
            var places = NarrowPlaces.Of(section, Two);
            AssertSame(ThinFeatures.Narrower(section, 0.43), [.. ThinFeatures.Narrower(section, 0.43, places)]);
            AssertSame(ThinFeatures.Narrower(section, 0.84), [.. ThinFeatures.Narrower(section, 0.84, places)]);
            AssertSame(ThinFeatures.Gaps(section, 0.22), [.. ThinFeatures.Gaps(section, 0.22, places)]);
        });

    [Theory]
    [InlineData(8)]
    [InlineData(14)]
    [InlineData(19)]
    public void A_long_wedge_is_a_narrow_place(double degrees)
    {
        Region wedge = Region.Polygon([Point2.Origin, new Point2(20, 0), Point2.Polar(20, Angle.FromDegrees(degrees))]);
        AssertSame(ThinFeatures.Narrower(wedge, 0.84), [.. ThinFeatures.Narrower(wedge, 0.84, NarrowPlaces.Of(wedge, Two))]);
        Assert.NotEmpty(NarrowPlaces.Of(wedge, Two));
    }

    [Fact]
    public void A_plain_section_has_no_narrow_place()
    {
        Ring outer = Ring.Hole(40);
        Assert.Empty(NarrowPlaces.Of(Region.Annulus(outer, outer.Coaxial(38.3, RingSide.Outside)), Two));
        Assert.Empty(NarrowPlaces.Of(Region.RoundedRectangle(Point2.Origin, 60, 20, 0.4), Two));
    }

    // Every feature that one look finds the other finds too, in the same place up to what a cut moves its middle. What is shorter than
    // a rule tells comes from sharp corners, which are no narrow places.
    private static void AssertSame(IReadOnlyList<FineFeature> everywhere, IReadOnlyList<FineFeature> narrow)
    {
        everywhere = [.. everywhere.Where(feature => feature.Length >= 2)];
        narrow = [.. narrow.Where(feature => feature.Length >= 2)];
        string told = $"everywhere:\n{string.Join('\n', everywhere)}\nnarrow places:\n{string.Join('\n', narrow)}";
        Assert.True(everywhere.All(a => narrow.Any(b => AreOne(a, b))), told);
        Assert.True(narrow.All(b => everywhere.Any(a => AreOne(a, b))), told);
    }

    private static bool AreOne(FineFeature a, FineFeature b) =>
        Point2.Distance(a.At, b.At) < 0.3 || (Math.Abs(a.Width - b.Width) < 0.05 && Point2.Distance(a.At, b.At) < a.Length);

    private static Region Shape(double x, double y, double length, double width, double turn, int kind) => (kind switch
    {
        2 => Region.Disc(Point2.Origin, Ring.Hole(width / 2)),
        _ => Region.Rectangle(new Point2(0, -width / 2), new Point2(length, width / 2)),
    }).Turned(Angle.FromDegrees(turn)).Moved(new Point2(x, y));
}
