using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Mounts;

/// <summary>
/// A stand as a part of its own, printed foot down: a band of whole lines round the foot, and on either side a flat cheek with a notch that
/// the rim leans back in. Two notches keep a round housing from rolling; what hangs from the rim hangs between them.
/// </summary>
internal sealed class StandForm : MountForm
{
    private const double TiltDegrees = 70;

    // Cheeks stand at this share of the housing's width from its middle, and nowhere nearer or farther than these, where plugs allow.
    // Typical.
    private const double CheekShare = 0.25;
    private const double CheekLeast = 0.16;
    private const double CheekMost = 0.4;

    // Narrower housings find no room between two cheeks, mm.
    private const double LeastAcross = 16;

    // Lines of the wall, the stiffest first, and the width of a housing from which it takes more.
    private static readonly ImmutableArray<int> WallLines = [4, 3];
    private static readonly ImmutableArray<int> WideWallLines = [6, 5, 4, 3];
    private const double Wide = 120;

    // A stand is to weigh less than this share of its lamp: less than a third, with something to spare for its round corners.
    private const double OfLamp = 0.3;

    // Under a plug whose cable turns to the back, mm.
    private const double UnderPlug = 9;

    // A cable bends in so many of its diameters.
    private const double CableBend = 4.0;

    // Beside a plug, mm; and the angle from straight down within which a plug or cable is said to hang.
    private const double BesidePlug = 1.5;
    private const double HangsWithin = 60;

    private const double SlotWidth = 12;
    private const double SlotSill = 2;

    // Kept from the end of the lattice, mm.
    private const double FromLimit = 4;

    /// <inheritdoc />
    public override MountKind Kind => MountKind.Stand;

    /// <inheritdoc />
    public override string Why => "";

    /// <inheritdoc />
    public override double FloorLeast(PrintBasis basis) => 0;

    /// <inheritdoc />
    public override double Top(Given given) => 0;

    /// <inheritdoc />
    public override MountPlan? Decide(HousingDraft draft, Reasons reasons)
    {
        Angle upright = draft.File.Upright;
        Region turned = draft.Shell.Footprint.Filled().Turned(upright);
        double middle = turned.Bounds.Centre.X;
        Point2 shift = new(-middle, 0);
        Region outline = turned.Moved(shift);
        Region window = draft.Front.Window.Turned(upright).Moved(shift);
        double across = outline.Bounds.Size.X;
        if (across < LeastAcross)
        {
            reasons.Refuse(
                "mount-without-place", "stand",
                $"The housing is {Reasons.Mm(Math.Round(across, 1))} wide; a stand's two cheeks need {Reasons.Mm(LeastAcross)}.",
                across, LeastAcross, "mm", default, "mount: feet or magnets, or none");
            return null;
        }

        ImmutableArray<HangingThing> hanging = Hanging(draft, upright, shift);
        StandLayout? layout = null;
        int lines = 0;
        double lamp = LampVolume(draft);
        foreach (int tried in across > Wide ? WideWallLines : WallLines)
        {
            var given = new StandGiven(
                outline, window, draft.Stack.Front, Angle.FromDegrees(TiltDegrees), draft.Basis, draft.Basis.Wall(tried), 0, hanging);
            if (HalfWidths(across).Select(half => StandLayout.Of(given with { Half = half }))
                .FirstOrDefault(at => at.IsClear && at.HalfWidth >= at.Margin) is { } fits)
            {
                (layout, lines) = (fits, tried);
                if (fits.Volume <= OfLamp * lamp)
                {
                    break;
                }
            }
        }

        if (layout is null)
        {
            string what = hanging.FirstOrDefault(thing => thing.Hangs)?.Name ?? "";
            reasons.Refuse(
                "mount-without-place", "stand",
                what.Length == 0
                    ? $"The housing is {Reasons.Mm(Math.Round(draft.Stack.Front, 1))} thick and {Reasons.Mm(Math.Round(across, 1))} wide: "
                        + $"on a stand it would tip sideways."
                    : $"{what} leaves no place for a stand's two cheeks beside it, or stands so high on them that it would tip sideways.",
                0, 1, "", default, "turn the connector or the cable away from 'up: ', or mount: keyhole or feet");
            return null;
        }

        StandMountPlan plan = Plan(draft, layout, upright, middle);
        if (Farthest(plan) > Lattice.LimitMillimetres - FromLimit)
        {
            reasons.Refuse(
                "mount-without-place", "stand",
                $"A stand for it would reach {Reasons.Mm(Math.Round(Farthest(plan), 0))} mm from the middle of the housing, farther "
                    + $"than any part may.",
                Farthest(plan), Lattice.LimitMillimetres - FromLimit, "mm", default, "mount: keyhole");
            return null;
        }

        reasons.Length("mount.stand.width", Math.Round(2 * plan.HalfWidth, 2), Reasons.Rule,
            "over both cheeks: a quarter of the housing's width to either side, clear of what hangs from the rim");
        reasons.Length("mount.stand.wall", plan.Wall, Reasons.Rule,
            $"{lines} lines: of those that make it lighter than a third of the lamp the stiffest");
        reasons.Length("mount.stand.depth", Math.Round(plan.Depth, 2), Reasons.Rule,
            $"the centre of mass stands over the foot until it is tilted by {Reasons.Mm(StandLayout.TipsAtDegrees)} degrees");
        reasons.Length("mount.stand.lift", Math.Round(layout.Lift, 2), Reasons.Rule, layout.LiftedFor);
        reasons.Choice("mount.stand.tilt", $"{Reasons.Mm(TiltDegrees)} degrees", Reasons.Rule,
            "from the horizontal: it leans back by 20, looks up at who sits before it, and prints without support");
        return plan;
    }

    // Plastic of tub and cover without what stands inside, mm3: a little less than there is.
    private static double LampVolume(HousingDraft draft)
    {
        double walls = draft.Shell.Walls.Area * draft.Stack.Front;
        double floor = draft.Shell.Cavity.Area * draft.Stack.FloorTop;
        return walls + floor + (draft.Shell.Cavity.Less(draft.Front.Window).Area * draft.Front.BezelThickness);
    }

    // Near the best share first.
    private static IEnumerable<double> HalfWidths(double across)
    {
        const double step = 0.5;
        double best = CheekShare * across;
        for (int i = 0; i * step <= across; i++)
        {
            foreach (double half in new[] { best + (i * step), best - (i * step) }.Distinct())
            {
                if (half >= CheekLeast * across && half <= CheekMost * across)
                {
                    yield return Math.Round(half, 2);
                }
            }
        }
    }

    private static ImmutableArray<HangingThing> Hanging(HousingDraft draft, Angle upright, Point2 shift)
    {
        Angle down = draft.File.Up + Angle.FromDegrees(180);
        var things = ImmutableArray.CreateBuilder<HangingThing>();
        foreach (OpeningInUse use in draft.Openings.Select(opening => opening.InUse(BesidePlug)).OfType<OpeningInUse>())
        {
            things.Add(new HangingThing(
                use.What, use.Way.Turned(upright).Moved(shift), use.Lowest, UnderPlug,
                Angle.Between(use.Towards, down).Degrees < HangsWithin));
        }

        foreach (CableExitPlan exit in draft.CableExits)
        {
            CableWay way = exit.Outside(BesidePlug, CableBend);
            things.Add(new HangingThing(
                exit.TheCable, way.Region.Turned(upright).Moved(shift), way.Lowest, exit.CableDiameter,
                way.Towards is { } leaves && Angle.Between(leaves, down).Degrees < HangsWithin));
        }

        return things.ToImmutable();
    }

    private static StandMountPlan Plan(HousingDraft draft, StandLayout layout, Angle upright, double middle)
    {
        Angle tilt = Angle.FromDegrees(TiltDegrees);
        HangingThing? hangs = layout.Given.Hanging.FirstOrDefault(thing => thing.Hangs);
        return new StandMountPlan
        {
            ToHousing = Transform3.Shift(middle, 0 - layout.Forward, 0 - layout.Lift)
                .Then(Transform3.TurnX(Angle.Zero - tilt))
                .Then(Transform3.TurnZ(Angle.Zero - upright)),
            Band = layout.Band,
            BandHeight = layout.BandHeight,
            HalfWidth = layout.HalfWidth,
            Wall = layout.Given.Wall,
            Depth = layout.Depth,
            LeftSide = layout.Side(left: true),
            RightSide = layout.Side(left: false),
            Height = layout.Height,
            CableSlot = hangs is null ? null : (Math.Min(SlotWidth, layout.HalfWidth), draft.Basis.Up(SlotSill)),
            Tilt = tilt,
            BedChamfer = draft.Shell.BedChamfer,
            Hanging = hangs?.Name ?? "",
        };
    }

    // Of its corners, in the housing's frame and in its own.
    private static double Farthest(StandMountPlan plan)
    {
        double y = plan.Depth / 2;
        IEnumerable<Point3> corners =
            from x in new[] { -plan.HalfWidth, plan.HalfWidth }
            from side in new[] { -y, y }
            from z in new[] { 0, plan.Height }
            select new Point3(x, side, z);
        return corners.SelectMany(corner => new[] { corner, plan.ToHousing.Apply(corner) })
            .Max(point => Math.Max(Math.Abs(point.X), Math.Max(Math.Abs(point.Y), Math.Abs(point.Z))));
    }
}
