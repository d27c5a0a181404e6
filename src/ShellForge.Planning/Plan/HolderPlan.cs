using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Hands;

namespace ShellForge.Planning.Plan;

/// <summary>
/// What holds the board's rim down in the tub, beside screws through its holes. Every stage asks it itself; nobody but its own builder
/// knows which form it is. A new form is a record of its own, and the compiler asks it for every answer.
/// </summary>
public abstract record HolderPlan
{
    private protected HolderPlan()
    {
    }

    /// <summary>To be read after "It is kept down": "by the clamp ring".</summary>
    public abstract string DownBy { get; }

    /// <summary>How far the board may rise before it is stopped, mm.</summary>
    public abstract double Rise { get; }

    /// <summary>Whether it keeps the board from turning in its place.</summary>
    public abstract bool StopsTurning { get; }

    /// <summary>What of it bends aside while the board goes in past it, in plan; empty where nothing has to.</summary>
    public abstract Region GivesWay { get; }

    /// <summary>Name of the part that it belongs to.</summary>
    public abstract string Part { get; }

    /// <summary>Printed parts of its own; none where it is one with the tub.</summary>
    public abstract ImmutableArray<HolderPart> Parts { get; }

    /// <summary>Notes on the drawing of the tub.</summary>
    public abstract ImmutableArray<PlanNote> Notes { get; }

    /// <summary>An upright section that shows it: a direction from the axis, and what it goes through, with its article.</summary>
    public abstract (Angle Direction, string Through) Section { get; }

    /// <summary>What the hands do while the board goes in, after "It is keyed ...".</summary>
    public abstract string PuttingIn { get; }

    /// <summary>What the hands do for it once the board lies in its place, and to take the board out again.</summary>
    /// <param name="plan">The whole plan, this in it.</param>
    public abstract IEnumerable<HandStep> HandSteps(HousingPlan plan);

    /// <summary>Name of its faces in messages, with its article.</summary>
    /// <param name="number">Number of the face tag, from 0.</param>
    public abstract string NameOf(int number);

    /// <summary>Calls the method of a visitor for this form.</summary>
    public abstract T Accept<T>(IHolderVisitor<T> visitor);
}

/// <summary>Something done for each form of holder; every form adds its method beside its own record.</summary>
/// <typeparam name="T">What comes of it.</typeparam>
public partial interface IHolderVisitor<out T>;

/// <summary>A printed part that holds the board.</summary>
/// <param name="Name">Its name, also of its file.</param>
/// <param name="ToPrint">From the assembled frame to the bed.</param>
/// <param name="LiesOn">How it lies there: "top face down".</param>
/// <param name="Pieces">How many loose pieces it is printed in.</param>
public sealed record HolderPart(string Name, Transform3 ToPrint, string LiesOn, int Pieces);

/// <summary>What keeps the board where it lies when the closed housing is turned over, shaken, and a plug is pushed in.</summary>
public sealed record BoardHoldPlan
{
    /// <summary>What keeps it down, to be read after "It is kept down": "by the cover's lip"; null where nothing does.</summary>
    public required string? DownBy { get; init; }

    /// <summary>How far it may rise before it is stopped, mm; 0 where it is held fast or nothing stops it.</summary>
    public required double Rise { get; init; }

    /// <summary>What of its own holds it down, beside screws through its holes; null where the closed housing does.</summary>
    public HolderPlan? Holder { get; init; }

    /// <summary>Posts of the cover that end above it; empty where something else keeps it down.</summary>
    public ImmutableArray<BoardStopPlan> Stops { get; init; } = [];

    /// <summary>z of the stops' lower ends.</summary>
    public double StopBottom { get; init; }

    /// <summary>What stops it from turning in its place, to be read after "by"; null where nothing does.</summary>
    public required string? TurnStoppedBy { get; init; }

    /// <summary>How far it may turn to either side before it is stopped; zero where it can't or nothing stops it.</summary>
    public required Angle Turn { get; init; }
}

/// <summary>A post under the cover that ends above the board.</summary>
/// <param name="Outline">In plan; at the rim it grows out of the cover's wall.</param>
/// <param name="Over">The place on the board that it stops.</param>
public sealed record BoardStopPlan(Region Outline, Point2 Over);
