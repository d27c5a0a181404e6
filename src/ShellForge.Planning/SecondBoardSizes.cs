using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Floors;
using ShellForge.Planning.Posts;
using ShellForge.Planning.SecondBoards;

namespace ShellForge.Planning;

/// <summary>
/// How a second board on the floor is held: by screws where its holes let them pass, by clips where the filament bends far enough, else by
/// a strap; and how high it stands for that.
/// </summary>
internal static class SecondBoardSizes
{
    // Between a routed edge and printed walls, mm: board houses keep an outline to 0.15, printers a wall to as much. Typical.
    private const double Gap = 0.3;

    // Seats reach so far under the rim, mm, and so far along it, at the most a share of the shorter side.
    private const double SeatReach = 1.2;
    private const double SeatLength = 6.0;
    private const double SeatShare = 0.28;
    private const int WallLines = 3;

    // Clips: as far over the edge as still holds where the board lies against the walls across, mm.
    private const double HeldAcross = 0.3;
    private const double ClipGap = 0.2;
    private const double ClipWidth = 6.0;
    private const double ClipBehind = 0.4;
    private const int ClipLines = 2;

    // Clips that want the board higher than this are refused; left open, a strap is taken from a lower height on, mm.
    private const double MostLift = 14;
    private const double MostLiftUnasked = 10;

    // A board a tenth thicker than listed still goes under the hooks, with so much more, mm.
    private const double ThicknessSpread = 0.1;
    private const double Over = 0.05;

    // A tie holds a board shorter than this, hook and loop a longer one, mm; walls beside its slots.
    private const double TieBelow = 24;
    private const double StrapLeg = 2.0;

    // Wires bend in so many of their diameters, as the rule on bends wants it.
    private const double BendOfWire = 4;

    // A soldering iron's tip stands in a circle of this radius over an insert, with air, mm.
    private const double IronRoom = 3.3;

    private const int FewestScrews = 2;

    // The insert is held down by what its screw clamps: the hole over it is narrower than its body by this, mm.
    private const double HeldInsert = 0.4;

    /// <summary>Leads of the LED board that go to the second board.</summary>
    public static ImmutableArray<WireLead> Wires(BoardFile file) =>
        [.. file.Board.Wires.Where(wire => wire.To == SecondBoardSpec.WireWord)];

    /// <summary>What holds it.</summary>
    public static Decided<SecondBoardSize> Of(Given given, SecondBoardSpec board)
    {
        var reasons = new Reasons();
        string? notScrewed = WhyNotScrewed(given, board);
        (SecondBoardClips clips, double clipLift, double strain) = Clips(given, board);
        bool clipped = clipLift <= MostLift;
        SecondBoardHold hold = board.Hold switch
        {
            SecondBoardHold.Screws when notScrewed is null => SecondBoardHold.Screws,
            SecondBoardHold.Clips when clipped => SecondBoardHold.Clips,
            SecondBoardHold.Auto when notScrewed is null => SecondBoardHold.Screws,
            SecondBoardHold.Auto when clipLift <= MostLiftUnasked => SecondBoardHold.Clips,
            _ => SecondBoardHold.Strap,
        };
        string origin = Reasons.Origin(given.File, "housing.second-board.hold");
        Tell(given, board, (hold, notScrewed, clipLift, strain), reasons);
        reasons.Choice("second-board.hold", hold.ToString().ToLowerInvariant(), origin, hold switch
        {
            SecondBoardHold.Screws => "its holes let the housing's screws pass",
            SecondBoardHold.Clips when board.Hold == SecondBoardHold.Clips => "as asked",
            SecondBoardHold.Clips => string.Create(CultureInfo.InvariantCulture, $"no screws, since {notScrewed}"),
            _ when board.Hold == SecondBoardHold.Strap => "as asked",
            _ => $"screws or clips do not work here: clips would lift it {Reasons.Mm(Math.Round(clipLift, 1))} mm",
        });
        SecondBoardSize size = Sized(given, board, hold, (clips, clipLift), reasons);
        reasons.Length("second-board.depth", size.Depth, Reasons.Rule, "seat, laminate, what stands on it, what holds it, and air");
        return reasons.Of(size);
    }

    private static void Tell(Given given, SecondBoardSpec board,
        (SecondBoardHold Hold, string? NotScrewed, double ClipLift, double Strain) found, Reasons reasons)
    {
        if (board.Hold == SecondBoardHold.Screws && found.NotScrewed is { } why)
        {
            reasons.Replace("second-board-held-otherwise", "second board",
                $"The second board is not screwed down, since {why}: a strap holds it.", board.HoleDiameter,
                given.File.Housing.Screw?.ThreadDiameter.Value ?? 0, "mm", default,
                "an insert that fits its holes ('insert:'), or 'hold: clips' or 'hold: strap' at the second board");
        }

        if (board.Hold == SecondBoardHold.Clips && found.Hold != SecondBoardHold.Clips)
        {
            FilamentProfile filament = given.File.Print.Shell;
            reasons.Replace("second-board-held-otherwise", "second board", string.Create(CultureInfo.InvariantCulture,
                    $"Clips that {filament.Name} bears across its layers would lift the second board {found.ClipLift:0.0} mm off the "
                        + $"floor: a strap holds it."),
                Math.Round(found.ClipLift, 2), MostLift, "mm", default,
                "'hold: strap' at the second board, or a tougher filament for the shell ('print: {shell: petg-black}')");
        }

        if (found.Hold == SecondBoardHold.Clips)
        {
            reasons.Choice("second-board.clips.strain",
                string.Create(CultureInfo.InvariantCulture, $"{100 * found.Strain:0.00} %"), given.File.Print.Shell.Name,
                string.Create(CultureInfo.InvariantCulture,
                    $"it repeats {100 * (double)given.File.Print.Shell.StrainAcrossLayers:0.0} % across its layers"));
        }
    }

    private static SecondBoardSize Sized(Given given, SecondBoardSpec board, SecondBoardHold hold,
        (SecondBoardClips Clips, double Lift) clips, Reasons reasons)
    {
        (BoardFile file, PrintBasis basis) = given;
        double floor = file.Housing.Floor ?? PlanRules.Floor;
        SecondBoardStrap strap = Strap(given, board);
        var lifts = new List<(string What, double Height)>
        {
            ("the least room under a board", PlanRules.LeastBelowBoard),
            ("what is under the second board", board.Below + PlanRules.BelowPartsOf(file)),
        };
        var over = new List<double> { board.Above, 0 };
        if (hold == SecondBoardHold.Screws)
        {
            lifts.Add(("the inserts in its posts", SecondBoardPosts.ScrewOf(given, board).Depth + PlanRules.PlasticBelow - floor));
            over.Add(file.Housing.Screw!.HeadHeight);
        }
        else if (hold == SecondBoardHold.Clips)
        {
            lifts.Add(("its clips, which must be long to bend across their layers", clips.Lift));
            over.Add(clips.Clips.Rise);
        }
        else
        {
            lifts.Add(("the strap under it", board.Below + strap.Slot));
            lifts.Add(("the strap's slots in its walls", strap.Slot + strap.Rise + StrapAsSold.LeastLintel - board.Thickness));
            over.Add(board.Above + Sold(board).Closed);
        }

        ImmutableArray<WireLead> wires = Wires(file);
        double thickest = wires.Select(wire => wire.Diameter).DefaultIfEmpty(0).Max();
        over.Add(BendOfWire * thickest);
        (string driver, double least) = lifts.MaxBy(each => each.Height);
        double lift = basis.UpDistance(least);
        if (!wires.IsEmpty)
        {
            reasons.Length("second-board.wire-bend", BendOfWire * thickest, Reasons.Rule,
                $"room at its end for wires of {Reasons.Mm(thickest)} mm: {Reasons.Mm(BendOfWire)} of their diameters");
        }

        bool seated = hold != SecondBoardHold.Screws;
        double shorter = Math.Min(board.Length, board.Width);
        return new SecondBoardSize
        {
            Board = board,
            Hold = hold,
            Lift = lift,
            LiftFor = driver,
            Depth = basis.UpDistance(lift + board.Thickness + over.Max() + PlanRules.Beside),
            Gap = seated ? Gap : 0,
            Wall = seated ? basis.Wall(WallLines) : 0,
            SeatReach = seated ? SeatReach : 0,
            SeatLength = seated ? Math.Round(Math.Min(SeatLength, SeatShare * shorter), 2) : 0,
            PostDiameter = seated ? 0 : InsertHoleDecision.BossDiameter(file.Housing.Insert!, basis),
            Clips = hold == SecondBoardHold.Clips ? clips.Clips : null,
            Strap = hold == SecondBoardHold.Strap ? strap : null,
            WireWidth = Math.Round(wires.Sum(wire => wire.Conductors * wire.Diameter), 3),
            WireBend = BendOfWire * thickest,
        }.WithTaken(PlanRules.Beside, IronRoom);
    }

    // Null where screws work.
    private static string? WhyNotScrewed(Given given, SecondBoardSpec board)
    {
        HousingSpec housing = given.File.Housing;
        return board.Holes.Length < FewestScrews ? "it has fewer than two holes"
            : housing.Insert is not { } insert || housing.Screw is not { } screw ? "the housing has no insert"
            : board.HoleDiameter < screw.ThreadDiameter ? $"{screw.Thread} does not pass its holes of {Reasons.Mm(board.HoleDiameter)} mm"
            : board.HoleDiameter > insert.OuterDiameter - HeldInsert
                ? $"its holes of {Reasons.Mm(board.HoleDiameter)} mm would let the inserts through"
            : Crowded(board, InsertHoleDecision.BossDiameter(insert, given.Basis)) ? "its holes stand too near to each other for posts"
            : null;
    }

    private static bool Crowded(SecondBoardSpec board, double post) => board.Holes.SelectMany((hole, i) =>
        board.Holes.Skip(i + 1).Select(other => Point2.Distance(hole, other))).Any(apart => apart < post + PlanRules.Beside);

    // A beam held at one end, its root strained by bending its other end. Source: beam theory, snap-fit design guides.
    private static (SecondBoardClips Clips, double Lift, double Strain) Clips(Given given, SecondBoardSpec board)
    {
        double thickness = given.Basis.Wall(ClipLines);
        const double reach = Gap + HeldAcross;
        double play = Math.Round((ThicknessSpread * board.Thickness) + Over, 2);
        double bend = reach + given.File.Print.Printer.Accuracy;
        double allowed = given.File.Print.Shell.StrainAcrossLayers;
        double over = board.Thickness + play + reach;
        double lift = Math.Max(
            Math.Sqrt(1.5 * thickness * bend / allowed) - over, board.Below + PlanRules.BelowPartsOf(given.File));
        double length = given.Basis.UpDistance(lift) + over;
        return (
            new SecondBoardClips(ClipGap, thickness, Math.Min(ClipWidth, Math.Round(Math.Max(board.Length, board.Width) / 3, 1)),
                Math.Round(bend + ClipBehind, 3), reach, play),
            lift, 1.5 * thickness * bend / (length * length));
    }

    private static StrapAsSold Sold(SecondBoardSpec board) =>
        Math.Max(board.Length, board.Width) < TieBelow ? StrapAsSold.Tie : StrapAsSold.HookAndLoop;

    private static SecondBoardStrap Strap(Given given, SecondBoardSpec board)
    {
        StrapAsSold sold = Sold(board);
        (double roof, double rise) = sold.Roof(given);
        return new SecondBoardStrap(
            sold == StrapAsSold.Tie, sold.Slot, sold.SlotHeight(given.Basis), roof, rise, StrapLeg, sold.Beside);
    }
}
