using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>A screw pattern that will not always go together.</summary>
public sealed class ScrewsMayNotStart() : Rule(
    "screws-may-not-start",
    "All screws of the board, and all of the cover, must find their inserts.",
    "Three screws start and the fourth does not: the board is filed, or the screw goes in across its thread.",
    "100,000 seeded trials, of the board and of the cover, over the places of bosses, inserts and holes, hole diameters, insert tilt, and "
        + "for the board one error of scale a build, as the filament shrinks more or less; part shifted and turned for the best; under 99 "
        + "% warns, under 90 % stops",
    "board house tolerances (hole to hole 0.08, diameter 0.08), 0.4 of the printer profile's accuracy, insert 0.08 mm and 1.5 degrees, "
        + "the filament's shrinkage-spread, made threads 0.07 mm below nominal (ISO 965, 6g): typical, check your parts. Tolerances are "
        + "limits that makers keep, read as three standard deviations (process capability of 1, ISO 22514) and never passed; shrinkage "
        + "lies anywhere in its range (an even spread, as the GUM takes a range of which no more is known)")
{
    private const int Trials = 100_000;
    private const ulong Seed = 20_200_202;
    private const double Good = 0.99;

    // Of a tenth of a millimetre: what the last bit may add before a hole is rounded up.
    private const double Hair = 1e-6;
    private const double Poor = 0.90;
    private const double BoardHoleSpread = 0.08;
    private const double BoardDiameterSpread = 0.08;
    private const double InsertSpread = 0.08;
    private const double TiltDegrees = 1.5;

    /// <summary>Outer diameter of a made thread below nominal, mm: the middle of ISO 965 class 6g from M2 to M4.</summary>
    private const double ThreadBelowNominal = 0.07;

    /// <summary>
    /// Share of the printer's accuracy by which features of one print stand off from each other: the rest is scale and line width.
    /// </summary>
    private const double PlaceShare = 0.4;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        PrinterProfile printer = housing.Board.Print.Printer;
        ImmutableArray<BoardHole> holes = housing.Board.Board.Holes;
        double boss = printer.Accuracy * PlaceShare;

        // Tub and cover shrink alike: only against the board does scale count.
        double scale = housing.Board.Print.Shell.ShrinkageSpread;
        foreach (ScrewUse use in Enum.GetValues<ScrewUse>())
        {
            // A screw of the cover that goes on through the board has to find its way through both.
            bool ofBoard = use is ScrewUse.Board or ScrewUse.SecondBoard;
            ImmutableArray<ScrewJointPlan> group =
                [.. housing.Plan.Screws.Where(joint => joint.Use == use || (use == ScrewUse.Board && HoldsBoardToo(joint)))];
            if (group.IsEmpty)
            {
                continue;
            }

            ImmutableArray<ScrewPlace> places = [.. group.Select(joint => new ScrewPlace(
                joint.Name, joint.At, ofBoard ? HoleOf(joint, holes) : joint.PassDiameter - printer.HoleAllowance,
                joint.Screw.ThreadDiameter - ThreadBelowNominal,
                joint.Use == use ? joint.Clamp : housing.Board.Board.Thickness))];
            var spread = new ScrewSpread(
                boss, InsertSpread, TiltDegrees, ofBoard ? BoardHoleSpread : boss, ofBoard ? BoardDiameterSpread : printer.Accuracy / 2,
                ofBoard ? scale : 0);
            ScrewStartResult result = ScrewStart.Simulate(places, spread, Trials, Seed);
            if (result.Probability >= Good || places.Any(place => place.HoleDiameter < place.ThreadDiameter))
            {
                // A hole that no screw passes is told by the plan.
                continue;
            }

            ScrewJointPlan worst = group[result.WorstScrew];
            double needed = places[result.WorstScrew].HoleDiameter + result.DiameterFor99;
            yield return Found(
                result.Probability < Poor ? Severity.Stop : Severity.Warn, worst.Name,
                Told(result, Held(use), ofBoard ? scale : 0, Reach(group)),
                100 * result.Probability, 100 * Good,
                new Point3(worst.At.X, worst.At.Y, worst.Use == use ? worst.SeatZ : housing.Plan.Stack.BoardTop),
                ofBoard
                    ? $"open the {Held(use)}'s holes to {Math.Ceiling((10 * needed) - Hair) / 10:0.0} mm, take an insert of a thinner "
                        + $"thread, or measure your filament's shrinkage ('shellforge coupon', then 'shellforge calibrate')"
                    : $"measure how holes print ('shellforge coupon', then 'shellforge calibrate'), or take an insert of a thinner thread",
                "%");
        }
    }

    private static string Held(ScrewUse use) => use switch
    {
        ScrewUse.Board => "board",
        ScrewUse.Closure => "cover",
        ScrewUse.Clamp => "clamp ring",
        ScrewUse.SecondBoard => "second board",
        _ => throw new ArgumentOutOfRangeException(nameof(use)),
    };

    private static string Told(ScrewStartResult result, string of, double scale, double reach)
    {
        string what =
            $"in {100 * (1 - result.Probability):0} of 100 builds not every screw of the {of} starts; this one "
                + $"is the worst";
        return scale > 0
            ? $"{what}. Bosses stray by {scale * reach:0.00} mm if shrinkage is {100 * scale:0.00} % off"
            : what;
    }

    // How far the outermost screw stands from the middle of all, mm.
    private static double Reach(ImmutableArray<ScrewJointPlan> group)
    {
        var middle = new Point2(group.Average(joint => joint.At.X), group.Average(joint => joint.At.Y));
        return group.Max(joint => Point2.Distance(joint.At, middle));
    }

    private static bool HoldsBoardToo(ScrewJointPlan joint) => joint.Boss.Use == BossUse.Both;

    // Holes are matched by place; one that only the plan knows (a rest, a post of its own) is as wide as its screw passes.
    private static double HoleOf(ScrewJointPlan joint, ImmutableArray<BoardHole> holes) =>
        joint.Use == ScrewUse.SecondBoard ? joint.PassDiameter
        : holes.Where(hole => hole.At == joint.At).Select(hole => (double?)hole.Diameter).FirstOrDefault() ?? joint.Screw.ClearanceHole;
}
