using ShellForge.Board.Description;
using ShellForge.Board.Profiles;

namespace ShellForge.Planning.Draft;

/// <summary>
/// Lengths that the trade settles on and no profile holds, each with its source. "Typical" means trade knowledge: a default that
/// holds for most printers, to be confirmed on a coupon.
/// </summary>
internal static class PlanRules
{
    /// <summary>Gap between a cleanly routed board edge and the wall, mm. Typical; stack-up of outline and print spread.</summary>
    public const double EdgeGapClean = 0.5;

    /// <summary>Gap for tabs and scored edges, mm. Typical: stubs stand out 0.3 to 0.6, scored edges spread 0.4.</summary>
    public const double EdgeGapRough = 0.8;

    /// <summary>Added to a measured tab stub, mm. Typical.</summary>
    public const double EdgeGapOverStub = 0.3;

    /// <summary>Gap that a board's edge wants to the wall, mm, by how it was made.</summary>
    public static double EdgeGap(CircuitBoard board) => board.Edge switch
    {
        EdgeFinish.Clean => EdgeGapClean,
        EdgeFinish.Tabs when board.TabStub is double stub => Math.Max(EdgeGapClean, stub + EdgeGapOverStub),
        _ => EdgeGapRough,
    };

    /// <summary>The same, mm, or as it is wished; where what stands at the rim asks for more, the gap is wider.</summary>
    public static double EdgeGapOf(BoardFile file) => file.Housing.BoardEdgeClearance ?? EdgeGap(file.Board);

    /// <summary>Least clearance of anything printed from a part, LED, head or washer in plan, mm. Typical.</summary>
    public const double Beside = 0.5;

    // Gap between bottom parts and floor, mm. Typical: 0.5 plus the sag of a floor.
    private const double BelowParts = 0.6;

    /// <summary>Gap between bottom parts and floor, mm: as it is wished, or what is kept without a wish.</summary>
    public static double BelowPartsOf(BoardFile file) => file.Housing.BelowPartsClearance ?? BelowParts;

    /// <summary>Height taken for a part whose height nobody knows, mm: a low guess, refused all the same.</summary>
    public const double UnknownHeight = 3.0;

    /// <summary>Default floor, mm: ten layers of 0.2.</summary>
    public const double Floor = 2.0;

    /// <summary>Lines of the default wall. Typical: 3 or 4 for an opaque wall.</summary>
    public const int WallLines = 4;

    /// <summary>Least height under a board that still lets a finger of solder and a rest be made, mm.</summary>
    public const double LeastBelowBoard = 2.0;

    /// <summary>A soldered wire with its bend, mm. Typical.</summary>
    public const double WireBlob = 4.0;

    /// <summary>Melt room under an insert, mm. Source: insert makers' guides, 0.5 to 1.0.</summary>
    public const double MeltRoom = 1.0;

    /// <summary>From a screw's tip to the bottom of its hole, mm.</summary>
    public const double TipGap = 0.5;

    /// <summary>Plastic under a blind hole, mm. Typical: six layers.</summary>
    public const double PlasticBelow = 1.2;

    /// <summary>How far an insert is set below its boss, mm: a proud insert tilts the board. Typical.</summary>
    public const double SetBelow = 0.1;

    /// <summary>Leg of the 45 degree lead-in of a straight insert's hole, mm. Typical: 0.3 to 0.4.</summary>
    public const double LeadIn = 0.3;

    /// <summary>Growth in diameter of a tapered insert's hole per length: 8 degrees included.</summary>
    public const double TaperPerLength = 0.14;

    /// <summary>A hole is at least this much smaller than the insert's body, mm. Source: insert makers' guides.</summary>
    public const double LeastHoleInterference = 0.3;

    /// <summary>Least boss wall, mm. Source: service bureaus' design guides.</summary>
    public const double BossWall = 1.6;

    /// <summary>Lines of plastic in a boss wall.</summary>
    public const int BossWallLines = 4;

    /// <summary>Boss wall as a share of the insert's body. Source: 0.25 to 0.9 in makers' guides.</summary>
    public const double BossWallShare = 0.4;

    /// <summary>A boss nearer to a wall than this is tied to it, mm: a gap this narrow can't be cleaned or filled.</summary>
    public const double TieDistance = 1.5;

    /// <summary>Room for wires over a web, times the bundle. Typical.</summary>
    public const double WireRoom = 1.3;

    /// <summary>A boss higher than so many diameters gets gussets.</summary>
    public const double SlenderBoss = 2.0;

    /// <summary>Engagement that an insert offers is its length less this, mm: the first thread is chamfered away.</summary>
    public const double InsertRunOut = 0.5;

    /// <summary>Plastic under a screw's head, mm: six layers.</summary>
    public const double UnderHead = 1.2;

    /// <summary>Counterbore over the largest head: on the diameter and in depth, mm. Typical.</summary>
    public const double CounterboreOver = 0.6;

    /// <summary>See <see cref="CounterboreOver"/>.</summary>
    public const double CounterboreDeeper = 0.2;

    /// <summary>A length, mm, to the next 0.1 above, dust of rounding left out.</summary>
    public static double UpToTenth(double length) => Math.Ceiling(Math.Round(10 * length, 4)) / 10;

    /// <summary>How deep a mouth may lie behind the face that the overmould touches, mm, before a recess is cut.</summary>
    public const double MouthBehind = 0.5;

    /// <summary>Wall left between a recess and the room, in lines.</summary>
    public const int RecessWallLines = 2;

    /// <summary>Length of an overmould that fingers still need outside the wall, mm. Typical.</summary>
    public const double Grip = 8.0;

    /// <summary>Length of a plug that must stay outside the wall, mm: nothing of a wire connector's, which is drawn by its leads.</summary>
    public static double GripOf(MouthProfile mouth) => mouth.IsDrawnByLeads ? 0 : Grip;

    /// <summary>Plastic over a recess or a closed opening up to the parting line, mm: six layers.</summary>
    public const double OverOpening = 1.2;

    /// <summary>Parting line above the board's top face, mm.</summary>
    public const double PartingOverBoard = 2.0;

    /// <summary>No parting line within this of the axis of side-facing LEDs, mm.</summary>
    public const double PartingFromEmission = 1.5;

    /// <summary>
    /// Least diameter that an open bore keeps, mm: below, a printer closes it with strings and no finger or cable passes.
    /// </summary>
    public const double LeastBore = 6.0;

    /// <summary>
    /// Passage for a tie under a cable post: height, and width along the cable, mm. Source: ties 2.5 wide, slots of at least 3 x 1.
    /// </summary>
    public const double TieSlotHeight = 1.6;

    /// <summary>See <see cref="TieSlotHeight"/>.</summary>
    public const double TieSlotWidth = 3.5;

    /// <summary>Plastic over a tie passage, mm: six layers.</summary>
    public const double TieBridge = 1.2;

    /// <summary>A tie over a cable with its head turned sideways, and air, mm. Typical for ties 2.5 wide.</summary>
    public const double TieOverCable = 1.8;

    /// <summary>Room for an overhand knot in plan, times the cable. Typical.</summary>
    public const double KnotInPlan = 3.0;

    /// <summary>Height of an overhand knot, times the cable. Typical.</summary>
    public const double KnotHeight = 2.5;

    /// <summary>A notch is wider than its cable by this, mm. Typical.</summary>
    public const double NotchOver = 0.5;

    /// <summary>Least chamfer on edges that lie on the bed, mm. Source: design guides for filament printing, 0.4 x 45 degrees.</summary>
    public const double BedChamfer = 0.4;

    /// <summary>Overlap of a rest and the board's free rim, mm. Typical: 1.0 to 2.0.</summary>
    public const double RestOverlap = 1.2;

    /// <summary>Diameter of a rest, mm: the least free-standing pin is 3.</summary>
    public const double RestDiameter = 5.0;

    /// <summary>A filament whose transmission length is shorter counts as pigmented, else as clear, mm. Typical.</summary>
    public const double PigmentedLength = 0.8;
}
