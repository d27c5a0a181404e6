using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Checks.Gauges;

/// <summary>Tolerances of the print rules, each with its reason.</summary>
internal static class PrintTolerances
{
    /// <summary>A width is short only by more than this: chords of circles and lattice rounding stay below, mm (modelling).</summary>
    public const double Width = 0.015;

    /// <summary>
    /// An overhang is over its limit only by more than this share: half a degree at 45 degrees, which is what scaling for shrinkage and
    /// chords of circles change (modelling).
    /// </summary>
    public const double OverhangShare = 1.02;

    /// <summary>
    /// What is left of a section after a subtraction counts from this area on, mm2: a speck of a tenth of a line (making).
    /// </summary>
    public const double Area = 0.01;

    /// <summary>Corners nearer than this are one corner, mm: thirty lattice steps, a thousandth of a line (numeric).</summary>
    public const double SamePlace = 0.0005;

    /// <summary>A small square round a point, to ask whether there is material.</summary>
    public static Region Speck(Point2 at) => Region.Rectangle(at - new Point2(0.05, 0.05), at + new Point2(0.05, 0.05));
}

/// <summary>Keeps findings from being told again for every layer of one feature.</summary>
internal sealed class ReportedPlaces(double apart)
{
    private readonly List<Point2> _places = [];

    /// <summary>Whether no place told so far is near; then it counts as told.</summary>
    public bool IsNew(Point2 at)
    {
        if (_places.Any(place => Point2.Distance(place, at) < apart))
        {
            return false;
        }

        _places.Add(at);
        return true;
    }
}
