using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Floors;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Posts;

/// <summary>Webs between a boss and a wall so near that the gap between them could be neither printed cleanly nor filled.</summary>
internal static class WebDecision
{
    /// <summary>Width of a web as a share of its boss: its corners stay well inside the boss.</summary>
    private const double WidthShare = 0.6;

    /// <summary>Least passage over a web where there is no bundle to ask for more, mm.</summary>
    private const double LeastPassage = 1.0;

    /// <summary>A web lower than this stiffens nothing and is left out, mm.</summary>
    private const double LeastHeight = 1.0;

    /// <summary>The webs of a boss, and the z of their top.</summary>
    public static (ImmutableArray<Region> Webs, double Top) Decide(
        BossPlan boss, TubDraft tub, BelowBoardRoom room)
    {
        (BoardFile file, PrintBasis basis, ShellPlan shell, BoardLevels levels, _) = tub;
        if (shell.Lobes.Any(l => l.At == boss.At))
        {
            return ([], 0);
        }

        double top = basis.Down(levels.BoardBottom - Math.Max(LeastPassage, PlanRules.WireRoom * room.Bundle));
        var webs = ImmutableArray.CreateBuilder<Region>();
        foreach (Point2 foot in WallFeet(boss, shell))
        {
            Region web = Web(boss, foot, shell);
            double height = Math.Min(top, basis.Down(room.Ceiling(web)));
            if (height >= levels.FloorTop + LeastHeight)
            {
                webs.Add(web);
                top = height;
            }
        }

        return webs.Count == 0 ? ([], 0) : (webs.ToImmutable(), top);
    }

    // Points of the walls' faces nearer to the boss's side than the tie distance, one for each wall.
    private static IEnumerable<Point2> WallFeet(BossPlan boss, ShellPlan shell)
    {
        double reach = (boss.Diameter / 2) + PlanRules.TieDistance;
        foreach (ImmutableArray<Point2> wall in shell.Cavity.Loops)
        {
            Point2 nearest = OutlinePlaces.Nearest(wall, boss.At);
            if (Point2.Distance(nearest, boss.At) < reach && nearest != boss.At)
            {
                yield return nearest;
            }
        }
    }

    private static Region Web(BossPlan boss, Point2 foot, ShellPlan shell)
    {
        Point2 way = foot - boss.At;
        double length = way.Length + (shell.Wall / 2);
        Point2 middle = boss.At + ((length / 2 / way.Length) * way);
        return OutlineOffsets.WithoutSlivers(
            PartEnvelope.Rectangle(middle, length, WidthShare * boss.Diameter, Angle.Of(way)).Intersect(PostRoom.Of(shell)));
    }
}
