using ShellForge.Board.Profiles;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>A cover that fits on one printer and not on another.</summary>
public sealed class LipJams() : Rule(
    "lip-jams",
    "The gap between lip and wall must outlast the spread of the printer at hand.",
    "A lid that fits the prints of one printer is 0.1 mm too tight on the next.",
    "gap per side as planned, less the printer's spread of a size taken once: lip and wall are two sizes and stray together rarely; below "
        + "0 warns, below -0.1 mm stops",
    "accuracy and fit of the printer profile: print a coupon and write what it measures")
{
    private const double Jammed = -0.1;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        PrinterProfile printer = housing.Board.Print.Printer;
        double left = Math.Round(housing.Plan.Cover.LipGap - printer.LipCloses - printer.Accuracy, 3);
        if (left < 0)
        {
            Point2 at = Places.OnInnerWall(housing, Angle.Zero);
            yield return Found(
                left < Jammed ? Severity.Stop : Severity.Warn, PartNames.Cover,
                $"its lip has {housing.Plan.Cover.LipGap:0.00} mm per side, the printer strays by {printer.Accuracy.Value:0.00}: it will "
                    + $"not go on every time",
                left, 0, new Point3(at.X, at.Y, housing.Plan.Cover.LipBottom),
                "measure your printer's fit ('shellforge coupon', then 'shellforge calibrate'), or widen the normal fit in its profile");
        }
    }
}
