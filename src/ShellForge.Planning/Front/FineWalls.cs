using System.Collections.Immutable;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Front;

/// <summary>
/// Walls of the baffle where notches and posts leave less of them than two lines: thickened by two on the side that is free, since what
/// stands over a notch has to stand on something; what is finer than a line where neither side is free is left out.
/// <code>
///       │ wall │                 │ wall │
///       │   ╭──╯                 │   ╭──╯
///       │   │  head   becomes  ╭─╯   │  head
///       │   ╰──╮               ╰─╮   ╰──╮
///       │      │                 │      │
/// </code>
/// </summary>
/// <param name="Thicker">What is added to the walls.</param>
/// <param name="LeftOut">What is taken from them over their whole height.</param>
/// <param name="Notches">The notches, with what they take more.</param>
internal sealed record FineWalls(Region Thicker, Region LeftOut, ImmutableArray<BaffleNotch> Notches)
{
    /// <summary>
    /// Mends the walls of a baffle, from the highest notches down: what a high notch takes is gone at the lower ones too.
    /// </summary>
    /// <param name="draft">The draft.</param>
    /// <param name="walls">Walls and bridges in plan.</param>
    /// <param name="posts">What goes through the baffle.</param>
    /// <param name="notches">The notches.</param>
    /// <param name="room">Where walls may stand.</param>
    public static FineWalls Mended(HousingDraft draft, Region walls, Region posts, ImmutableArray<BaffleNotch> notches, Region room)
    {
        Region inside = walls.Filled().Intersect(room);
        Region[] taken = [.. BaffleNotches.Bodies(draft).Select(body => body.Outline.Offset(body.Beside))];
        var wanted = new FineWallsRound(inside, posts, taken, draft.Basis.LineWidth, draft.Basis.Wall(2)) { Left = walls.Less(posts) };
        Region leftOut = wanted.Beside(posts.Parts);
        wanted.Settle();
        var mended = ImmutableArray.CreateBuilder<BaffleNotch>(notches.Length);
        foreach (IGrouping<double, BaffleNotch> level in notches.GroupBy(notch => notch.Top).OrderByDescending(level => level.Key))
        {
            wanted.Left = wanted.Left.Less(Region.Union(level.Select(notch => notch.Outline)));
            foreach (BaffleNotch notch in level)
            {
                Region less = wanted.Beside([notch.Outline]);
                mended.Add(less.IsEmpty ? notch : notch with { Outline = notch.Outline.And(less) });
            }

            wanted.Settle();
        }

        return new FineWalls(wanted.Thicker, leftOut, mended.ToImmutable());
    }
}
