using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Floors;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Posts;

/// <summary>
/// Saddles: a module that is soldered flat holds its connector by its own pads alone, so a rest takes the shell's weight on the plug and
/// a rib behind the module takes its push.
/// </summary>
internal static class SaddleDecision
{
    /// <summary>Gap between shell or module and saddle, mm. Typical.</summary>
    private const double Gap = 0.2;

    /// <summary>Depth of the rest under the shell, mm: most of a receptacle's length.</summary>
    private const double RestDepth = 5.0;

    /// <summary>How far the rib reaches up beside the module's own board, measured from the board's bottom face, mm.</summary>
    private const double RibBelowBoard = 0.4;

    /// <summary>A rest of which the walls leave less than this share does not hold the shell.</summary>
    private const double LeastShare = 0.5;

    /// <summary>Saddles of all modules on the back whose port is open.</summary>
    public static Decided<ImmutableArray<SaddlePlan>> Decide(TubDraft tub, ImmutableArray<BossPlan> bosses)
    {
        var reasons = new Reasons();
        var saddles = ImmutableArray.CreateBuilder<SaddlePlan>();
        foreach (PortPlan port in tub.Openings.OfType<PortPlan>())
        {
            BoardPart part = tub.File.Board.Parts.First(p => p.Ref == port.Ref);
            if (part.Side == BoardSide.Bottom && part.Mounted == PartMounting.Flat && part.Package is { MountingRequired: true })
            {
                SaddlePlan saddle = Saddle(tub, part, port, bosses, reasons);
                if (!saddle.Rest.IsEmpty || saddle.StopTop > 0)
                {
                    saddles.Add(saddle);
                }
            }
        }

        return reasons.Of(saddles.ToImmutable());
    }

    private static SaddlePlan Saddle(
        TubDraft tub, BoardPart part, PortPlan port, ImmutableArray<BossPlan> bosses, Reasons reasons)
    {
        (BoardFile file, PrintBasis basis, ShellPlan shell, BoardLevels levels, _) = tub;
        Point2 along = Point2.Polar(1, port.Faces);
        double mouthU = Point2.Dot(port.Face, along);
        double halfWidth = Math.Round((port.Mouth.ShellWidth / 2) - 0.5, 2);

        // The rest ends short of the wall, where the port's opening is cut.
        double front = Math.Min(-Gap, port.WallInner - 1 - mouthU);
        double top = basis.Down(port.AxisZ - (port.Mouth.ShellHeight / 2) - Gap);
        double rib = basis.Wall(PlanRules.BossWallLines);
        double rear = Point2.Dot(part.At, along) - (part.Length / 2) - mouthU - Gap;
        double ribTop = basis.Down(levels.BoardBottom - RibBelowBoard);
        var room = new BelowBoardRoom(tub, part.Ref);
        Region ribOutline = PartEnvelope.Rectangle(
            port.Face + ((rear - (rib / 2)) * along), rib, 2 * halfWidth, port.Faces);
        bool ribFits = shell.Cavity.Contains(ribOutline.Offset(PlanRules.Beside)) && room.Ceiling(ribOutline) >= ribTop
            && bosses.All(b => ribOutline.Distance(b.At) > (b.Diameter / 2) + PlanRules.Beside);
        Region rest = Within(shell, PartEnvelope.Rectangle(
            port.Face + ((front - (RestDepth / 2)) * along), RestDepth, 2 * halfWidth, port.Faces));
        reasons.Length($"saddles.{part.Ref}.top", top, Reasons.Rule, rest.IsEmpty
            ? $"{part.Ref} is soldered flat, but its connector stands outside the walls: nothing carries its shell"
            : $"{part.Ref} is soldered flat: plug forces would lift its pads; {Reasons.Mm(Gap)} under its shell");
        reasons.Choice($"saddles.{part.Ref}.stop-rib", ribFits ? "yes" : "no", Reasons.Rule,
            ribFits ? "takes the push of the plug behind the module" : "another part or a boss is in its place");
        return new SaddlePlan(part.Ref, new Point2(front - RestDepth, -halfWidth), new Point2(front, halfWidth),
            port.Faces, port.Face, top, ribFits ? ribTop : 0, rear, rib)
        {
            Rest = rest,
        };
    }

    // Whole where it stands on the floor or in the wall; what stands out of the housing is left out.
    private static Region Within(ShellPlan shell, Region rest)
    {
        if (shell.Footprint.Contains(rest))
        {
            return rest;
        }

        Region left = Region.Union(rest.Intersect(shell.Cavity).Parts.OrderByDescending(part => part.Area).Take(1));
        return left.Area < LeastShare * rest.Area ? Region.Empty : left;
    }
}
