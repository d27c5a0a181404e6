using System.Globalization;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Testing;

namespace ShellForge.Geometry.Tests.Booleans;

/// <summary>A clean mesh may still be of another solid: what it encloses is compared with the areas of its layers.</summary>
public sealed class EnclosedVolumeTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(6)]
    public void A_solid_that_hardly_settles_is_given_out_whole_or_not_at_all(int cuts)
    {
        Prism[] prisms = Read("corners-a-step-apart.txt");
        Prism[] walls = [.. prisms.Where(prism => prism.Of == "walls")];
        Prism[] notches = [.. prisms.Where(prism => prism.Of == "notch").TakeLast(cuts)];
        Region wall = walls.Skip(1).Aggregate(walls[0].Outline, (left, hole) => left.Less(hole.Outline));
        Solid solid = notches.Aggregate(
            Shapes.Extrude(wall, walls[0].From, walls[0].To),
            (left, notch) => left.Less(Shapes.Extrude(notch.Outline, notch.From, notch.To)));

        SolidOutcome outcome = SolidEvaluator.Evaluate(solid);

        double[] heights = [.. notches.Select(notch => notch.To).Append(walls[0].From).Append(walls[0].To).Distinct().Order()];
        double expected = heights.Zip(heights.Skip(1)).Sum(layer => (layer.Second - layer.First)
            * wall.Less(Region.Union(notches.Where(notch => notch.To > layer.First).Select(notch => notch.Outline))).Area);
        Assert.True(
            outcome.Solid is null || Math.Abs(Measure.Volume(outcome.Solid.Mesh) - expected) < 0.1,
            $"{(outcome.Solid is null ? 0 : Measure.Volume(outcome.Solid.Mesh)):0.000} mm3 instead of {expected:0.000}");
        Assert.True(outcome.Solid is not null || outcome.Defect is not null);
    }

    private static Prism[] Read(string name) =>
    [
        .. File.ReadLines(Repository.At("tests", "corpus", "prisms", name)).Where(line => line[0] != '#').Select(line =>
        {
            string[] words = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            return new Prism(words[0], Millimetres(words[1]), Millimetres(words[2]), Region.Polygon(
                [.. words.Skip(3).Select(word => word.Split(',')).Select(xy => new Point2(Millimetres(xy[0]), Millimetres(xy[1])))]));
        }),
    ];

    private static double Millimetres(string steps) => int.Parse(steps, CultureInfo.InvariantCulture) * Lattice.Step;

    private sealed record Prism(string Of, double From, double To, Region Outline);
}
