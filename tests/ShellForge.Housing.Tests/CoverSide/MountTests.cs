using ShellForge.Geometry.Auditing;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing.Tests.CoverSide;

/// <summary>Mounts as they are built.</summary>
public class MountTests
{
    // Of filaments with the same density, grams compare as volumes.
    private const double Third = 1.0 / 3;

    private static string Disc(int diameter) => $$"""
        format: shellforge/1
        name: Disc
        up: 90
        board:
          outline: {disc: {{diameter}}}
          thickness: 1.6
          holes:
            - {circle: {{diameter - 10}}, count: 4, from: 45, diameter: 2.2}
          pixels: {package: "2020", circle: {{diameter / 2}}, count: 12, from: 90, direction: cw}
        housing:
          insert: m2x3-od3.6
          cable: none
          mount: stand
        power: {supply: usb-default, brightness: 0.2, capped: true}
        print: {printer: fdm-0.4, shell: petg-black, diffuser: petg-white}
        """;

    private static Dictionary<string, double> Volumes(BuiltHousing housing) =>
        housing.Parts.Keys.ToDictionary(name => name, name => Measure.Volume(housing.Assembled(name)));

    [Fact]
    public void A_stand_weighs_less_than_a_third_of_its_lamp_and_holds_it_without_meeting_it()
    {
        BuiltHousing lamp = BuiltHousing.Sample("tide-lamp", "housing.mount=stand");
        AssertLight(lamp);
        foreach (string part in new[] { PartNames.Tub, PartNames.Cover })
        {
            Assert.Equal(0, lamp.Shared(PartNames.Stand, part), 3);
        }
    }

    [Fact]
    public void Stands_of_discs_and_rings_of_any_size_weigh_less_than_a_third_of_their_lamp()
    {
        var dice = new Random(45160);
        int[] sizes = [40, 45, 60, 100, 130, 160, .. Enumerable.Range(0, 6).Select(_ => 42 + dice.Next(150))];
        foreach (int diameter in sizes)
        {
            // The lightest lamp of a size: the narrowest ring that its parts leave, two lines of wall, a thin floor.
            AssertLight(BuiltHousing.Of("disc.yaml", Disc(diameter)));
            if (diameter >= 60)
            {
                string ring = Disc(diameter).Replace($"{{disc: {diameter}}}", $"{{ring: {{outer: {diameter}, bore: {diameter - 28}}}}}",
                        StringComparison.Ordinal)
                    .Replace($"circle: {diameter / 2}", $"circle: {diameter - 18}", StringComparison.Ordinal)
                    .Replace("count: 12", $"count: {diameter / 2}", StringComparison.Ordinal);
                AssertLight(BuiltHousing.Of("ring.yaml", ring, "housing.walls=2", "housing.floor=1.2"));
            }
        }
    }

    [Fact]
    public void A_lamp_falls_into_its_stand_when_the_stand_is_moved_into_it()
    {
        BuiltHousing lamp = BuiltHousing.Sample("tide-lamp", "housing.mount=stand");
        Solid lifted = lamp.Solid(PartNames.Stand).AsOperand().Moved(Transform3.Shift(0, 2, 0));
        Assert.True(BuiltHousing.Shared(lifted, lamp.Solid(PartNames.Tub).AsOperand()) > 0.5);
    }

    [Theory]
    [InlineData("keyhole", 7)]
    [InlineData("keyhole", 6.8)]
    [InlineData("keyhole", 20)]
    [InlineData("tripod", 20)]
    [InlineData("tripod", 15)]
    [InlineData("magnets", 12)]
    [InlineData("magnets", 3.8)]
    [InlineData("keyhole", 2)]
    public void Mounts_stand_in_floors_of_any_thickness(string mount, double floor)
    {
        BuiltHousing dial = BuiltHousing.Sample(
            "dome-dial", $"housing.mount={mount}", FormattableString.Invariant($"housing.floor={floor}"));
        Assert.NotNull(dial.Plan.Mount);
        Assert.Equal(1, Measure.Shells(dial.Assembled(PartNames.Tub)));
    }

    [Theory]
    [InlineData(90)]
    [InlineData(37)]
    public void A_keyhole_has_no_teeth_where_its_entry_meets_the_undercut(int up)
    {
        BuiltHousing dial = BuiltHousing.Sample("dome-dial", FormattableString.Invariant($"up={up}"));
        var mount = Assert.IsType<KeyholeMountPlan>(dial.Plan.Mount);
        Mesh tub = dial.Assembled(PartNames.Tub);
        double shoulder = mount.UndercutTop - mount.RoofChamfer;

        double ledges = 0;
        for (int t = 0; t < tub.TriangleCount; t++)
        {
            Point3[] corners = [.. Enumerable.Range(3 * t, 3).Select(i => tub.Vertices[tub.Triangles[i]].ToMillimetres())];
            if (corners.All(p => Math.Abs(p.Z - shoulder) < 1e-3
                && mount.Keyholes.Any(k => Point2.Distance(p.XY, k.Entry) < mount.EntryDiameter)))
            {
                ledges += Point3.Cross(corners[1] - corners[0], corners[2] - corners[0]).Length / 2;
            }
        }

        Assert.InRange(ledges, 0, 1e-4);
    }

    private static void AssertLight(BuiltHousing lamp)
    {
        Assert.IsType<StandMountPlan>(lamp.Plan.Mount);
        Dictionary<string, double> volumes = Volumes(lamp);
        double rest = volumes.Where(part => part.Key != PartNames.Stand).Sum(part => part.Value);
        Assert.True(volumes[PartNames.Stand] < Third * rest,
            $"{lamp.Plan.Source.Board.Outline}: a stand of {volumes[PartNames.Stand] / rest:0.00} of its lamp");
        Assert.True(MeshAudit.Run(lamp.InPrint(PartNames.Stand)).IsClean);
        Assert.Equal(1, Measure.Shells(lamp.Assembled(PartNames.Stand)));
        Assert.Equal(0, Measure.Bounds(lamp.InPrint(PartNames.Stand)).Min.Z, 3);
    }
}
