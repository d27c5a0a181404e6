using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Planar;

/// <summary>
/// A circle about the origin as a regular polygon. Walls on one axis share count and phase, so that their corners stand on
/// common rays; a hole and the cone that widens it share the very same ring and so the very same corners.
/// </summary>
/// <remarks>
/// Corners are rounded to the lattice towards the axis (<see cref="RingSide.Inside"/>) or away from it
/// (<see cref="RingSide.Outside"/>): the polygon keeps to its side of the circle to within one lattice step, and a quarter turn
/// maps a ring whose count is a multiple of four onto itself.
/// </remarks>
public sealed record Ring
{
    private ImmutableArray<Point2> _points;

    /// <summary>Names a ring; its corners are worked out when first asked for.</summary>
    /// <param name="radius">Radius of the true circle in mm, above 0.</param>
    /// <param name="side">On which side of the circle the polygon lies.</param>
    /// <param name="count">Number of corners, at least 3; <see cref="CountFor"/> gives it.</param>
    /// <param name="phase">Direction of the first corner, counter-clockwise from +x.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a positive radius inside the domain, or fewer than 3 corners.</exception>
    public Ring(double radius, RingSide side, int count, Angle phase)
    {
        if (!(radius > 0 && radius <= Lattice.LimitMillimetres))
        {
            throw new ArgumentOutOfRangeException(nameof(radius), radius, "A ring's radius must lie above 0 and within 256 mm.");
        }

        ArgumentOutOfRangeException.ThrowIfLessThan(count, 3);
        Radius = radius;
        Side = side;
        Count = count;
        Phase = phase;
    }

    /// <summary>Radius of the true circle in mm.</summary>
    public double Radius { get; }

    /// <summary>On which side of the circle the polygon lies.</summary>
    public RingSide Side { get; }

    /// <summary>Number of corners.</summary>
    public int Count { get; }

    /// <summary>Direction of the first corner.</summary>
    public Angle Phase { get; }

    /// <summary>The corners, counter-clockwise from the phase, on the lattice. Worked out once.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A circumscribed corner lies outside the domain.</exception>
    public ImmutableArray<Point2> Points
    {
        get
        {
            if (_points.IsDefault)
            {
                ImmutableInterlocked.InterlockedInitialize(ref _points, Corners());
            }

            return _points;
        }
    }

    /// <summary>
    /// The number of sides for all walls round one axis: the fewest, in multiples of four and at least
    /// <see cref="Tolerances.FewestSides"/>, that keep the largest of them within <see cref="Tolerances.ChordError"/>.
    /// </summary>
    /// <param name="largestRadius">The largest radius of the coaxial stack in mm.</param>
    public static int CountFor(double largestRadius)
    {
        int count = Tolerances.FewestSides;
        while (largestRadius * (1 - Angle.FromDegrees(180.0 / count).Cos) > Tolerances.ChordError)
        {
            count += 4;
        }

        return count;
    }

    /// <summary>An inscribed ring of a stack whose largest radius is its own.</summary>
    public static Ring Peg(double radius) => new(radius, RingSide.Inside, CountFor(radius), Angle.Zero);

    /// <summary>A circumscribed ring of a stack whose largest radius is its own.</summary>
    public static Ring Hole(double radius) => new(radius, RingSide.Outside, CountFor(radius), Angle.Zero);

    /// <summary>The ring of the same count and phase with another radius and side: the next wall on the same axis.</summary>
    public Ring Coaxial(double radius, RingSide side) => new(radius, side, Count, Phase);

    /// <summary>Same circle, side, count and phase. The corners follow from those.</summary>
    public bool Equals(Ring? other) =>
        other is not null && Radius.Equals(other.Radius) && Side == other.Side && Count == other.Count && Phase == other.Phase;

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Radius, Side, Count, Phase);

    private ImmutableArray<Point2> Corners()
    {
        double cornerRadius = Side == RingSide.Outside ? Radius / Angle.FromDegrees(180.0 / Count).Cos : Radius;

        // One quarter is worked out and turned exactly: no corner differs from its image by a last bit.
        int own = Count % 4 == 0 ? Count / 4 : Count;
        var corners = ImmutableArray.CreateBuilder<Point2>(Count);
        for (int i = 0; i < own; i++)
        {
            Point2 corner = Point2.Polar(cornerRadius, Phase + Angle.FromDegrees(360.0 * i / Count));
            corners.Add(new Point2(Round(corner.X), Round(corner.Y)));
        }

        for (int i = own; i < Count; i++)
        {
            Point2 before = corners[i - own];
            corners.Add(new Point2(0 - before.Y, before.X));
        }

        return corners.MoveToImmutable();
    }

    private double Round(double coordinate)
    {
        double steps = Math.Abs(coordinate) * Lattice.StepsPerMillimetre;

        // A coordinate that is a whole count but for the last bits of a sine stays that count.
        double nearest = Math.Floor(steps + 0.5);
        double whole = Math.Abs(steps - nearest) < Tolerances.WholeStep ? nearest
            : Side == RingSide.Outside ? Math.Ceiling(steps) : Math.Floor(steps);
        return Lattice.Snap(Math.CopySign(whole, coordinate) * Lattice.Step);
    }
}
