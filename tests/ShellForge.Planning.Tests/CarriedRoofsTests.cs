using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;
using ShellForge.Testing;

namespace ShellForge.Planning.Tests;

public sealed class CarriedRoofsTests
{
    // A roof over a lead of 50 mm, in a tall baffle: dozens of layers.
    private static BafflePlan Sloped() => HousingPlanner.Plan(new WrittenBoard
    {
        Wires = ["{name: lead, at: [-6, -13], side: top, conductors: 4, diameter: 12}"],
        Closure = "screws",
        Light = "{through: front, look: pixels}",
        Diffuser = "{thickness: 0.8, distance: 18}",
    }.Read()).Baffle!;

    [Fact]
    public void The_layers_of_a_slope_lie_on_one_another()
    {
        BaffleNotch[] layers = [.. Sloped().Notches.Where(notch => notch.From is not null).OrderBy(notch => notch.Top)];
        Assert.True(layers.Length > 20, $"{layers.Length} layers");
        Assert.All(layers.Zip(layers.Skip(1)), pair => Assert.InRange(pair.Second.From!.Value, pair.First.Top - 0.1, pair.First.Top));
    }

    // When all layers began at the feet, every one crossed every other: minutes for one baffle.
    [Fact]
    public void No_layer_of_a_slope_meets_more_rooms_than_its_neighbours()
    {
        BaffleNotch[] notches = [.. Sloped().Notches];
        Assert.All(notches.Where(notch => notch.From is not null), layer => Assert.InRange(
            notches.Count(other => other != layer && Bounds(other).Touches(Bounds(layer)) && other.From is not null), 0, 2));

        static Box3 Bounds(BaffleNotch notch) => new(
            new Point3(notch.Outline.Bounds.Min.X, notch.Outline.Bounds.Min.Y, notch.From ?? 0),
            new Point3(notch.Outline.Bounds.Max.X, notch.Outline.Bounds.Max.Y, notch.Top));
    }
}
