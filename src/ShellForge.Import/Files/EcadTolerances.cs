
namespace ShellForge.Import.Files;

/// <summary>
/// Every length and ratio the import compares with, in mm unless said otherwise, with its reason.
/// Hand-over files carry 1 nm to 25 um of rounding, board makers hold 0.1 mm; these lie between.
/// </summary>
internal static class EcadTolerances
{
    /// <summary>Two ends this near are one point: a thousandth of what any board maker holds, fifty times what 4.6 files round.</summary>
    public const double SamePoint = 0.0005;

    /// <summary>Loose ends this near are joined and the largest gap is reported; wider gaps leave the outline open.</summary>
    public const double Joint = 0.05;

    /// <summary>A stroke shorter than this is a dot of a pen, not an edge.</summary>
    public const double ShortestStroke = 1e-5;

    /// <summary>Arc centre off the perpendicular bisector by more than this is worth a word.</summary>
    public const double ArcCentre = 0.02;

    /// <summary>Largest deviation of a vertex from a fitted circle: the coarsest inch format in use steps by 0.025.</summary>
    public const double CircleFit = 0.02;

    /// <summary>A many-cornered loop counts as a circle while its chords leave it by no more than this part of the radius.</summary>
    public const double CircleChordRatio = 0.02;

    /// <summary>... or by no more than this, for small holes drawn with few chords.</summary>
    public const double CircleChord = 0.05;

    /// <summary>
    /// Holes of equal diameter this near are one hole, drilled once. Files of one board round to 1 um (mm) or 2.5 um (inch).
    /// </summary>
    public const double SameHole = 0.01;

    /// <summary>A round cutout and a drilled hole are the same opening within this: drills are listed as rounded tool sizes.</summary>
    public const double SameOpening = 0.06;

    /// <summary>A routed slot shorter than this is a round hole.</summary>
    public const double RoundSlot = 0.01;

    /// <summary>
    /// A place that a pattern says and the place in the file, at most: files round to 1 to 25 um, layouts place by hand on a 10 um grid,
    /// and a third of what board makers hold is not seen.
    /// </summary>
    public const double PatternPlace = 0.03;

    /// <summary>A rounder number may move places by so much beyond what the files' own rounding does: half of a 10 um grid.</summary>
    public const double RoundingPlace = 0.005;

    /// <summary>A turn that a pattern says and the turn in the file, at most, degrees: files round turns to whole ones.</summary>
    public const double PatternTurn = 0.6;

    /// <summary>A rounder turn may differ by so much beyond what the files' own rounding does, degrees.</summary>
    public const double RoundingTurn = 0.02;

    /// <summary>How far places may lie from the files' with rounder numbers.</summary>
    /// <param name="best">How far they lie with the numbers that fit best.</param>
    /// <param name="share">What this number may take with those before it: each leaves some room to the next.</param>
    public static double RoomToRound(double best, double share) => Math.Min(PatternPlace, best + (share * RoundingPlace));

    /// <summary>How far a hole may lie outside the outline and still speak for a reading of its numbers.</summary>
    public const double InsideMargin = 1.0;

    /// <summary>A part's point may lie this far outside the edge: connectors overhang, and their origin is often the mouth.</summary>
    public const double PartOverhang = 15.0;

    /// <summary>Outlines whose sizes agree within this come from the same board.</summary>
    public const double SameOutline = 0.05;

    /// <summary>A closed loop beside the board counts as a second board from this part of its area on.</summary>
    public const double SecondBoardArea = 0.2;

    /// <summary>Holes from this diameter on take a screw, a pin or a wire (M1.4 and up need 1.5).</summary>
    public const double SmallestMountingHole = 1.5;

    /// <summary>Round cutouts up to this diameter take a screw (M6 washer-less); larger ones are openings.</summary>
    public const double LargestMountingHole = 6.6;

    /// <summary>Largest board any reading may give: a metre. Beyond it the unit is wrong.</summary>
    public const double LargestBoard = 1000.0;

    /// <summary>Smallest board any reading may give. Below it the unit is wrong.</summary>
    public const double SmallestBoard = 3.0;

    /// <summary>Largest coordinate that is taken as a number at all, in mm.</summary>
    public const double LargestCoordinate = 1e6;
}
