using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Hands;

namespace ShellForge.Planning.Plan;

/// <summary>
/// How the housing is hung, stood or fixed. Every stage asks the mount itself; nobody but its own builder knows which form it is. A new
/// form is a record of its own, and the compiler asks it for every answer.
/// </summary>
public abstract record MountPlan
{
    private protected MountPlan()
    {
    }

    /// <summary>What it takes of the floor in plan, with the room round it that holes and lettering keep off.</summary>
    public abstract Region Taken { get; }

    /// <summary>What it needs of the outer floor, in plan: recesses, slots and holes in it, or a level face over what it holds.</summary>
    public abstract Region OnOuterFloor { get; }

    /// <summary>What of it stands near the rim, where ports and posts crowd, each with its name: "the left keyhole".</summary>
    public abstract ImmutableArray<(string What, Point2 At)> AtRim { get; }

    /// <summary>What has to be at hand for it.</summary>
    public abstract ImmutableArray<ShoppingItem> Shopping { get; }

    /// <summary>Notes on the drawing of the tub, each with the place that its leader points to.</summary>
    public abstract ImmutableArray<PlanNote> Notes { get; }

    /// <summary>Distances between places of it on the drawing of the tub.</summary>
    public abstract ImmutableArray<MountDistance> Distances { get; }

    /// <summary>Posts of the tub that hold inserts of its own.</summary>
    public abstract ImmutableArray<InsertPost> InsertPosts { get; }

    /// <summary>Where holes are drilled for it, outside the housing; null where nothing is drilled.</summary>
    public abstract DrillPlan? Drilling { get; }

    /// <summary>Printed parts of its own, beside those of the housing.</summary>
    public abstract ImmutableArray<MountPart> Parts { get; }

    /// <summary>How it stands on a table by itself; null where it does not.</summary>
    public abstract StandingPlan? Standing { get; }

    /// <summary>Free air between the outer floor and what the housing is put on, mm; infinite where its back stands free.</summary>
    public abstract double OffSurface { get; }

    /// <summary>What the hands do for it.</summary>
    /// <param name="plan">The whole plan, this mount in it.</param>
    public abstract IEnumerable<HandStep> HandSteps(HousingPlan plan);

    /// <summary>Name of its faces in messages.</summary>
    /// <param name="number">Number of the face tag, from 0.</param>
    public abstract string NameOf(int number);

    /// <summary>Calls the method of a visitor for this form.</summary>
    public abstract T Accept<T>(IMountVisitor<T> visitor);
}

/// <summary>Something done for each form of mount; every form adds its method beside its own record.</summary>
/// <typeparam name="T">What comes of it.</typeparam>
public partial interface IMountVisitor<out T>;

/// <summary>A distance on a drawing.</summary>
/// <param name="From">One end, in plan.</param>
/// <param name="To">The other end.</param>
/// <param name="What">What it is, before its value; may be empty.</param>
public sealed record MountDistance(Point2 From, Point2 To, string What);

/// <summary>Holes to be drilled in a wall.</summary>
/// <param name="Holes">Their middles in the housing's plan, seen by the viewer with the housing hung in its place.</param>
/// <param name="Fastener">What goes into each: "wall screw 3.5 to 4.0".</param>
public sealed record DrillPlan(ImmutableArray<Point2> Holes, string Fastener);

/// <summary>A printed part of a mount.</summary>
/// <param name="Name">Its name, also of its file.</param>
/// <param name="ToPrint">From the assembled frame to the bed.</param>
/// <param name="LiesOn">How it lies there: "foot down".</param>
public sealed record MountPart(string Name, Transform3 ToPrint, string LiesOn);

/// <summary>How a housing stands on a table.</summary>
/// <param name="ToTable">From the assembled frame to one whose z = 0 is the table.</param>
/// <param name="Foot">Where it touches the table, in that frame.</param>
public sealed record StandingPlan(Transform3 ToTable, Region Foot);
