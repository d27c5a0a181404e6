using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Physics.Heat;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Floors;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Marks;

/// <summary>
/// Decides vents: radial slots through the floor, under the board, so that no LED looks through them. <c>auto</c> makes them when, by the
/// model of heat that the checks judge by, a sealed housing's air warms more than its electronics should bear, and where air gets to them.
/// </summary>
internal static class VentDecision
{
    // Slots and ribs, mm. Source: trade practice, 1.5 to 2.0 wide, ribs of 2.0.
    private const double Slot = 1.8;
    private const double Rib = 2.0;
    private const double Longest = 14.0;
    private const double Shortest = 6.0;
    private const double FromEdge = 2.0;

    // Air rise above which a sealed housing is vented, K. Source: limits that hold together with their own ambient, 20 to 25.
    private const double AirRise = 20;

    // Every so many degrees a slot is tried.
    private const int Directions = 180;

    /// <summary>The vents of a tub; none is a valid answer.</summary>
    public static Decided<ImmutableArray<VentPlan>> Decide(HousingDraft draft, FrontSide front, MountPlan? mount, Region taken)
    {
        var reasons = new Reasons();
        string from = Reasons.Origin(draft.File, "housing.vents");
        double rise = SealedRise(draft, front, mount);
        bool covered = PlannedHeat.FloorIsCovered(draft.File, mount);
        string heat = string.Create(CultureInfo.InvariantCulture, $"sealed, the air rises by about {rise:0} K at the planned brightness");
        bool wanted = draft.File.Housing.Vents == VentKind.Floor
            || (draft.File.Housing.Vents == VentKind.Auto && rise > AirRise && !covered);
        if (!wanted)
        {
            reasons.Choice("vents", "none", from, draft.File.Housing.Vents == VentKind.None ? "as asked"
                : rise > AirRise ? heat + "; the floor lies against wall or table, where slots would carry no air" : heat);
            return reasons.Of<ImmutableArray<VentPlan>>([]);
        }

        ImmutableArray<VentPlan> vents = Slots(draft, taken);
        reasons.Choice("vents", $"{vents.Length} slots, {Reasons.Mm(Math.Round(vents.Sum(vent => vent.Outline.Area) / 100, 1))} cm2", from,
            draft.File.Housing.Vents == VentKind.Floor ? "as asked; under the board, where no LED looks through" : heat);
        if (vents.IsEmpty)
        {
            reasons.Refuse(
                "vents-without-place", "vents", "Posts, parts and lettering leave no place for slots in the floor.",
                0, 1, "slots", new Point3(0, 0, 0), "vents: none with a lower brightness, or a wider housing");
        }

        return reasons.Of(vents);
    }

    // Slots on two circles at most, each as long as the floor allows, never nearer to each other than a rib.
    private static ImmutableArray<VentPlan> Slots(HousingDraft draft, Region taken)
    {
        Region room = FloorRoom.Inside(draft, draft.Stack.FloorTop).Intersect(FloorRoom.Outside(draft, FromEdge)).Less(taken);
        if (room.IsEmpty)
        {
            return [];
        }

        double outer = Math.Max(room.Bounds.Max.X, room.Bounds.Max.Y) - (Slot / 2);
        double band = draft.Shell.Round is RoundShell { HasBore: true } ring ? (ring.Inner - ring.BoreOuter) / 2 : outer * 0.6;
        double length = Math.Min(Longest, band - (2 * FromEdge));
        if (length < Shortest)
        {
            return [];
        }

        double middle = draft.Shell.Round is RoundShell { HasBore: true } r ? (r.Inner + r.BoreOuter) / 2 : outer * 0.6;
        double inner = middle - (length / 2);
        double step = Math.Max(2 * (Slot + Rib) / inner * (180 / Math.PI) / 2, 360.0 / Directions);
        int count = Math.Max(1, (int)(360 / step));
        var found = ImmutableArray.CreateBuilder<VentPlan>();
        for (int i = 0; i < count; i++)
        {
            Angle at = draft.File.Up + Angle.FromDegrees((i + 0.5) * 360.0 / count);
            Region slot = Region.Slot(Point2.Polar(inner + (Slot / 2), at), Point2.Polar(inner + length - (Slot / 2), at), Slot);
            if (room.Contains(slot))
            {
                found.Add(new VentPlan(slot));
            }
        }

        return found.ToImmutable();
    }

    private static double SealedRise(HousingDraft draft, FrontSide front, MountPlan? mount)
    {
        HeatInput sealedBox = PlannedHeat.InputOf(draft.File, draft.Shell, draft.Stack, front, mount, []);
        return new RememberedHeat(draft.Memory).AirCelsius(sealedBox, PlannedHeat.CoefficientsOf(draft.File.Use.Air))
            - sealedBox.AmbientCelsius;
    }
}
