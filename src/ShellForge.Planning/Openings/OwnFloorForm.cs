using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Openings;

/// <summary>An opening of the maker's own through the floor: at a point, or under a part on the board.</summary>
internal sealed class OwnFloorForm(OwnOpening wish) : OwnOpeningForm(wish)
{
    /// <inheritdoc />
    public override OpenedSide Side => OpenedSide.Floor;

    /// <inheritdoc />
    public override (Angle At, double HalfWidth)? AtRim => null;

    /// <inheritdoc />
    public override OpeningInPlan? InPlan(OpeningGiven given, Reasons reasons)
    {
        Point2 at = Lattice.Snap(Wish.At ?? Point2.Origin);
        Region outline = OutlineOf(Wish, given.File.Print.Printer).Moved(at);
        OpeningObstacle? obstacle = OverWall(given.Shell, outline) ?? UnderPost(given.Posts, outline);
        if (obstacle is not null)
        {
            Refuse(Wish, obstacle, new Point3(at.X, at.Y, 0), reasons);
            return null;
        }

        return new FloorInPlan(Wish, at, outline);
    }

    private OpeningObstacle? OverWall(ShellPlan shell, Region outline)
    {
        double past = outline.Less(shell.Cavity).Loops.SelectMany(loop => loop).Select(shell.Cavity.Distance).DefaultIfEmpty(0).Max();
        return past == 0 ? null : new OpeningObstacle(
            $"it reaches {Reasons.Mm(Math.Round(past, 2))} mm past the room inside the walls.", past, 0,
            Wish.PartRef is null ? "move it inward by that much, or make it smaller"
                : "make it smaller, or say a place of its own: 'floor: [x, y]'");
    }

    private OpeningObstacle? UnderPost(ImmutableArray<PostInPlan> posts, Region outline)
    {
        (PostInPlan Post, double Lacks) nearest = posts
            .Select(post => (Post: post, Lacks: (post.Diameter / 2) + PlanRules.Beside - outline.Distance(post.At)))
            .Where(each => each.Lacks > Layers.Slack).OrderByDescending(each => each.Lacks).FirstOrDefault();
        return nearest.Post is null ? null : new OpeningObstacle(
            $"{nearest.Post.Name} stands {Reasons.Mm(Math.Round(nearest.Lacks, 2))} mm too near.",
            0 - nearest.Lacks, PlanRules.Beside,
            Wish.PartRef is null ? "move it away by that much, or make it smaller" : "make it smaller, or move the part on the board");
    }

    private sealed record FloorInPlan(OwnOpening Wish, Point2 At, Region Outline) : OpeningInPlan(Wish.Name)
    {
        /// <inheritdoc />
        public override (string What, double Height)? BelowBoard => null;

        /// <inheritdoc />
        public override WallStretch? InWall => null;

        /// <inheritdoc />
        public override OpeningPlan? AtHeight(HeightGiven given, Reasons reasons)
        {
            (BoardFile file, PrintBasis basis, _, BoardLevels levels, _) = given;
            double chamfer = Chamfer(new Given(file, basis), levels.FloorTop);
            Region mouth = Outline.Offset(chamfer);
            foreach (OpeningPlan other in given.Before.Where(other => !other.TakenInside.IsEmpty && other.InWall is null))
            {
                double gap = Math.Min(
                    other.TakenInside.Distance(mouth), (other as FloorOpeningPlan)?.Mouth.Distance(mouth) ?? double.PositiveInfinity);
                if (gap < Between)
                {
                    Refuse(Wish, new OpeningObstacle(
                        $"{Reasons.Mm(Math.Round(gap, 2))} mm are left to {other.NameOf(FaceFeature.Port)}, too little to print.",
                        gap, Between, $"leave {Reasons.Mm(Between)} mm between them"), new Point3(At.X, At.Y, 0), reasons);
                    return null;
                }
            }

            double lowest = PartEnvelope.OnBottom(file.Board).Where(part => part.Outline.Distance(Outline) == 0)
                .Select(part => levels.BoardBottom - (part.To ?? PlanRules.UnknownHeight)).Append(levels.BoardBottom).Min();
            TellSize(Wish, file.Print.Printer, reasons);
            reasons.Choice($"openings.{Wish.Name}.place", $"{Reasons.Mm(Math.Round(At.X, 3))}, {Reasons.Mm(Math.Round(At.Y, 3))}",
                Reasons.Origin(file, $"{Wish.Path}.floor"),
                Wish.PartRef is { } part ? $"in the floor under {part}" : "in the floor, as asked");
            TellChamfer(Wish, chamfer, reasons);
            return new FloorOpeningPlan
            {
                Ref = Wish.Name,
                Asked = Wish.Shape,
                PartRef = Wish.PartRef,
                Outline = Outline,
                At = At,
                FloorTop = levels.FloorTop,
                OpenTo = Math.Max(levels.FloorTop, lowest),
                Chamfer = chamfer,
            };
        }
    }
}
