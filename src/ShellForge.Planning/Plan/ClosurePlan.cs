using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Hands;

namespace ShellForge.Planning.Plan;

/// <summary>
/// How cover and tub hold together: the form that was decided, with its dimensions. It answers for itself whatever differs from form to
/// form; who builds it implements <see cref="IClosureVisitor{T}"/>, so that none can be forgotten.
/// </summary>
public abstract record ClosurePlan
{
    private protected ClosurePlan()
    {
    }

    /// <summary>Whether the cover comes off again unharmed.</summary>
    public abstract bool Reopens { get; }

    /// <summary>Whether the cover turns about the axis while it closes, and all that it carries with it.</summary>
    public abstract bool TurnsCover { get; }

    /// <summary>How the cover enters where it turns into its place; null: straight down.</summary>
    public abstract ClosureEntry? Entry { get; }

    /// <summary>Posts of the cover that stand free of its walls, in plan; empty for none.</summary>
    public abstract Region FreePosts { get; }

    /// <summary>What its faces are called in messages, with an article.</summary>
    public abstract string Faces { get; }

    /// <summary>What has to be at hand for it, screws left out, which the plan counts.</summary>
    public abstract ImmutableArray<ShoppingItem> Shopping { get; }

    /// <summary>How the hands find the one way in which the cover goes on, in a sentence.</summary>
    public abstract string WayOn(HousingPlan plan);

    /// <summary>Closing and opening.</summary>
    public abstract IEnumerable<HandStep> HandSteps(HousingPlan plan);

    /// <summary>Hands itself to whoever treats each form in its own way.</summary>
    public abstract T Accept<T>(IClosureVisitor<T> visitor);
}

/// <summary>Something done for each form of closure; every form adds its method beside its own record.</summary>
/// <typeparam name="T">What comes of it.</typeparam>
public partial interface IClosureVisitor<out T>;

/// <summary>How a cover enters that turns into its place.</summary>
/// <param name="Z">Height at which what keys it is cut when it is closed.</param>
/// <param name="Turn">From where it enters to closed, clockwise.</param>
/// <param name="Lugs">Directions, when closed, of what looks alike: each might enter at another's mouth.</param>
public sealed record ClosureEntry(double Z, Angle Turn, ImmutableArray<Angle> Lugs);
