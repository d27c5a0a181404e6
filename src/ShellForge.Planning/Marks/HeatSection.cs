using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Physics.Heat;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Marks;

/// <summary>
/// A planned housing in rings round its axis, as the model of heat takes it. An outline that is not round counts as the circle of its area;
/// window and baffle then count evenly over it.
/// </summary>
internal static class HeatSection
{
    private const double Metre = 1000;
    private const double SquareMetre = 1_000_000;

    // Board edge and wall that would coincide as circles of equal area are kept apart by so much, m.
    private const double LeastGap = 1e-4;

    /// <summary>The rings, with what lies in each.</summary>
    public static ImmutableArray<SectionRing> Of(BoardFile file, ShellPlan shell, FrontSide front, ImmutableArray<VentPlan> vents)
    {
        Region board = file.Board.Outline.Region;
        Region room = shell.Cavity.Filled();
        double to = RadiusOf(room.Area);
        double from = RadiusOf(room.Area - shell.Cavity.Area);
        double boardOuter = Math.Min(RadiusOf(board.Filled().Area), to - LeastGap);
        double bore = board.Contains(new Point2(0, 0)) ? 0 : RadiusOf(board.Filled().Area - board.Area);
        double boardInner = from > 0 ? Math.Max(from + LeastGap, bore) : bore;
        ImmutableArray<SectionRing> rings = SectionRings.Of(from, boardInner, boardOuter, to);
        bool round = shell.Round is not null;
        double scale = round ? 1 : boardOuter * Metre / Math.Max(LeastGap, board.Loops.SelectMany(loop => loop).Max(p => p.Length));
        Region window = front.Cover.Window;
        Region walls = front.Baffle?.Walls ?? Region.Empty;
        double[] leds = new double[rings.Length];
        double[] controller = new double[rings.Length];
        double[] others = new double[rings.Length];
        double[] slots = new double[rings.Length];
        foreach (Pixel pixel in file.Board.PixelCircles.SelectMany(circle => circle.Pixels))
        {
            leds[RingAt(rings, pixel.At.Length * scale / Metre, true)]++;
        }

        // The part that gives off most is the controller; the rest warms the board.
        BoardPart? most = file.Board.Parts.Where(part => part.Watts > 0).MaxBy(part => part.Watts);
        foreach (BoardPart part in file.Board.Parts.Where(part => part.Watts > 0))
        {
            int ring = RingAt(rings, part.At.Length * scale / Metre, true);
            if (part != most)
            {
                others[ring] += part.Watts;
                continue;
            }

            double half = Math.Min(part.Length, part.Width) / 2;
            double[] under = [.. rings.Select(each => each.Board
                ? Math.Max(0,
                    Math.Min(each.Outer * Metre, (part.At.Length * scale) + half)
                        - Math.Max(each.Inner * Metre, (part.At.Length * scale) - half)) : 0)];
            double all = under.Sum();
            for (int i = 0; i < under.Length; i++)
            {
                controller[i] = all > 0 ? under[i] / all : i == ring ? 1 : 0;
            }
        }

        // A second board on the floor warms the board over it; where it lies is not known here, so all of it shares.
        if (file.Housing.SecondBoard is { Spacers: null, Watts: > 0 } second)
        {
            double area = rings.Where(ring => ring.Board).Sum(ring => ring.Area);
            for (int i = 0; i < rings.Length; i++)
            {
                others[i] += rings[i].Board && area > 0 ? second.Watts * rings[i].Area / area : 0;
            }
        }

        foreach (VentPlan vent in vents)
        {
            slots[RingAt(rings, vent.Outline.Bounds.Centre.Length * scale / Metre, false)] += vent.Outline.Area / SquareMetre;
        }

        double plate = Math.PI * ((to * to) - (from * from)) * SquareMetre;
        return
        [
            .. rings.Select((ring, i) => ring with
            {
                WindowShare = Share(window, ring),
                BaffleShare = Share(walls, ring),
                Leds = leds[i],
                ControllerShare = controller[i],
                OtherWatts = others[i],
                VentArea = slots[i],
            }),
        ];

        double Share(Region region, SectionRing ring) => region.IsEmpty ? 0
            : round ? Math.Clamp((DiscArea.Of(region, ring.Outer * Metre) - DiscArea.Of(region, ring.Inner * Metre))
                / (ring.Area * SquareMetre), 0, 1)
            : Math.Clamp(region.Area / plate, 0, 1);
    }

    /// <summary>How wide the baffle is open, m: four times the open area over its outline; 0 without a baffle.</summary>
    public static double BaffleOpening(BoardFile file, FrontSide front)
    {
        Region window = front.Cover.Window;
        if (front.Baffle is not { } baffle || window.IsEmpty)
        {
            return 0;
        }

        double twice = 4 * window.Area / window.Perimeter;
        PixelCircle? circle = file.Board.PixelCircles.MaxBy(each => each.Pixels.Length);
        double pitch = circle is null || circle.Pixels.IsEmpty ? 0 : circle.Pitch;
        return (baffle.Cells && pitch > 0 ? twice * pitch / ((twice / 2) + pitch) : twice) / Metre;
    }

    private static double RadiusOf(double squareMillimetres) => Math.Sqrt(Math.Max(0, squareMillimetres) / Math.PI) / Metre;

    private static int RingAt(ImmutableArray<SectionRing> rings, double radius, bool onBoard) =>
        Enumerable.Range(0, rings.Length).Where(i => !onBoard || rings[i].Board)
            .MinBy(i => Math.Max(0, Math.Max(rings[i].Inner - radius, radius - rings[i].Outer)));
}
