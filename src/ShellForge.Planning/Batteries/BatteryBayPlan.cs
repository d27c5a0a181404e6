using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Outlines;

namespace ShellForge.Planning.Batteries;

/// <summary>A battery's bay in its place on the tub's floor.</summary>
public sealed record BatteryBayPlan
{
    /// <summary>Its section.</summary>
    public required BatteryBaySize Size { get; init; }

    /// <summary>Its middle.</summary>
    public required Point2 At { get; init; }

    /// <summary>Direction of the battery's length, towards the end at which its wires leave.</summary>
    public required Angle Along { get; init; }

    /// <summary>z of the floor's inner face.</summary>
    public required double FloorTop { get; init; }

    /// <summary>z of the battery's underside.</summary>
    public required double Seat { get; init; }

    /// <summary>z of the walls' rim.</summary>
    public required double Rim { get; init; }

    /// <summary>z of the battery's top at its largest.</summary>
    public double Top => Seat + Size.Swollen;

    /// <summary>z up to which strap and air over it reach.</summary>
    public double StrapTop => FloorTop + Size.Depth;

    /// <summary>Its middle at the height of the battery's axis.</summary>
    public Point3 Middle => new(At.X, At.Y, (Seat + Top) / 2);

    /// <summary>The block in plan.</summary>
    public Region Outline => OutlineAt(Size, At, Along);

    /// <summary>What nothing else may stand in: the block and the strap's way beside it.</summary>
    public Region Taken => TakenAt(Size, At, Along);

    /// <summary>Middles of the cells or pouches.</summary>
    public ImmutableArray<Point2> Middles =>
        [.. Enumerable.Range(0, Size.Battery.Count).Select(i => Point(0, AcrossOf(i)))];

    /// <summary>Outlines of the cells or pouches in plan.</summary>
    public ImmutableArray<Region> Bodies =>
        [.. Middles.Select(middle => PartEnvelope.Rectangle(middle, Size.Battery.Length, Size.Battery.Width, Along))];

    /// <summary>Where the wires leave, in plan.</summary>
    public Point2 WireEnd => Point(Size.OuterLength / 2, 0);

    /// <summary>Distance of a cell's or pouch's axis from the bay's, to the left of <see cref="Along"/>, mm.</summary>
    public double AcrossOf(int number) => (number - ((Size.Battery.Count - 1) / 2.0)) * (Size.PocketWidth + Size.Ridge);

    /// <summary>A point by its distances along and across.</summary>
    public Point2 Point(double along, double across) =>
        At + Point2.Polar(along, Along) + Point2.Polar(across, Along + Angle.FromDegrees(90));

    /// <summary>The block of a bay somewhere else.</summary>
    internal static Region OutlineAt(BatteryBaySize size, Point2 at, Angle along) =>
        PartEnvelope.Rectangle(at, size.OuterLength, size.OuterWidth, along);

    /// <summary>What it takes there.</summary>
    internal static Region TakenAt(BatteryBaySize size, Point2 at, Angle along) => OutlineAt(size, at, along).And(
        PartEnvelope.Rectangle(at, size.StrapGap, size.OuterWidth + (2 * size.StrapBeside), along));
}
