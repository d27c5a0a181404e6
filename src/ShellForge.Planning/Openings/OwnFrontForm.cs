using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Openings;

/// <summary>
/// An opening of the maker's own through the front: through the bezel, or through the lit window and its diffuser. It is decided when the
/// front is, since it may not lie on the window's edge.
/// </summary>
internal sealed class OwnFrontForm(OwnOpening wish) : OwnOpeningForm(wish)
{
    /// <inheritdoc />
    public override OpenedSide Side => OpenedSide.Front;

    /// <inheritdoc />
    public override (Angle At, double HalfWidth)? AtRim => null;

    /// <inheritdoc />
    public override OpeningInPlan InPlan(OpeningGiven given, Reasons reasons)
    {
        Point2 at = Lattice.Snap(Wish.At ?? Point2.Origin);
        return new FrontInPlan(Wish, at, OutlineOf(Wish, given.File.Print.Printer).Moved(at), given.Posts);
    }

    private sealed record FrontInPlan(OwnOpening Wish, Point2 At, Region Outline, ImmutableArray<PostInPlan> Posts)
        : OpeningInPlan(Wish.Name)
    {
        // Under the plate this much stays open where it is for no part, mm.
        private const double OpenBehind = 2;

        /// <inheritdoc />
        public override (string What, double Height)? BelowBoard => null;

        /// <inheritdoc />
        public override WallStretch? InWall => null;

        /// <inheritdoc />
        public override OpeningPlan? AtHeight(HeightGiven given, Reasons reasons) => null;

        /// <inheritdoc />
        public override OpeningPlan? InFront(FrontGiven given, Reasons reasons)
        {
            StackPlan stack = given.Stack;
            HeightGiven before = given.Height;
            bool lit = given.Front.Window.Contains(Outline);
            bool byHand = lit && given.Front.Diffuser.Fit == DiffuserFit.CutSheet;
            double chamfer = byHand ? 0 : Chamfer(
                new Given(before.File, before.Basis), lit ? given.Front.Diffuser.Thickness : given.Front.BezelThickness);
            Region mouth = Outline.Offset(chamfer);
            if ((OverWall(before.Choice.Room) ?? AtWindow(given.Front, mouth) ?? AtPost() ?? AtNeighbour(before.Before, mouth))
                is { } obstacle)
            {
                Refuse(Wish, obstacle, new Point3(At.X, At.Y, stack.Front), reasons);
                return null;
            }

            BoardFile file = before.File;
            double inner = Math.Min(stack.Front - given.Front.BezelThickness,
                stack.DiffuserInner - (given.Front.Diffuser.Lap?.Thickness ?? 0));
            TellSize(Wish, file.Print.Printer, reasons);
            reasons.Choice($"openings.{Wish.Name}.place", $"{Reasons.Mm(Math.Round(At.X, 3))}, {Reasons.Mm(Math.Round(At.Y, 3))}",
                Reasons.Origin(file, $"{Wish.Path}.front"),
                (Wish.PartRef is { } part ? $"in front of {part}" : "as asked") + (lit ? ", through the diffuser" : ", through the bezel"));
            if (!byHand)
            {
                TellChamfer(Wish, chamfer, reasons);
            }

            return new FrontOpeningPlan
            {
                Ref = Wish.Name,
                Asked = Wish.Shape,
                PartRef = Wish.PartRef,
                Outline = Outline,
                At = At,
                Front = stack.Front,
                CutFrom = inner,
                OpenTo = Math.Min(inner, Wish.PartRef is { } name ? TopOf(file.Board, name, stack) : inner - OpenBehind),
                Face = lit ? stack.DiffuserOuter : stack.Front,
                Chamfer = chamfer,
                InWindow = lit,
                ThroughSheet = byHand,
            };
        }

        private static double TopOf(CircuitBoard board, string name, StackPlan stack) => stack.BoardTop + (
            board.Parts.FirstOrDefault(part => part.Ref == name) is { } part
                ? part.Side == BoardSide.Bottom ? 0 : part.Height ?? PlanRules.UnknownHeight
                : board.PixelCircles.First(circle => circle.Pixels.Any(pixel => pixel.Ref == name)).Led.Height);

        private OpeningObstacle? OverWall(CoverRoom room)
        {
            double past = Outline.Less(room.Cavity).Loops.SelectMany(loop => loop).Select(room.Cavity.Distance).DefaultIfEmpty(0).Max();
            return past == 0 ? null : new OpeningObstacle(
                $"it reaches {Reasons.Mm(Math.Round(past, 2))} mm into the cover's wall.", past, 0,
                "move it inward by that much, or make it smaller");
        }

        // On the window's edge it would leave a sliver of bezel or of diffuser.
        private static OpeningObstacle? AtWindow(FrontDraft front, Region mouth)
        {
            Region window = front.Window;
            if (window.IsEmpty)
            {
                return null;
            }

            Region bezel = mouth.Less(window);
            double lit = mouth.Distance(window);
            double left = bezel.IsEmpty ? mouth.Loops[0].Min(window.DistanceToOutline) : lit;
            return left >= Between && (bezel.IsEmpty || lit > 0) ? null : new OpeningObstacle(
                bezel.IsEmpty || lit > 0 ? $"{Reasons.Mm(Math.Round(left, 2))} mm are left to the window's edge, too little to print."
                    : "it lies on the window's edge.",
                left, Between,
                $"leave {Reasons.Mm(Between)} mm between it and the edge, or make the window narrower: 'light: {{window: 8}}'");
        }

        private OpeningObstacle? AtPost()
        {
            (PostInPlan Post, double Lacks) nearest = Posts.Where(post => post.InCover)
                .Select(post => (Post: post, Lacks: (post.Diameter / 2) + PlanRules.Beside - Outline.Distance(post.At)))
                .Where(each => each.Lacks > Layers.Slack).OrderByDescending(each => each.Lacks).FirstOrDefault();
            return nearest.Post is null ? null : new OpeningObstacle(
                $"the cover's post over {nearest.Post.Name} stands {Reasons.Mm(Math.Round(nearest.Lacks, 2))} mm too near.",
                0 - nearest.Lacks, PlanRules.Beside, "move it away by that much, make it smaller, or say 'closure: snap'");
        }

        private static OpeningObstacle? AtNeighbour(ImmutableArray<OpeningPlan> before, Region mouth)
        {
            (FrontOpeningPlan? other, double gap) = before.OfType<FrontOpeningPlan>()
                .Select(other => ((FrontOpeningPlan?)other, other.Mouth.Distance(mouth))).OrderBy(each => each.Item2).FirstOrDefault();
            return other is null || gap >= Between ? null : new OpeningObstacle(
                $"{Reasons.Mm(Math.Round(gap, 2))} mm are left to {other.NameOf(FaceFeature.Port)}, too little to print.",
                gap, Between, $"leave {Reasons.Mm(Between)} mm between them");
        }
    }
}
