using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Openings;

/// <summary>
/// A way to reach a part on the board from outside, before anything of it is decided. A new form is a class of its own and a line in
/// <see cref="All"/>; the compiler asks it for every answer. What it becomes is an <see cref="OpeningInPlan"/> and then an
/// <see cref="OpeningPlan"/>, which answer everybody else.
/// </summary>
internal abstract class OpeningForm
{
    // Each makes its form for a part that it suits, null for others; the first that suits is taken.
    private static readonly ImmutableArray<Func<BoardPart, OpeningForm?>> All = [PortForm.Suiting, PinHoleForm.Suiting];

    private protected OpeningForm(BoardPart part) => Part = part;

    /// <summary>
    /// What of it closure screws keep off in the wall: its middle, and half its width along the wall, mm; null where it leaves the wall
    /// alone.
    /// </summary>
    public abstract (Angle At, double HalfWidth)? AtRim { get; }

    /// <summary>Everything of it in plan; null, with a refusal, where there is no way to the part.</summary>
    /// <param name="given">What is decided before.</param>
    /// <param name="reasons">Takes the reasons.</param>
    public abstract OpeningInPlan? InPlan(OpeningGiven given, Reasons reasons);

    /// <summary>The part that it is for.</summary>
    protected BoardPart Part { get; }

    /// <summary>Whether a board file that does not say 'port:' means it to be open.</summary>
    protected abstract bool IsOpenUnsaid(BoardFile file);

    /// <summary>The form that suits a part; null where none does.</summary>
    public static OpeningForm? For(BoardPart part) => All.Select(make => make(part)).FirstOrDefault(form => form is not null);

    /// <summary>The openings that a board file wishes for.</summary>
    public static IEnumerable<OpeningForm> Of(BoardFile file) => file.Board.Parts.Where(part => part.Port != PortWish.Closed)
        .Select(For).OfType<OpeningForm>().Where(form => form.Part.Port == PortWish.Open || form.IsOpenUnsaid(file));

    /// <summary>Decides each opening in plan.</summary>
    public static Decided<ImmutableArray<OpeningInPlan>> InPlan(OpeningGiven given)
    {
        var reasons = new Reasons();
        return reasons.Of<ImmutableArray<OpeningInPlan>>(
            [.. Of(given.File).Select(form => form.InPlan(given, reasons)).OfType<OpeningInPlan>()]);
    }

    /// <summary>Sets each opening at its height.</summary>
    public static Decided<ImmutableArray<OpeningPlan>> AtHeight(BoardFile file, PrintBasis basis, InPlan choice, BoardLevels levels)
    {
        var reasons = new Reasons();
        return reasons.Of<ImmutableArray<OpeningPlan>>(
            [.. choice.Openings.Select(opening => opening.AtHeight(file, basis, choice.Shell, levels, reasons))]);
    }
}

/// <summary>What is decided before an opening is.</summary>
/// <param name="File">The board file.</param>
/// <param name="Basis">Lines and layers.</param>
/// <param name="Shell">Walls and floor.</param>
/// <param name="Posts">Posts whose place holes and closure screws settle.</param>
internal sealed record OpeningGiven(BoardFile File, PrintBasis Basis, ShellPlan Shell, ImmutableArray<PostInPlan> Posts);
