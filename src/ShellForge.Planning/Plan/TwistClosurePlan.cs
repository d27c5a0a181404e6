using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Hands;

namespace ShellForge.Planning.Plan;

/// <summary>Lugs on the lip turn into slots in the tub's wall.</summary>
public sealed record TwistClosurePlan : ClosurePlan
{
    /// <summary>Middle of each lug when closed.</summary>
    public required ImmutableArray<Angle> Lugs { get; init; }

    /// <summary>Which of them stands out of the even spacing, from 0.</summary>
    public required int Odd { get; init; }

    /// <summary>Sweep of a lug.</summary>
    public required Angle LugSweep { get; init; }

    /// <summary>Turn from insertion to closed, clockwise seen by the viewer.</summary>
    public required Angle Turn { get; init; }

    /// <summary>z of the lug's lower and upper face.</summary>
    public required double LugBottom { get; init; }

    /// <summary>See <see cref="LugBottom"/>.</summary>
    public required double LugTop { get; init; }

    /// <summary>How far a lug stands off the lip's face, mm.</summary>
    public required double LugHeight { get; init; }

    /// <summary>Gap beside a lug along the wall and before its outer face, mm.</summary>
    public required double Gap { get; init; }

    /// <summary>Gap below and above a lug, mm.</summary>
    public required double AxialGap { get; init; }

    /// <summary>How far the ridge that a lug rides over reaches past the lug's gap, mm.</summary>
    public required double RidgePress { get; init; }

    /// <summary>Length of that ridge along the wall, mm.</summary>
    public required double RidgeLength { get; init; }

    /// <inheritdoc />
    public override bool Reopens => true;

    /// <inheritdoc />
    public override bool TurnsCover => true;

    /// <inheritdoc />
    public override ClosureEntry? Entry => new((LugBottom + LugTop) / 2, Turn, Lugs);

    /// <inheritdoc />
    public override Region FreePosts => Region.Empty;

    /// <inheritdoc />
    public override string Faces => "a lug of the twist lock";

    /// <inheritdoc />
    public override ImmutableArray<ShoppingItem> Shopping => [];

    /// <inheritdoc />
    public override string WayOn(HousingPlan plan) =>
        $"The lug that stands out of the even spacing goes in at {HandWords.Clock(plan.Key.At, plan.Source.Up)}, seen from the front with "
            + $"the housing upright, and nowhere else.";

    /// <inheritdoc />
    public override IEnumerable<HandStep> HandSteps(HousingPlan plan)
    {
        yield return ClosingHands.Close(plan,
            $"Push the cover down until it seats, then turn it clockwise by {Turn.Degrees:0} degrees, over a small click, until it "
                + $"stops.") with
        {
            Motion = HandMotion.DownAndClockwise,
            At = plan.Key.At,
        };
        yield return ClosingHands.Open(plan, $"Turn the cover anticlockwise by {Turn.Degrees:0} degrees and lift it.") with
        {
            Motion = HandMotion.AnticlockwiseAndUp,
            At = plan.Key.At,
        };
    }

    /// <inheritdoc />
    public override T Accept<T>(IClosureVisitor<T> visitor) => visitor.Twist(this);
}

/// <content>This form's visit.</content>
public partial interface IClosureVisitor<out T>
{
    /// <summary>Lugs that turn into slots.</summary>
    T Twist(TwistClosurePlan closure);
}
