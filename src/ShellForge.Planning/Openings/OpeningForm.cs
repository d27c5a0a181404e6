using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Openings;

/// <summary>
/// An opening before anything of it is decided: a way to a part on the board, or a hole of the maker's own. What it becomes is an
/// <see cref="OpeningInPlan"/> and then an <see cref="OpeningPlan"/>, which answer everybody else. A new form is a class of its own and a
/// line in <see cref="PartOpeningForm"/> or <see cref="OwnOpeningForm"/>; the compiler asks it for every answer.
/// </summary>
internal abstract class OpeningForm
{
    private protected OpeningForm()
    {
    }

    /// <summary>
    /// What of it closure screws keep off in the wall: its middle, and half its width along the wall, mm; null where it leaves the wall
    /// alone.
    /// </summary>
    public abstract (Angle At, double HalfWidth)? AtRim { get; }

    /// <summary>Everything of it in plan; null, with a refusal, where there is no place for it.</summary>
    /// <param name="given">What is decided before.</param>
    /// <param name="reasons">Takes the reasons.</param>
    public abstract OpeningInPlan? InPlan(OpeningGiven given, Reasons reasons);

    /// <summary>The openings that a board file wishes for: first those that parts need.</summary>
    public static IEnumerable<OpeningForm> Of(BoardFile file) => PartOpeningForm.OfParts(file)
        .Concat<OpeningForm>(file.Housing.Openings.Select(OwnOpeningForm.For));

    /// <summary>Decides each opening in plan.</summary>
    public static Decided<ImmutableArray<OpeningInPlan>> InPlan(OpeningGiven given)
    {
        var reasons = new Reasons();
        return reasons.Of<ImmutableArray<OpeningInPlan>>(
            [.. Of(given.File).Select(form => form.InPlan(given, reasons)).OfType<OpeningInPlan>()]);
    }

    /// <summary>Sets each opening at its height, in the order of the wishes: a later one keeps off those before it.</summary>
    public static Decided<ImmutableArray<OpeningPlan>> AtHeight(Given given, InPlan choice, BoardLevels levels)
    {
        var reasons = new Reasons();
        var height = new HeightGiven(given, choice, levels, []);
        foreach (OpeningInPlan opening in choice.Openings)
        {
            if (opening.AtHeight(height, reasons) is { } plan)
            {
                height = height with { Before = height.Before.Add(plan) };
            }
        }

        return reasons.Of(height.Before);
    }

    /// <summary>All openings, those in the front with them.</summary>
    /// <param name="given">What is decided before, the front with it.</param>
    public static Decided<ImmutableArray<OpeningPlan>> InFront(FrontGiven given)
    {
        var reasons = new Reasons();
        foreach (OpeningInPlan opening in given.Height.Choice.Openings)
        {
            if (opening.InFront(given, reasons) is { } plan)
            {
                given = given with { Height = given.Height with { Before = given.Height.Before.Add(plan) } };
            }
        }

        return reasons.Of(given.Height.Before);
    }
}

/// <summary>A way to reach a part on the board from outside, before anything of it is decided.</summary>
internal abstract class PartOpeningForm : OpeningForm
{
    // Each makes its form for a part that it suits, null for others; the first that suits is taken.
    private static readonly ImmutableArray<Func<BoardPart, PartOpeningForm?>> All = [PortForm.Suiting, PinHoleForm.Suiting];

    private protected PartOpeningForm(BoardPart part) => Part = part;

    /// <summary>The part that it is for.</summary>
    protected BoardPart Part { get; }

    /// <summary>Whether a board file that does not say 'port:' means it to be open.</summary>
    protected abstract bool IsOpenUnsaid(BoardFile file);

    /// <summary>The form that suits a part; null where none does.</summary>
    public static PartOpeningForm? For(BoardPart part) =>
        All.Select(make => make(part)).FirstOrDefault(form => form is not null);

    /// <summary>The openings to parts that a board file wishes for.</summary>
    public static IEnumerable<PartOpeningForm> OfParts(BoardFile file) => file.Board.Parts.Where(part => part.Port != PortWish.Closed)
        .Select(For).OfType<PartOpeningForm>().Where(form => form.Part.Port == PortWish.Open || form.IsOpenUnsaid(file));
}

/// <summary>What is decided before an opening is.</summary>
/// <param name="File">The board file.</param>
/// <param name="Basis">Lines and layers.</param>
/// <param name="Shell">Walls and floor.</param>
/// <param name="Posts">Posts whose place holes and closure screws settle.</param>
internal sealed record OpeningGiven(BoardFile File, PrintBasis Basis, ShellPlan Shell, ImmutableArray<PostInPlan> Posts)
{
    /// <summary>What is decided before an opening is, from what every decision starts from.</summary>
    public OpeningGiven(Given given, ShellPlan shell, ImmutableArray<PostInPlan> posts)
        : this(given.File, given.Basis, shell, posts)
    {
    }
}
