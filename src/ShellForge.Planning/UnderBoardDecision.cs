using System.Collections.Immutable;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Floors;

namespace ShellForge.Planning;

/// <summary>
/// Places of battery and second board under the LED board: what has to lie at a place comes first, else the battery; where one of them then
/// finds none, the other way round.
/// </summary>
internal static class UnderBoardDecision
{
    private sealed record Both(Decided<BatteryPlace?> Battery, Decided<SecondBoardPlace?> SecondBoard)
    {
        public int Placed => (Battery.Value is null ? 0 : 1) + (SecondBoard.Value is null ? 0 : 1);
    }

    /// <summary>The places; null for what is not wanted, and, with a refusal, for what finds none.</summary>
    /// <param name="given">The board file, lines and layers.</param>
    /// <param name="choice">Walls and openings in plan.</param>
    /// <param name="posts">Posts whose place is settled.</param>
    /// <param name="reasons">Takes the reasons.</param>
    public static (BatteryPlace? Battery, SecondBoardPlace? SecondBoard) Places(
        Given given, InPlan choice, ImmutableArray<PostInPlan> posts, Reasons reasons)
    {
        bool secondFirst = given.File.Housing is { SecondBoard: { Spacers: null, At: not null }, Battery: { At: null } };
        Both found = secondFirst ? SecondFirst(given, choice, posts) : BatteryFirst(given, choice, posts);
        if (given.File.Housing is { SecondBoard.Spacers: null, Battery: not null } && found.Placed == 1)
        {
            Both other = secondFirst ? BatteryFirst(given, choice, posts) : SecondFirst(given, choice, posts);
            found = other.Placed > found.Placed ? other : found;
        }

        return (reasons.Take(found.Battery), reasons.Take(found.SecondBoard));
    }

    private static Both BatteryFirst(Given given, InPlan choice, ImmutableArray<PostInPlan> posts)
    {
        Decided<BatteryPlace?> battery = BatteryBayDecision.Place(given, choice, posts, Region.Empty);
        return new Both(battery, SecondBoardDecision.Place(given, choice, posts, battery.Value?.Taken ?? Region.Empty));
    }

    private static Both SecondFirst(Given given, InPlan choice, ImmutableArray<PostInPlan> posts)
    {
        Decided<SecondBoardPlace?> second = SecondBoardDecision.Place(given, choice, posts, Region.Empty);
        return new Both(BatteryBayDecision.Place(given, choice, posts, second.Value?.Taken ?? Region.Empty), second);
    }
}
