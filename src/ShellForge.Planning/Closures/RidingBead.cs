using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Planning.Closures;

/// <summary>A bead that has to ride over the end of a round wall, or short beads in one line.</summary>
/// <param name="Radius">Radius of the wall's face, mm.</param>
/// <param name="Interference">Overlap per side, mm.</param>
/// <param name="Land">Way that the crest slides over the wall between its end and the groove, mm.</param>
/// <param name="Stiffness">Line load per give of what gives, N/mm per mm.</param>
/// <param name="HasBead">Whether there is bead, for every degree of the round.</param>
internal sealed record RidingBead(double Radius, double Interference, double Land, double Stiffness, ImmutableArray<bool> HasBead)
{
    /// <summary>Steps of the round.</summary>
    public const int Degrees = 360;

    /// <summary>A bead all round but for gaps.</summary>
    /// <param name="gaps">Sectors without bead.</param>
    public RidingBead Without(IEnumerable<(Angle From, Angle Sweep)> gaps) =>
        this with { HasBead = [.. Sectors(gaps).Select(gap => !gap)] };

    /// <summary>Beads in these sectors only.</summary>
    /// <param name="pieces">The sectors.</param>
    public RidingBead Only(IEnumerable<(Angle From, Angle Sweep)> pieces) => this with { HasBead = [.. Sectors(pieces)] };

    /// <summary>Load along the axis of one degree of this bead, while it rides over a leading flank.</summary>
    /// <param name="leadIn">Angle of the flank to the axis.</param>
    public Riding Over(Angle leadIn)
    {
        double across = Stiffness * Interference * Radius * Angle.FromDegrees(360.0 / Degrees).Radians;
        return new Riding(Interference * leadIn.Cos / leadIn.Sin, Land, across * SnapForce.AlongAxis(leadIn), across * SnapForce.Friction);
    }

    private static IEnumerable<bool> Sectors(IEnumerable<(Angle From, Angle Sweep)> sectors)
    {
        (Angle From, Angle Sweep)[] all = [.. sectors];
        return Enumerable.Range(0, Degrees).Select(d =>
            all.Any(sector => (Angle.FromDegrees((d + 0.5) * 360 / Degrees) - sector.From).Normalized.Degrees < sector.Sweep.Degrees));
    }

    /// <summary>One degree of a bead on its way.</summary>
    /// <param name="Run">Way along the axis in which the leading flank takes up the whole overlap, mm.</param>
    /// <param name="Land">Way that the crest slides, mm.</param>
    /// <param name="OnFlank">Force along the axis at the end of the flank, N.</param>
    /// <param name="OnLand">Force along the axis while the crest slides, N.</param>
    internal readonly record struct Riding(double Run, double Land, double OnFlank, double OnLand)
    {
        /// <summary>Force along the axis, N.</summary>
        /// <param name="depth">How far the leading flank has come past the rim, mm; negative: not there yet.</param>
        public double Load(double depth) => depth <= 0 || depth > Run + Land ? 0 : depth < Run ? OnFlank * depth / Run : OnLand;
    }
}
