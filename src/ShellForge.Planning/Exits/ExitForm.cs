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

    /// <summary>The name by which the cable is told from others; null where it is the only one.</summary>
    protected string? Name { get; private set; }

    /// <summary>What findings about it are about.</summary>
    protected string Subject => CableExitPlan.SubjectOf(Name);

    /// <summary>What the paths of its decisions begin with.</summary>
    protected string DecisionPath => Name is null ? "cable" : $"cable.{Name}";

    /// <summary>The forms that a board file wishes for, in its order; none where no round cable leaves.</summary>
    public static ImmutableArray<ExitForm> Of(BoardFile file)
    {
        RoundCable[] cables = [.. file.Housing.Cables.OfType<RoundCable>()];
        return
        [
            .. cables.Select(cable =>
            {
                ExitForm form = All.Select(make => make(cable)).Single(form => form.Kind == cable.Through);
                form.Name = cables.Length > 1 ? cable.Name : null;
                return form;
            }),
        ];
    }

    /// <summary>The exits of a housing; each keeps off those before it.</summary>
    public static Decided<ImmutableArray<CableExitPlan>> Chosen(HousingDraft draft)
    {
        var reasons = new Reasons();
        ImmutableArray<ExitForm> forms = Of(draft.File);

        // Those in the wall stand where they are asked for; those in the floor look for a place beside them.
        foreach (ExitForm form in forms.OrderBy(form => form.AtRim is null))
        {
            // The cable needs its exit more than the floor a round edge.
            Decided<CableExitPlan?> chosen = form.ChosenBeside(draft);
            if (reasons.Take(chosen.Value is null && draft.Shell.HasFloorEdge ? form.ChosenBeside(draft.WithoutFloorEdge()) : chosen)
                is { } exit)
            {
                draft = draft with { CableExits = draft.CableExits.Add(exit) };
            }
        }

        return reasons.Of<ImmutableArray<CableExitPlan>>(
            [.. draft.CableExits.OrderBy(exit => draft.File.Housing.Cables.IndexOf(exit.Cable))]);
    }

    private Decided<CableExitPlan?> ChosenBeside(HousingDraft draft)
    {
        var reasons = new Reasons();
        return reasons.Of(Decide(draft, reasons));
    }
}
