using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Outlines;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Openings;

/// <summary>An opening of the maker's own through the tub's wall: at a board angle, or through the wall nearest to a part.</summary>
internal sealed class OwnWallForm(OwnOpening wish) : OwnOpeningForm(wish)
{
    // A wall that runs away by more than this share of an opening's width lies along it rather than across it.
    private const double RunsAway = 0.25;

    /// <inheritdoc />
    public override OpenedSide Side => OpenedSide.Wall;

    /// <inheritdoc />
    public override (Angle At, double HalfWidth)? AtRim => (Wish.Angle ?? Angle.Of(Wish.At ?? Point2.Origin), Wish.Shape.Along / 2);

    /// <inheritdoc />
    public override OpeningInPlan? InPlan(OpeningGiven given, Reasons reasons)
    {
        ShellPlan shell = given.Shell;
        Region outline = OutlineOf(Wish, given.File.Print.Printer);
        double width = outline.Bounds.Size.X;
        (Angle faces, double across, double from) = Way(shell, given.File.Up);
        Point2 along = Point2.Polar(1, faces);
        WallSpan? wall = WallSpan.Ahead(shell, faces, across, width, from);
        double away = wall is null ? 0 : wall.OuterMost - wall.InnerLeast - shell.Wall;
        OpeningObstacle? obstacle =
            wall is null ? new OpeningObstacle($"{Wish.PartRef ?? "it"} has no wall before it.", 0, 1, "say an angle: 'wall: 90'")
            : away > RunsAway * width ? new OpeningObstacle(
                $"over its width the wall runs away from it by {Reasons.Mm(Math.Round(away, 2))} mm.", away, RunsAway * width,
                "make it narrower, or say an angle at which the wall lies across: 'wall: 90'")
            : null;
        if (obstacle is not null || wall is null)
        {
            Point2 place = (from * along) + (across * new Point2(0 - along.Y, along.X));
            Refuse(Wish, obstacle!, new Point3(place.X, place.Y, 0), reasons);
            return null;
        }

        Point2 through = Lattice.Snap((wall.InnerLeast * along) + (across * new Point2(0 - along.Y, along.X)));
        return new WallInPlan(Wish, outline, new WallPlace(faces, through, across, wall), given.Posts);
    }

    // Round walls lie across every ray from the axis; others are gone through square to the side that the angle or the part leads to.
    private (Angle Faces, double Across, double From) Way(ShellPlan shell, Angle up)
    {
        if (shell.Round is { } round)
        {
            Angle ray = Wish.Angle ?? (Wish.At is { } on && on != Point2.Origin ? Angle.Of(on) : up);
            return (ray, 0, Wish.At?.Length ?? ((round.Inner + round.BoreOuter) / 2));
        }

        Region room = shell.Cavity.Filled();
        Point2 from = Wish.At ?? Point2.Polar(room.FarthestAlong(Wish.Angle ?? up), Wish.Angle ?? up);
        OutlinePlace side = OutlinePlaces.NearestSide(room.Loops[0], from);
        Point2 along = Point2.Polar(1, side.Outward);
        return (side.Outward, Point2.Dot(from, new Point2(0 - along.Y, along.X)),
            Math.Min(Point2.Dot(from, along), Point2.Dot(side.At, along)) - (Wish.At is null ? shell.Wall : 0));
    }

    /// <summary>Where an opening goes through a wall.</summary>
    /// <param name="Faces">Direction in which it leaves.</param>
    /// <param name="Through">Its middle at the wall's inner face, in plan.</param>
    /// <param name="Across">v of its middle, mm.</param>
    /// <param name="Wall">The wall there.</param>
    private sealed record WallPlace(Angle Faces, Point2 Through, double Across, WallSpan Wall);

    private sealed record WallInPlan(OwnOpening Wish, Region Outline, WallPlace Place, ImmutableArray<PostInPlan> Posts)
        : OpeningInPlan(Wish.Name)
    {
        // Behind the wall this much stays open where no part is behind it, mm.
        private const double OpenBehind = 2;

        // A neighbour's way through the wall is no longer than this, mm.
        private const double LongestWay = 30;

        // Half of the narrowest tongue that closes a cable's notch, mm.
        private const double HalfNotch = 4;

        /// <inheritdoc />
        public override (string What, double Height)? BelowBoard => null;

        /// <inheritdoc />
        public override WallStretch InWall => new(Place.Through, Place.Faces, Outline.Bounds.Size.X, HasTongue: false);

        /// <inheritdoc />
        public override OpeningPlan? AtHeight(HeightGiven given, Reasons reasons)
        {
            (BoardFile file, PrintBasis basis, _, BoardLevels levels, _) = given;
            (double wanted, string from, string why) = Middle(file, levels);
            var roof = RoofSlant.For(file.Print.Printer.OverhangDegrees);

            // Its lower edge lies on a layer: cut through one, it would come out a part of a layer too high or too low.
            double half = Math.Round(Outline.Bounds.Size.Y / 2, 2);
            double bottom = basis.Down(wanted - half + (basis.Layer / 2));
            double axis = Math.Round(bottom + half, 3);
            WallOpeningPlan plan = new()
            {
                Ref = Wish.Name,
                Asked = Wish.Shape,
                PartRef = Wish.PartRef,
                Outline = PrintableRoof.Over(Outline.Moved(new Point2(Place.Across, axis)), roof),
                Faces = Place.Faces,
                Through = Place.Through,
                AxisZ = axis,
                WallInner = Place.Wall.InnerLeast,
                WallFace = Place.Wall.OuterMost,
                OpenTo = OpenTo(file.Board),
                UnderBoard = bottom < levels.BoardBottom,
            };
            if ((IntoFloor(levels, wanted - half, half) ?? AtPost(plan, levels) ?? AtNeighbour(plan, given)) is { } obstacle)
            {
                Refuse(Wish, obstacle, new Point3(Place.Through.X, Place.Through.Y, axis), reasons);
                return null;
            }

            TellSize(Wish, file.Print.Printer, reasons);
            string path = $"openings.{Wish.Name}";
            reasons.Length($"{path}.middle", Math.Round(axis, 3), from, $"{why}, its lower edge on a whole layer");
            reasons.Choice($"{path}.roof",
                string.Create(CultureInfo.InvariantCulture, $"slants {roof.Lean.Degrees:0.#} degrees from the vertical"),
                file.Print.Printer.Name, "it prints without support, and nothing of the opening is lost");
            return plan;
        }

        private (double Z, string From, string Why) Middle(BoardFile file, BoardLevels levels)
        {
            string Said(string key) => Reasons.Origin(file, $"{Wish.Path}.{key}");
            return Wish.Height is double height ? (height, Said("height"), "over the outer floor, as asked")
                : Wish.OverBoard is double over ? (levels.BoardTop + over, Said("over-board"), "over the board's face, as asked")
                : Wish.PartRef is { } part ? (MiddleOf(file.Board, part, levels), Said("wall"), $"the middle of {part}")
                : ((levels.FloorTop + levels.BoardBottom) / 2, Reasons.Rule, "half-way between floor and board");
        }

        private static double MiddleOf(CircuitBoard board, string name, BoardLevels levels)
        {
            if (board.Parts.FirstOrDefault(part => part.Ref == name) is { } part)
            {
                double middle = (part.Lift + (part.Height ?? (part.Lift + PlanRules.UnknownHeight))) / 2;
                return part.Side == BoardSide.Bottom ? levels.BoardBottom - middle : levels.BoardTop + middle;
            }

            PixelCircle circle = board.PixelCircles.First(each => each.Pixels.Any(pixel => pixel.Ref == name));
            return levels.BoardTop + (circle.Led.AxisHeight ?? (circle.Led.Height / 2));
        }

        // Up to the body of its part, or a little way into the room.
        private double OpenTo(CircuitBoard board)
        {
            Point2 along = Point2.Polar(1, Place.Faces);
            Region? body = board.Parts.Where(part => part.Ref == Wish.PartRef).Select(PartEnvelope.OutlineOf)
                .Concat(board.PixelCircles.SelectMany(circle => circle.Pixels.Where(pixel => pixel.Ref == Wish.PartRef)
                    .Select(pixel => PartEnvelope.OutlineOf(pixel, circle)))).FirstOrDefault();
            double inner = Place.Wall.InnerLeast;
            return body is null ? inner - OpenBehind : Math.Min(inner, body.Loops[0].Max(corner => Point2.Dot(corner, along)));
        }

        private static OpeningObstacle? IntoFloor(BoardLevels levels, double bottom, double half)
        {
            double into = levels.FloorTop - bottom;
            return into <= Layers.Slack ? null : new OpeningObstacle(
                $"it reaches {Reasons.Mm(Math.Round(into, 2))} mm into the floor.", bottom, levels.FloorTop,
                $"say 'height: {Reasons.Mm(PlanRules.UpToTenth(levels.FloorTop + half))}' or more, or make it lower");
        }

        private OpeningObstacle? AtPost(WallOpeningPlan plan, BoardLevels levels)
        {
            Region way = Strips.Along(
                plan.Through, plan.Faces, Outline.Bounds.Size.X,
                Math.Min(plan.OpenTo, plan.WallInner - PlanRules.TieDistance) - plan.WallInner, plan.WallFace - plan.WallInner);
            (PostInPlan Post, double Lacks) nearest = Posts.Where(post => post.ToRim || plan.Outline.Bounds.Min.Y < levels.BoardBottom)
                .Select(post => (Post: post, Lacks: (post.Diameter / 2) + PlanRules.Beside - way.Distance(post.At)))
                .Where(each => each.Lacks > Layers.Slack).OrderByDescending(each => each.Lacks).FirstOrDefault();
            if (nearest.Post is not { } post)
            {
                return null;
            }

            // Away from the post, by the angle under which the missing room is seen from the axis.
            double side = Point2.Cross(Point2.Polar(1, plan.Faces), post.At - plan.Through) > 0 ? -1 : 1;
            double off = Math.Abs(Point2.Cross(Point2.Polar(1, plan.Faces), post.At - plan.Through));
            double room = (post.Diameter / 2) + PlanRules.Beside + (Outline.Bounds.Size.X / 2) - off;
            Angle turn = side * Angle.FromRadians(room / Math.Max(1, post.At.Length));
            double turned = Math.Round((plan.Faces + turn).Normalized.Degrees + side);
            string angle = string.Create(CultureInfo.InvariantCulture, $"'wall: {(turned + 360) % 360:0}'");
            return new OpeningObstacle(
                $"{post.Name} stands {Reasons.Mm(Math.Round(nearest.Lacks, 2))} mm too near.", 0 - nearest.Lacks, PlanRules.Beside,
                Wish.PartRef is null ? $"say {angle}{(post.ToRim ? "" : ", or bring it over the board with 'over-board'")}"
                    : $"move the part on the board, or say {angle}");
        }

        private OpeningObstacle? AtNeighbour(WallOpeningPlan plan, HeightGiven given)
        {
            Region walls = given.Shell.Walls;
            Region own = walls.Intersect(Strips.Along(
                plan.Through, plan.Faces, Outline.Bounds.Size.X, -PlanRules.Beside, plan.WallFace - plan.WallInner + PlanRules.Beside));
            double Left(Region other) => other.IsEmpty ? double.PositiveInfinity : other.Distance(own);
            foreach (OpeningPlan other in given.Before)
            {
                if (other.InWall is not { } wall)
                {
                    continue;
                }

                double upright = Math.Max(
                    plan.Outline.Bounds.Min.Y - (wall.OpensRim ? double.PositiveInfinity : wall.Top),
                    wall.Bottom - plan.Outline.Bounds.Max.Y);
                double left = upright >= Between ? Between
                    : Left(walls.Intersect(Strips.Along(wall.Through, wall.Direction, wall.Width, -PlanRules.Beside, LongestWay)));
                if (left < Between)
                {
                    return TooNear(other.NameOf(FaceFeature.Port), left);
                }
            }

            double toExit = Exits.ExitForm.Of(given.File).Select(exit => exit.AtRim).OfType<(Angle At, double HalfWidth)>()
                .Select(exit => Left(walls.Intersect(
                    Strips.Radial(exit.At, 2 * Math.Max(exit.HalfWidth, HalfNotch), 0, Strips.PastRim(walls)))))
                .Append(Between).Min();
            return toExit < Between ? TooNear("the cable's notch", toExit) : null;
        }

        private static OpeningObstacle TooNear(string other, double left) => new(
            $"{Reasons.Mm(Math.Round(left, 2))} mm of wall are left to {other}, too little to print.", left, Between,
            $"leave {Reasons.Mm(Between)} mm between them: another angle at 'wall', or another 'height'");
    }
}
