using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Floors;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Posts;

/// <summary>Triangular webs round a slender boss, where there is room.</summary>
internal static class GussetDecision
{
    private const int Directions = 24;
    private const int Most = 4;

    /// <summary>Least angle between two gussets, degrees: an iron and a brush still get between them.</summary>
    private const double LeastApart = 75;

    /// <summary>Height as a share of the boss's, and foot as a share of that height.</summary>
    private const double HeightShare = 0.7;

    /// <summary>See <see cref="HeightShare"/>.</summary>
    private const double FootShare = 0.4;

    /// <summary>Longest foot, mm.</summary>
    private const double LongestFoot = 5;

    /// <summary>Up to four gussets that meet neither parts nor walls.</summary>
    public static ImmutableArray<GussetPlan> Decide(BossPlan boss, TubDraft tub, BelowBoardRoom room)
    {
        (_, PrintBasis basis, ShellPlan shell, BoardLevels levels, _) = tub;
        double height = basis.Down(levels.FloorTop + (HeightShare * (boss.Top - levels.FloorTop))) - levels.FloorTop;
        double foot = Math.Min(LongestFoot, Math.Round(FootShare * height, 1));
        double thickness = basis.Wall(3);
        var gussets = ImmutableArray.CreateBuilder<GussetPlan>();
        for (int i = 0; i < Directions && gussets.Count < Most; i++)
        {
            Angle direction = Angle.FromDegrees(i * 360.0 / Directions);
            if (gussets.Any(g => Angle.Between(g.Direction, direction).Degrees < LeastApart))
            {
                continue;
            }

            var gusset = new GussetPlan(direction, foot, height, thickness);
            Region outline = Outline(boss, gusset);
            if (shell.Cavity.Contains(outline.Offset(PlanRules.TieDistance / 2)) && room.Ceiling(outline) >= levels.FloorTop + height)
            {
                gussets.Add(gusset);
            }
        }

        return gussets.ToImmutable();
    }

    /// <summary>A gusset in plan, from the boss's side to the end of its foot.</summary>
    internal static Region Outline(BossPlan boss, GussetPlan gusset) => PartEnvelope.Rectangle(
        boss.At + Point2.Polar((boss.Diameter + gusset.Foot) / 2, gusset.Direction), gusset.Foot, gusset.Thickness, gusset.Direction);
}
