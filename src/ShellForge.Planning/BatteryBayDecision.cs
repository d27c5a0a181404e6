using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Batteries;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Floors;

namespace ShellForge.Planning;

/// <summary>
/// The bay of a battery: its section from battery, strap and printer, its place under the board before the heights are decided, and its
/// heights after. All that stands on the floor is decided later and keeps off it.
/// </summary>
internal static class BatteryBayDecision
{
    // What a pouch may grow in thickness over its life, as a share. Common practice: 10 %; check the data sheet.
    private const double Swelling = 0.1;

    // Walls of a pouch's pocket as a share of its thickness: it can't slide out under its strap, and fingers get hold of it.
    private const double PouchWall = 0.7;

    // At each end of a cylinder for the welded tab with its bend, and at one end of a pouch for its wires, mm. Typical.
    private const double TabRoom = 2.0;
    private const double PouchWires = 4.0;
    private const double WireNotch = 5.0;
    private const int WallLines = 3;
    private const double RimChamfer = 0.4;
    private const int RidgeLines = 2;

    // How often the longest battery that fits is halved towards.
    private const int Halvings = 6;

    /// <summary>The place of the bay; null without a battery, and, with a refusal, without a place.</summary>
    /// <param name="given">The board file, lines and layers.</param>
    /// <param name="choice">Walls and openings in plan.</param>
    /// <param name="posts">Posts whose place is settled.</param>
    /// <param name="taken">What a second board has taken already.</param>
    public static Decided<BatteryPlace?> Place(
        Given given, InPlan choice, ImmutableArray<PostInPlan> posts, Region taken)
    {
        var reasons = new Reasons();
        if (given.File.Housing.Battery is not { } battery)
        {
            return reasons.Of<BatteryPlace?>(null);
        }

        BatteryBaySize size = SizeOf(given, battery, reasons);
        Region free = RoomUnderBoard.Free(given, choice, posts, taken);
        Region roomy = RoomUnderBoard.Roomy(given, choice, free);
        var anywhere = new PlacesUnderBoard(given.File.Board, free);
        BatteryPlace? place = BatteryPlace.Best(new PlacesUnderBoard(given.File.Board, roomy), size, given.File.Up)
            ?? BatteryPlace.Best(anywhere, size, given.File.Up);
        if (place is null)
        {
            Refuse(given.File, size, anywhere, reasons);
            return reasons.Of<BatteryPlace?>(null);
        }

        if (RoomUnderBoard.TooHigh(given.File, place.BelowBoard) is double height)
        {
            reasons.Refuse(
                "battery-without-place", "battery",
                $"Under {place.Under ?? "the board"} it makes the housing {Reasons.Mm(Math.Ceiling(height))} mm high, "
                    + $"{Reasons.Mm(Lattice.LimitMillimetres)} can be made. It is planned without it.",
                height, Lattice.LimitMillimetres, "mm", new Point3(place.At.X, place.At.Y, 0),
                "a place beside what hangs there ('at'), or lower parts on the board");
            return reasons.Of<BatteryPlace?>(null);
        }

        string where = $"x {Reasons.Mm(Math.Round(place.At.X, 1) + 0)}, y {Reasons.Mm(Math.Round(place.At.Y, 1) + 0)} from the middle, "
            + $"along {Reasons.Mm(Math.Round(place.Along.Normalized.Degrees, 1))} degrees";
        reasons.Choice("battery.place", where, Reasons.Origin(given.File, "housing.battery.at"),
            battery.At is not null ? "as asked" : place.Under is null ? "under nothing that hangs from the board, nearest to the middle"
                : $"the place that costs least depth: under {place.Under}, which hangs {Reasons.Mm(Math.Round(place.Hanging, 2))} down");
        return reasons.Of<BatteryPlace?>(place with { Along = Towards(given.File, place) });
    }

    /// <summary>The bay at its heights; null without one.</summary>
    public static Decided<BatteryBayPlan?> AtHeight(Given given, BatteryPlace? place, BoardLevels levels)
    {
        var reasons = new Reasons();
        if (place is null)
        {
            return reasons.Of<BatteryBayPlan?>(null);
        }

        double seat = given.Basis.Up(levels.FloorTop + place.Size.Lift);
        var bay = new BatteryBayPlan
        {
            Size = place.Size,
            At = place.At,
            Along = place.Along,
            FloorTop = levels.FloorTop,
            Seat = seat,
            Rim = given.Basis.Up(seat + place.Size.RimOverSeat),
        };
        reasons.Length("battery.seat", bay.Seat, Reasons.Rule, "the strap goes under it, over the floor");
        reasons.Length("battery.rim", bay.Rim, Reasons.Rule, place.Size.IsRound
            ? "half of the cylinder lies in its trough, the other half is for fingers"
            : "most of the pouch lies between walls, the rest is for fingers");
        return reasons.Of<BatteryBayPlan?>(bay);
    }

    private static BatteryBaySize SizeOf(Given given, BatterySpec battery, Reasons reasons)
    {
        (BoardFile file, PrintBasis basis) = given;
        StrapAsSold strap = battery.Strap == StrapKind.Tie ? StrapAsSold.Tie : StrapAsSold.HookAndLoop;
        bool round = battery.Form == BatteryForm.Round;
        Sourced fit = file.Print.Printer.BatteryFit;
        double swollen = round ? battery.Thickness : battery.Thickness * (1 + Swelling);
        double lift = strap.SlotHeight(basis);
        double pocket = Math.Round(battery.Width + fit, 3);
        double ends = round ? 2 * TabRoom : PouchWires;
        (double roof, double rise) = strap.Roof(given);
        double rim = Math.Max(StrapAsSold.LeastLintel + rise, round ? pocket / 2 : PouchWall * battery.Thickness);
        reasons.Choice("battery.cell", battery.Count == 1 ? battery.Name : $"{battery.Count} of {battery.Name}",
            Reasons.Origin(file, "housing.battery"), $"{Reasons.Mm(battery.Grams)} g each");
        reasons.Length("battery.pocket-width", pocket, Reasons.Origin(file, "housing.battery"),
            Reasons.Measured("the battery and", fit) ?? $"the battery and {Reasons.Mm(fit)}");
        reasons.Length("battery.pocket-length", Math.Round(battery.Length + fit + ends, 3), Reasons.Origin(file, "housing.battery"),
            round ? $"the battery and {Reasons.Mm(TabRoom)} at each end for its tab"
                : $"the pouch and {Reasons.Mm(PouchWires)} for its wires");
        if (!round)
        {
            reasons.Length("battery.swollen", Math.Round(swollen, 3), Reasons.Rule,
                $"the pouch may swell by {Reasons.Mm(100 * Swelling)} % over its life");
        }

        return new BatteryBaySize
        {
            Battery = battery,
            PocketWidth = pocket,
            PocketLength = Math.Round(battery.Length + fit + ends, 3),
            Ridge = basis.Wall(round ? RidgeLines : WallLines),
            Wall = basis.Wall(WallLines),
            Lift = lift,
            RimOverSeat = rim,
            Swollen = swollen,
            Depth = basis.UpDistance(lift + swollen + strap.Closed + PlanRules.Beside),
            RimChamfer = round ? 0 : RimChamfer,
            StrapGap = strap.Slot,
            SlotRoof = roof,
            SlotRise = rise,
            StrapBeside = strap.Beside,
            WireNotch = Math.Min(WireNotch, pocket / 2),
        };
    }

    // The wires' end looks to where they go.
    private static Angle Towards(BoardFile file, BatteryPlace place)
    {
        ImmutableArray<Point2> ends = BatteryHands.Ends(file);
        bool behind = ends.Length > 0
            && ends.Average(end => Point2.Dot(end - place.At, Point2.Polar(1, place.Along))) < 0;
        return (behind ? place.Along + Angle.FromDegrees(180) : place.Along).Normalized;
    }

    private static void Refuse(BoardFile file, BatteryBaySize size, PlacesUnderBoard places, Reasons reasons)
    {
        BatterySpec battery = size.Battery;
        string many = battery.Count == 1 ? battery.Name : $"{battery.Count} of {battery.Name} side by side";
        string bore = file.Board.Outline is RingOutline && file.Housing.BoreOpen != false ? "'bore: closed', " : "";
        if (battery.At is { } at)
        {
            double stands = Math.Round(places.StandsOut(BatteryPlace.Body(size, file.Up), at), 1);
            reasons.Refuse(
                "battery-without-place", "battery",
                $"At its place the bay of {many}, {Reasons.Mm(Math.Round(size.OuterLength, 1))} x "
                    + $"{Reasons.Mm(Math.Round(size.OuterWidth, 1))} mm, meets walls, posts or openings. "
                    + "The housing is planned without a bay.",
                stands, 0, "mm2", new Point3(at.X, at.Y, 0),
                $"{bore}leave 'at' and 'along' out, or take a smaller battery");
            return;
        }

        double fits = Longest(size, places, file.Up);
        reasons.Refuse(
            "battery-without-place", "battery",
            $"The bay of {many} finds no place between walls and posts: "
                + (fits > 0
                    ? $"it is {Reasons.Mm(battery.Length)} mm long, and one as wide as it may be {Reasons.Mm(fits)} mm long at most."
                    : "it is too wide at any length."),
            Math.Max(0, fits), battery.Length, "mm", default,
            $"{bore}a smaller battery at 'battery', or fewer side by side ('count')");
    }

    // To a millimetre, downwards; 0 where not even a short one of that width fits.
    private static double Longest(BatteryBaySize size, PlacesUnderBoard places, Angle up)
    {
        (double fits, double not) = (0, size.Battery.Length);
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (fits + not) / 2;
            BatteryBaySize shorter = size with { PocketLength = size.PocketLength - size.Battery.Length + middle };
            bool found = BatteryPlace.Best(places, shorter, up) is not null;
            (fits, not) = found ? (middle, not) : (fits, middle);
        }

        return Math.Floor(fits);
    }
}
