using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Exits;

/// <summary>
/// A way for a soldered cable out of the housing, before anything of it is decided. A new form is a class of its own and a line in
/// <see cref="All"/>; the compiler asks it for every answer. What it becomes is a <see cref="CableExitPlan"/>, which answers everybody
/// else.
/// </summary>
internal abstract class ExitForm
{
    private static readonly ImmutableArray<Func<RoundCable, ExitForm>> All = [cable => new NotchForm(cable), cable => new FloorForm(cable)];

    private protected ExitForm(RoundCable cable) => Cable = cable;

    /// <summary>The wish of a board file that asks for it.</summary>
    public abstract ExitKind Kind { get; }

    /// <summary>Whether the cover has a tongue in it.</summary>
    public abstract bool HasTongue { get; }

    /// <summary>
    /// What of it closure screws keep off in the wall: its middle, and half its width along the wall, mm; null where it leaves the wall
    /// alone.
    /// </summary>
    public abstract (Angle At, double HalfWidth)? AtRim { get; }

    /// <summary>Least space between the floor's inner face and the board, mm, and what of it asks for that.</summary>
    /// <param name="file">The board file.</param>
    public abstract (string What, double Height) BelowBoard(BoardFile file);

    /// <summary>Where no rest may stand under the board's rim, in plan.</summary>
    /// <param name="shell">Walls and floor.</param>
    public abstract Region Way(ShellPlan shell);

    /// <summary>Every dimension of it; null, with a refusal, where there is no place for it.</summary>
    /// <param name="draft">What is decided before: posts, ports and saddles among it.</param>
    /// <param name="reasons">Takes the reasons.</param>
    public abstract CableExitPlan? Decide(HousingDraft draft, Reasons reasons);

    /// <summary>The cable that goes through it.</summary>
    protected RoundCable Cable { get; }

    /// <summary>The form that a board file wishes for; null where no round cable leaves.</summary>
    public static ExitForm? Of(BoardFile file) => file.Housing.Cable is RoundCable cable
        ? All.Select(make => make(cable)).Single(form => form.Kind == cable.Through)
        : null;

    /// <summary>The exit of a housing; null for none.</summary>
    public static Decided<CableExitPlan?> Chosen(HousingDraft draft)
    {
        // The cable needs its exit more than the floor a round edge.
        Decided<CableExitPlan?> chosen = ChosenBeside(draft);
        return chosen.Value is null && draft.Shell.HasFloorEdge ? ChosenBeside(draft.WithoutFloorEdge()) : chosen;
    }

    private static Decided<CableExitPlan?> ChosenBeside(HousingDraft draft)
    {
        var reasons = new Reasons();
        return reasons.Of(Of(draft.File)?.Decide(draft, reasons));
    }
}
