using ShellForge.Geometry.Numerics;
using ShellForge.Import.Merging;

namespace ShellForge.Import.Writing;

/// <summary>Where LEDs that shine along the board look.</summary>
internal static class LedFacing
{
    /// <summary>The key that says it, nothing for the usual way, and the turn that a board file gives such LEDs by itself.</summary>
    /// <param name="led">The LED.</param>
    /// <param name="centre">The board's centre.</param>
    public static (string Key, double Turn) Of(ImportedPart led, Point2 centre)
    {
        if (led.Match?.ShiningFace is not { } face)
        {
            return ("", 0);
        }

        var looks = Point2.Polar(1, Angle.FromDegrees(led.Rotation + face));
        bool inward = Point2.Dot(looks, led.BodyCentre - centre) < 0;
        return inward ? (", facing: in", 180 - face) : ("", -face);
    }
}
