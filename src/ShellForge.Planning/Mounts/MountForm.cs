using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Mounts;

/// <summary>
/// A way to hang, stand or fix a housing, before anything of it is decided. A new form is a class of its own and a line in
/// <see cref="All"/>; the compiler asks it for every answer. What it becomes is a <see cref="MountPlan"/>, which answers everybody else.
/// </summary>
internal abstract class MountForm
{
    // Clear between a mount on the floor and the board, mm.
    private const double UnderBoard = 0.6;

    /// <summary>Every form.</summary>
    public static ImmutableArray<MountForm> All { get; } = [new KeyholeForm(), new MagnetForm(), new StandForm(), new TripodForm(),
        new FeetForm()];

    /// <summary>The wish of a board file that asks for it.</summary>
    public abstract MountKind Kind { get; }

    /// <summary>Least thickness of the floor, mm; 0 for any.</summary>
    public abstract double FloorLeast(PrintBasis basis);

    /// <summary>z of the highest thing that it puts on the floor, mm; 0 for nothing.</summary>
    public abstract double Top(Given given);

    /// <summary>What of it asks for that room, in the words of a reason: "the keyhole's undercut and cap".</summary>
    public abstract string Why { get; }

    /// <summary>Every dimension of it; null, with a refusal, where there is no place for it.</summary>
    public abstract MountPlan? Decide(HousingDraft draft, Reasons reasons);

    /// <summary>The form that a board file wishes for; null for none.</summary>
    public static MountForm? Of(BoardFile file) => All.SingleOrDefault(form => form.Kind == file.Housing.Mount);

    /// <summary>What the form of a board file asks of the tub, before the stack is decided.</summary>
    public static MountNeeds Needs(Given given)
    {
        (BoardFile file, PrintBasis basis) = given;
        if (Of(file) is not { } form || form.Top(given) == 0)
        {
            return new MountNeeds(Of(file)?.FloorLeast(basis) ?? 0, 0, Of(file)?.Why ?? "");
        }

        // Room below the board counts from the floor's inner face, which is not decided yet: from the floor asked for, or the default.
        double floor = basis.Up(Math.Max(file.Housing.Floor ?? PlanRules.Floor, form.FloorLeast(basis)));
        return new MountNeeds(form.FloorLeast(basis), Math.Max(0, form.Top(given) + UnderBoard - floor), form.Why);
    }

    /// <summary>The mount of a housing; null for none.</summary>
    public static Decided<MountPlan?> Chosen(HousingDraft draft)
    {
        // A mount is worth more than a rounder edge: where there is no room for both, the edge gives way.
        Decided<MountPlan?> chosen = ChosenBeside(draft);
        return chosen.Value is null && draft.Shell.HasFloorEdge ? ChosenBeside(draft.WithoutFloorEdge()) : chosen;
    }

    private static Decided<MountPlan?> ChosenBeside(HousingDraft draft)
    {
        var reasons = new Reasons();
        MountPlan? mount = Of(draft.File)?.Decide(draft, reasons);
        reasons.Choice(
            "mount", draft.File.Housing.Mount.ToString().ToLower(CultureInfo.InvariantCulture), Reasons.Origin(draft.File, "housing.mount"),
            mount is null && draft.File.Housing.Mount != MountKind.None ? "asked for, but no place was found" : "as asked");
        return reasons.Of(mount);
    }
}
