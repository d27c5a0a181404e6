using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Hands;

namespace ShellForge.Planning.Plan;

/// <summary>
/// The exit of a soldered round cable. Every stage asks the exit itself; nobody but its own builder knows which form it is. A new form is a
/// record of its own, and the compiler asks it for every answer.
/// </summary>
public abstract record CableExitPlan
{
    private protected CableExitPlan()
    {
    }

    /// <summary>Where it leaves, as a board angle.</summary>
    public required Angle At { get; init; }

    /// <summary>The cable.</summary>
    public required RoundCable Cable { get; init; }

    /// <summary>The name by which it is told from other cables; null where it is the only one.</summary>
    public required string? Name { get; init; }

    /// <summary>How many numbers of face tags an exit has.</summary>
    public const int FacesEach = 2;

    /// <summary>What findings about an exit are about.</summary>
    /// <param name="name">The name by which it is told from others; null where it is the only one.</param>
    internal static string SubjectOf(string? name) => name is null ? "cable exit" : $"cable exit {name}";

    /// <summary>Cable diameter, mm.</summary>
    public double CableDiameter => Cable.Diameter;

    /// <summary>What findings about it are about.</summary>
    public string Subject => SubjectOf(Name);

    /// <summary>The exit in short, with its article.</summary>
    public string InBrief => Name is null ? "the exit" : $"the exit '{Name}'";

    /// <summary>The exit in messages, with its article.</summary>
    public string Spoken => Name is null ? "the cable exit" : $"the exit of the cable '{Name}'";

    /// <summary>The cable in a sentence, with its article: "the cable".</summary>
    public string TheCable => Name is null ? "the cable" : $"the cable '{Name}'";

    /// <summary>What its notes on drawings begin with: "cable".</summary>
    private protected string Noted => Name is null ? "cable" : $"cable {Name}";

    /// <summary>The cover's tongue in its opening; null where the cover has no part in it.</summary>
    public abstract PlacedTongue? Tongue { get; }

    /// <summary>What it takes of the wall near the parting line; null where it leaves the wall alone.</summary>
    public abstract ExitAtRim? AtRim { get; }

    /// <summary>What stands near the rim for it, where ports and posts crowd, each with its name: "the cable exit".</summary>
    public abstract ImmutableArray<(string What, Point2 At)> NearRim { get; }

    /// <summary>What it takes of the room on the tub's floor, in plan: holes, posts, knot, and the cable's way to them.</summary>
    /// <param name="shell">Walls and floor.</param>
    /// <param name="beside">Left free beside all of it, mm.</param>
    public abstract Region TakenInside(ShellPlan shell, double beside);

    /// <summary>What it cuts from the outer floor, in plan.</summary>
    public abstract Region TakenOutside { get; }

    /// <summary>Where the cable goes outside the housing.</summary>
    /// <param name="beside">Left free beside it, mm.</param>
    /// <param name="bend">In how many of its diameters it bends.</param>
    public abstract CableWay Outside(double beside, double bend);

    /// <summary>The hole that the cable needs in what the housing is put on; null where it leaves beside it.</summary>
    public abstract SurfaceHole? ThroughSurface { get; }

    /// <summary>Where its leads come from, a little way inside the room.</summary>
    /// <param name="by">How far inside the wall's face, mm.</param>
    public abstract Point2 LeadsFrom(double by);

    /// <summary>How its leads bend on their way to a joint.</summary>
    /// <param name="joint">The joint.</param>
    public abstract LeadBend Bend(Point3 joint);

    /// <summary>What has to be at hand for it.</summary>
    public abstract ImmutableArray<ShoppingItem> Shopping { get; }

    /// <summary>Notes on the drawing of the tub, each with the place that its leader points to.</summary>
    /// <param name="shell">Walls and floor.</param>
    public abstract ImmutableArray<PlanNote> Notes(ShellPlan shell);

    /// <summary>What the hands do for it.</summary>
    /// <param name="plan">The whole plan, this exit in it.</param>
    public abstract IEnumerable<HandStep> HandSteps(HousingPlan plan);

    /// <summary>Name of its faces in messages, with its article.</summary>
    /// <param name="number">Number of the face among its own, from 0 to <see cref="FacesEach"/> - 1.</param>
    public abstract string NameOf(int number);

    /// <summary>Calls the method of a visitor for this form.</summary>
    public abstract T Accept<T>(ICableExitVisitor<T> visitor);

    /// <summary>Two equal arcs, level at both ends: radius = (way^2 + rise^2) / (4 rise).</summary>
    private protected static LeadBend TwoArcs(Point3 from, Point3 to)
    {
        double rise = Math.Abs(to.Z - from.Z);
        double way = Point2.Distance(new Point2(from.X, from.Y), new Point2(to.X, to.Y));
        return new LeadBend(
            rise == 0 ? double.PositiveInfinity : ((way * way) + (rise * rise)) / (4 * rise), 0.5 * (from + to));
    }
}

/// <summary>Something done for each form of cable exit; every form adds its method beside its own record.</summary>
/// <typeparam name="T">What comes of it.</typeparam>
public partial interface ICableExitVisitor<out T>;

/// <summary>What an exit takes of the wall.</summary>
/// <param name="At">Its middle, as a direction from the axis.</param>
/// <param name="Width">Along the wall, mm.</param>
/// <param name="OpensRim">Whether it cuts the tub's rim.</param>
public sealed record ExitAtRim(Angle At, double Width, bool OpensRim);

/// <summary>The way of a cable outside the housing.</summary>
/// <param name="Region">In plan, with the room beside it.</param>
/// <param name="Lowest">z of its side towards the floor, mm.</param>
/// <param name="Towards">Direction in plan in which it leaves; null where it leaves behind the floor.</param>
public sealed record CableWay(Region Region, double Lowest, Angle? Towards);

/// <summary>A hole in what a housing is put on.</summary>
/// <param name="At">Its middle in the housing's plan.</param>
/// <param name="Diameter">Least diameter, mm.</param>
/// <param name="Bend">Least free air between the outer floor and the surface in which the cable bends away without a hole, mm.</param>
public sealed record SurfaceHole(Point2 At, double Diameter, double Bend);

/// <summary>The bend of leads between an exit and their joint.</summary>
/// <param name="Radius">Its radius, mm; infinite where they lie straight.</param>
/// <param name="At">Its middle.</param>
public sealed record LeadBend(double Radius, Point3 At);

/// <summary>A note on a drawing.</summary>
/// <param name="At">What its leader points to, in plan.</param>
/// <param name="Text">Its text.</param>
public sealed record PlanNote(Point2 At, string Text);
