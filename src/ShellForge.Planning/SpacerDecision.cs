using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.SecondBoards;

namespace ShellForge.Planning;

/// <summary>
/// Spacers that a second board hangs from behind the LED board: their screws come from both sides and must not meet in the middle.
/// </summary>
internal static class SpacerDecision
{
    // Hexagonal spacers as sold: thread up to, and width over flats, mm. Typical: check yours.
    private static readonly ImmutableArray<(double Thread, double Flats)> Hexagons = [(2.0, 4.0), (2.5, 5.0), (3.0, 5.5), (4.0, 7.0)];
    private const double WidestFlats = 8.0;
    private const double CornersOverFlats = 1.1547;

    // Each screw ends so far before the spacer's middle, mm.
    private const double FromMiddle = 0.3;

    /// <summary>The spacers; none where the second board lies on the floor, or there is none.</summary>
    public static Decided<ImmutableArray<SpacerPlan>> Decide(BoardFile file)
    {
        var reasons = new Reasons();
        if (file.Housing.SecondBoard is not { Spacers: double length } board)
        {
            return reasons.Of(ImmutableArray<SpacerPlan>.Empty);
        }

        BoardHole[] holes = [.. file.Board.Holes.Where(hole => hole.For == HolePurpose.Spacer && hole.Screw is not null)];
        var spacers = ImmutableArray.CreateBuilder<SpacerPlan>();
        foreach (BoardHole hole in holes)
        {
            ScrewProfile screw = hole.Screw!;
            double flats = Hexagons.Where(each => screw.ThreadDiameter <= each.Thread).Select(each => each.Flats)
                .DefaultIfEmpty(WidestFlats).First();
            spacers.Add(new SpacerPlan
            {
                Hole = hole.Name,
                At = hole.At,
                Screw = screw,
                Length = length,
                Diameter = Math.Round(CornersOverFlats * flats, 2),
                FrontScrew = Screw(screw, file.Board.Thickness, length),
                BackScrew = Screw(screw, board.Thickness, length),
            });
        }

        foreach (SpacerPlan[] same in spacers.GroupBy(each => each.Screw.Name).Select(group => group.ToArray()))
        {
            SpacerPlan one = same[0];
            reasons.Length("second-board.spacers", length, Reasons.Origin(file, "housing.second-board.spacers"),
                $"{same.Length.ToString(CultureInfo.InvariantCulture)} of {one.Screw.Thread}, with screws of "
                    + $"{Reasons.Mm(one.FrontScrew)} mm from the front and {Reasons.Mm(one.BackScrew)} mm from behind");
            double needed = Math.Max(Needed(one.FrontScrew, file.Board.Thickness), Needed(one.BackScrew, board.Thickness));
            if (needed > length + Layers.Slack)
            {
                reasons.Refuse("spacer-screws-meet", "second board",
                    $"The shortest {one.Screw.Thread} screws that hold meet inside spacers of {Reasons.Mm(length)} mm.",
                    length, needed, "mm", new Point3(one.At.X, one.At.Y, 0),
                    $"'spacers: {Reasons.Mm(Math.Ceiling(needed))}' or longer, or screws of a thinner thread at these holes ('screw:')");
            }
        }

        return reasons.Of(spacers.ToImmutable());
    }

    // The longest that wants no more than its thread needs and ends before the middle, else the shortest that engages at all.
    private static double Screw(ScrewProfile screw, double clamp, double length)
    {
        double most = clamp + (length / 2) - FromMiddle;
        double[] free = [.. screw.StockLengths.Where(stock => stock <= most + Layers.Slack && stock >= clamp + screw.EngagementMinimum)];
        return free.Where(stock => stock >= clamp + screw.EngagementDefault).Concat(free.Reverse())
            .Concat(screw.StockLengths.Where(stock => stock >= clamp + screw.EngagementMinimum)).Append(screw.StockLengths[^1]).First();
    }

    private static double Needed(double screw, double clamp) => 2 * (screw - clamp + FromMiddle);
}
