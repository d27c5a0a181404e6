using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Rendering;

/// <summary>
/// From where parts are looked at, in parallel projection: lengths across the view are true, as in a drawing.
/// </summary>
/// <param name="Azimuth">Where the viewer stands, counter-clockwise from +x seen from above. From -90 degrees +x points right.</param>
/// <param name="Elevation">How high the viewer stands: 0 level, 90 degrees above, -90 below.</param>
public sealed record View(Angle Azimuth, Angle Elevation)
{
    /// <summary>From above, +x to the right and +y up.</summary>
    public static View Top { get; } = new(Angle.FromDegrees(-90), Angle.FromDegrees(90));

    /// <summary>From below, +x to the right.</summary>
    public static View Bottom { get; } = new(Angle.FromDegrees(-90), Angle.FromDegrees(-90));

    /// <summary>From the front, level: +x to the right and +z up.</summary>
    public static View Front { get; } = new(Angle.FromDegrees(-90), Angle.Zero);

    /// <summary>From the front right and above, the usual one.</summary>
    public static View Corner { get; } = new(Angle.FromDegrees(-60), Angle.FromDegrees(35));

    /// <summary>From the front right and below.</summary>
    public static View CornerBelow { get; } = new(Angle.FromDegrees(-60), Angle.FromDegrees(-35));

    /// <summary>Towards the viewer.</summary>
    internal Point3 Towards => new(Elevation.Cos * Azimuth.Cos, Elevation.Cos * Azimuth.Sin, Elevation.Sin);

    /// <summary>To the right in the picture.</summary>
    internal Point3 Right => new(0 - Azimuth.Sin, Azimuth.Cos, 0);

    /// <summary>Up in the picture.</summary>
    internal Point3 Up => Point3.Cross(Towards, Right);
}
