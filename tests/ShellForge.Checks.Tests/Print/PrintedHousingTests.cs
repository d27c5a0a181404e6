using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Checks.Print;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Checks.Tests.Print;

/// <summary>Print rules on whole housings as they are built.</summary>
public class PrintedHousingTests
{
    [Theory]
    [InlineData(0.0)]
    [InlineData(-1.0)]
    public void The_roof_of_a_port_in_a_curved_wall_carries_itself(double pastEdge)
    {
        HousingUnderCheck housing = BuiltHousings.Of(new WrittenBoard
        {
            Outline = "{disc: 60}",
            Holes = ["{circle: 52, count: 4, from: 45, diameter: 2.2}"],
            Pixels = "{package: \"2020\", circle: 34, count: 12, from: 90, direction: cw}",
            Parts = [FormattableString.Invariant(
                $"{{ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: {pastEdge}}}")],
            Insert = "m2x3-od3.6",
            Cable = "{part: J1}",
        }.Read());
        Assert.NotEqual(PortKind.SlotWithTongue, Assert.Single(housing.Plan.Ports).Kind);
        Assert.DoesNotContain(new NothingBelow().Check(housing), finding => finding.Subject == "tub");
    }

    [Theory]
    [InlineData("tide-lamp")]
    [InlineData("dome-dial")]
    public void Two_filaments_in_one_layer_are_told_at_a_place_in_the_plastic(string sample)
    {
        HousingUnderCheck housing = BuiltHousings.Of(WrittenBoard.Sample(sample));

        Finding found = Assert.Single(new FilamentsInOneLayer().Check(housing));

        Mesh part = housing.Part(found.Subject)!.AssembledMesh;
        // Beside the axes, on which edges of triangles lie.
        Assert.Equal(1, Above(part, found.At!.Value + new Point3(0.013, 0.007, 0)) % 2);
    }

    // Triangles straight above a point: an odd number from inside.
    private static int Above(Mesh mesh, Point3 at)
    {
        int count = 0;
        for (int i = 0; i < mesh.TriangleCount; i++)
        {
            Point3[] corners = [.. mesh.Triangles.Slice(3 * i, 3).Select(vertex => mesh.Vertices[vertex].ToMillimetres())];
            double[] weights = [.. Enumerable.Range(0, 3).Select(c =>
                Point2.Cross(corners[(c + 2) % 3].XY - corners[(c + 1) % 3].XY, at.XY - corners[(c + 1) % 3].XY))];
            bool over = weights.All(weight => weight > 0) || weights.All(weight => weight < 0);
            count += over && corners.Zip(weights, (corner, weight) => corner.Z * weight).Sum() / weights.Sum() > at.Z ? 1 : 0;
        }

        return count;
    }
}
