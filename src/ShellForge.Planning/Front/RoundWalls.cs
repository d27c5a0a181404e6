using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Front;

/// <summary>Walls round a ring or disc of light: rims at its edges, walls halfway between LEDs and between their circles.</summary>
/// <param name="Region">All walls in plan.</param>
/// <param name="Wall">Wall thickness, mm.</param>
/// <param name="OuterRadius">Outer face of the outer rim, mm.</param>
/// <param name="InnerRadius">Outer face of the inner rim, mm; 0 without one.</param>
internal sealed record RoundWalls(Region Region, double Wall, double OuterRadius, double InnerRadius) : BaffleWalls(Region, Wall)
{
    // Bridges between two rims: how many are enough, and how far they stay off LEDs and their companions, mm.
    private const int BridgeCount = 6;
    private const double BridgeClearance = 0.25;

    // How far rims stand back behind the bezel so that they are not seen, mm.
    private const double RimSet = 0.6;

    // An inner rim tighter than this is left out, mm: walls meet in the middle instead.
    private const double SmallestRim = 2.5;

    // Spokes reach into the rims by this, mm.
    private const double Overlap = 0.2;

    // Pixels on a circle smaller than this share of their body sit on the axis.
    private const double OnAxisShare = 0.5;

    // Ribs that press the baffle down, and ribs by which it stays in a cover that turns: how many, how long or wide, how far they press,
    // mm.
    private const int CrushRibCount = 8;
    private const double CrushRibLength = 2.0;
    private const int GripRibCount = 6;
    private const double GripRibWidth = 0.6;
    private const double GripPress = 0.1;

    // The tooth's root lies this far inside the rim's face, mm; places for it are tried in steps of so many degrees.
    private const double ToothRoot = 0.4;
    private const int ToothTries = 36;
    private const int ToothStep = 5;

    /// <summary>The walls for a draft.</summary>
    public static RoundWalls Of(HousingDraft draft, LitBand band, BaffleSection section, bool cells)
    {
        (BoardFile file, CoverRoom room) = (draft.File, draft.Room);
        double wall = section.Wall;
        double outer = band.Outer + Math.Clamp(room.OuterRadius - section.SeatGap - wall - band.Outer, 0, RimSet);
        double inner = band.Inner - Math.Clamp(band.Inner - wall - section.SeatGap - room.InnerRadius, 0, RimSet);
        var shells = new Shells(draft.Shell.Round?.Count ?? Ring.CountFor(outer + wall));
        PixelCircle[] circles = [.. LitBand.Circles(file.Board).Where(c => !OnAxis(c)).OrderBy(c => c.Diameter)];
        bool centre = LitBand.Circles(file.Board).Any(OnAxis);

        var pieces = ImmutableArray.CreateBuilder<Region>();
        pieces.Add(shells.Between(outer, outer + wall));
        bool rimInside = band.Inner > 0 && inner - wall > SmallestRim;
        if (rimInside)
        {
            pieces.Add(shells.Between(inner - wall, inner));
        }

        if (cells && circles.Length > 0)
        {
            double from = rimInside ? inner : InnermostBoundary(circles[0], centre);
            if (!rimInside && from > SmallestRim)
            {
                pieces.Add(shells.Between(from - wall, from));
            }

            for (int i = 0; i < circles.Length; i++)
            {
                bool last = i == circles.Length - 1;
                double to = last ? outer : (circles[i].Diameter + circles[i + 1].Diameter) / 4;
                if (!last)
                {
                    pieces.Add(shells.Between(to - (wall / 2), to + (wall / 2)));
                }

                double start = from > SmallestRim ? from - Overlap : 0;
                pieces.AddRange(SpokeDirections(circles[i]).Select(at => Strips.Radial(at, wall, start, to + Overlap)));
                from = to;
            }
        }

        return new RoundWalls(Region.Union(pieces), wall, outer + wall, rimInside ? inner : 0);
    }

    /// <inheritdoc />
    public override Region Bridges(CircuitBoard board, bool cells)
    {
        if (cells || InnerRadius == 0)
        {
            return Region.Empty;
        }

        Region taken = Region.Union(PartEnvelope.OnTop(board).Select(part => part.Outline));
        var bridges = ImmutableArray.CreateBuilder<Region>();
        double share = 360.0 / BridgeCount;
        for (int i = 0; i < BridgeCount; i++)
        {
            (Region bridge, double clear) = Enumerable.Range(0, (int)share)
                .Select(off => Strips.Radial(
                    Angle.FromDegrees((i * share) + off), Wall, InnerRadius - Overlap, OuterRadius - Wall + Overlap))
                .Select(strip => (strip, taken.IsEmpty ? double.PositiveInfinity : taken.Distance(strip)))
                .MaxBy(candidate => candidate.Item2);
            if (clear >= BridgeClearance)
            {
                bridges.Add(bridge);
            }
        }

        return Region.Union(bridges);
    }

    /// <inheritdoc />
    public override ToothPlan? Tooth(ToothWish wish, Region standing)
    {
        double root = OuterRadius - Wall;
        for (int step = 0; step < ToothTries; step++)
        {
            Angle candidate = (wish.Key + Angle.FromDegrees(180 + ((step % 2 == 0 ? ToothStep : -ToothStep) * step))).Normalized;
            Region rootRegion = Strips.Radial(candidate, wish.Width, root, OuterRadius);
            if (standing.Intersect(rootRegion).Area > Stands * Wall * wish.Width && wish.Taken.IsFree(candidate, wish.Width, wish.Width))
            {
                return new ToothPlan(candidate, wish.Width, OuterRadius - ToothRoot, OuterRadius, OuterRadius + wish.SeatGap + wish.Reach,
                    wish.Bottom);
            }
        }

        return null;
    }

    /// <inheritdoc />
    public override ImmutableArray<Region> CrushRibs(Region standing, double lineWidth)
    {
        double radius = OuterRadius - (Wall / 2);
        return
        [
            .. Enumerable.Range(0, CrushRibCount)
                .Select(i => Angle.FromDegrees((i + 0.5) * 360 / CrushRibCount))
                .Select(at => PartEnvelope.Rectangle(
                    Point2.Polar(radius, at), CrushRibLength, Math.Min(lineWidth, Wall - Overlap), at + Angle.FromDegrees(90)))
                .Where(rib => standing.Contains(rib)),
        ];
    }

    /// <inheritdoc />
    public override ImmutableArray<Region> GripRibs(Region standing, double seatGap, double lineWidth)
    {
        double width = Math.Max(GripRibWidth, lineWidth);
        return
        [
            .. Enumerable.Range(0, GripRibCount)
                .Select(i => Angle.FromDegrees(i * 360.0 / GripRibCount))
                .Select(at => Strips.Radial(at, width, OuterRadius - ToothRoot, OuterRadius + seatGap + GripPress))
                .Where(rib => !standing.Intersect(rib).IsEmpty),
        ];
    }

    private static bool OnAxis(PixelCircle circle) =>
        circle.Count == 1 ? circle.Pixels[0].At.Length < OnAxisShare * circle.Led.Length
            : circle.Diameter < OnAxisShare * circle.Led.Length;

    // Where the innermost circle's cells end towards the axis when the window has no inner edge there.
    private static double InnermostBoundary(PixelCircle circle, bool centre) => centre
        ? circle.Diameter / 4
        : (circle.Diameter - circle.Pitch) / 2;

    // Halfway between neighbours; a skipped place makes a wider cell.
    private static IEnumerable<Angle> SpokeDirections(PixelCircle circle)
    {
        double[] at = [.. circle.Pixels.Select(pixel => Angle.Of(pixel.At).Normalized.Degrees).Order()];
        if (at.Length < 2)
        {
            yield break;
        }

        for (int i = 0; i < at.Length; i++)
        {
            double next = i + 1 < at.Length ? at[i + 1] : at[0] + 360;
            yield return Angle.FromDegrees((at[i] + next) / 2);
        }
    }

    // Ring walls on the shell's own count and phase.
    private sealed record Shells(int Count)
    {
        public Region Between(double inner, double outer)
        {
            var ring = new Ring(outer, RingSide.Inside, Count, Angle.Zero);
            return Region.Annulus(ring, ring.Coaxial(inner, RingSide.Outside));
        }
    }
}
