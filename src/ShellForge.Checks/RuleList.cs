using System.Collections.Immutable;
using ShellForge.Checks.Batteries;
using ShellForge.Checks.Cables;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Fit;
using ShellForge.Checks.Heat;
using ShellForge.Checks.Holding;
using ShellForge.Checks.Light;
using ShellForge.Checks.Openings;
using ShellForge.Checks.Power;
using ShellForge.Checks.Print;
using ShellForge.Checks.SecondBoards;

namespace ShellForge.Checks;

/// <summary>All rules, one line each, in the order in which findings of equal severity are told.</summary>
public static class RuleList
{
    /// <summary>All rules.</summary>
    public static ImmutableArray<IRule> All { get; } =
    [
        new AuditFailed(),
        new PartInPieces(),
        new StillToSay(),
        new FileRemarked(),
        new PlanRefused(),
        new LooksScaled(),
        new LooksMirrored(),
        new BoardNotMeasured(),
        new UnknownHeight(),
        new PartsOverlap(),
        new HeadAgainstPart(),
        new PartAgainstHousing(),
        new BoardEdgeMeetsWall(),
        new NoWayIn(),
        new MissingKey(),
        new LipJams(),
        new InsertWallTooThin(),
        new InsertHoleTooWide(),
        new NoWayForIron(),
        new InsertJackedOut(),
        new NoWayForDriver(),
        new HoleTooTight(),
        new HoleNearEdge(),
        new ScrewEngagement(),
        new ScrewBottomsOut(),
        new ScrewsMayNotStart(),
        new SnapOverstrained(),
        new RimSlipsOut(),
        new ClipOverstrained(),
        new PlugDoesNotSeat(),
        new PlugMeetsHousing(),
        new NoFingerRoom(),
        new StandTips(),
        new ControlOutOfReach(),
        new PinMissesButton(),
        new OpeningBlocked(),
        new CableBendsTooTight(),
        new CableBehindHousing(),
        new NoWayForWires(),
        new CrowdedSector(),
        new PartsOffToReflash(),
        new StaysShut(),
        new BatteryShutIn(),
        new BatteryWithoutLeads(),
        new BatteryWithinReach(),
        new SecondBoardByMains(),
        new SecondBoardAgainstHousing(),
        new SecondBoardWithoutLeads(),
        new SpacersTooShort(),
        new SpacerAgainstPart(),
        new WallOffTheLines(),
        new OffTheBed(),
        new FilamentsInOneLayer(),
        new FeatureVanishes(),
        new SkinTooThin(),
        new WallBetweenLines(),
        new GapCloses(),
        new NothingBelow(),
        new PoorFooting(),
        new SlicedOtherPart(),
        new SlicedOtherLayers(),
        new SlicedThinner(),
        new SlicedWithSupport(),
        new SlicedInOneFilament(),
        new VoltageOff(),
        new ContactsOverloaded(),
        new SupplyOverloaded(),
        new LeadTooThin(),
        new RingDrops(),
        new PlasticTooWarm(),
        new LedsTooWarm(),
        new BatteryTooWarm(),
        new VentsCovered(),
        new LedOffCircle(),
        new LedInTheDark(),
        new DotsShow(),
        new CellsBleed(),
        new FrontTooDim(),
        new WallGlows(),
        new LightEscapes(),
        new LedsSeen(),
    ];
}
