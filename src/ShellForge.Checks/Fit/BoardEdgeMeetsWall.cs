using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Fit;

/// <summary>A board that does not drop in, because its edge is not as smooth as drawn.</summary>
public sealed class BoardEdgeMeetsWall() : Rule(
    "board-edge-meets-wall",
    "Between the board's edge and the walls there must be room for stubs, burrs and the spread of the outline.",
    "A board broken out of its panel wears stubs of half a millimetre: it is filed for an hour, or its housing printed again.",
    "least distance in plan between the outline and every section of the tub above the board's lower face; wanted: a measured stub + 0.3, "
        + "unmeasured stubs 0.8, scored edges 0.5, routed edges 0.3 mm; less than the stub or the spread itself stops",
    "board houses' tables: routed +-0.2, scored +-0.4; stubs 0.3 to 0.6, typical: measure yours")
{
    private const double Ease = 0.3;

    // Chords of a round edge and a round wall, mm (modelling).
    private const double Chords = 0.02;

    // The faces of hooks are cut a little wide of where they are drawn, mm.
    private const double Hair = 0.01;

    /// <summary>
    /// The standoffs' tops, rounded to the lattice, lie at the board's face: what ends this near below it is beside no edge, mm.
    /// </summary>
    private const double LayerHair = 0.01;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Part(PartNames.Tub) is not { } tub)
        {
            yield break;
        }

        CircuitBoard board = housing.Board.Board;
        (double proud, double wanted, string what) = board.Edge switch
        {
            EdgeFinish.Tabs when board.TabStub is double stub => (stub, stub + Ease, "a stub as measured"),
            EdgeFinish.Tabs => (0.6, 0.8, "a stub of common length"),
            EdgeFinish.VScored => (0.4, 0.5, "the spread of a scored edge"),
            _ => (0.2, Ease, "the spread of a routed edge"),
        };

        // What snaps over the board's rim is another rule's.
        Region bends = housing.Plan.Hold.Holder?.GivesWay.Grown(Hair) ?? Region.Empty;
        (double gap, Point2 at, double z) = (double.PositiveInfinity, default, 0.0);
        foreach (SectionSlab slab in housing.SectionsOf(tub)
            .Where(slab => slab.ToZ > housing.Plan.Stack.BoardBottom + LayerHair && !slab.Outline.IsEmpty))
        {
            Region wall = slab.Outline.Less(bends);
            double distance = board.Outline.Region.Distance(wall);
            if (distance < gap)
            {
                (gap, at, z) = (distance, NearestPlace.On(board.Outline.Region, wall),
                    Math.Max(slab.FromZ, housing.Plan.Stack.BoardBottom));
            }
        }

        if (gap < wanted - Chords)
        {
            yield return Found(
                gap < proud ? Severity.Stop : Severity.Warn, PartNames.Board,
                $"its edge has {gap:0.00} mm to the tub's wall; {what} needs {wanted:0.00}", gap, wanted, new Point3(at.X, at.Y, z),
                "widen 'clearance: {board-edge: ...}' or leave it out; or measure the stubs and write 'measured: {tab-stub: ...}'");
        }
    }
}
