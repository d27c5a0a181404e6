using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Planning.Holders;

/// <summary>The ways to hold the board's rim. A new form is a class of its own and a line in <see cref="All"/>.</summary>
internal static class HoldForm
{
    /// <summary>Every form.</summary>
    public static ImmutableArray<HoldTraits> All { get; } = [new ClosedHousingForm(), new ClampForm(), new ClipsForm()];

    /// <summary>Where a form finds no place, the closed housing holds the board by what it has anyway.</summary>
    public static HoldInPlan Nothing { get; } = new(All[0], []);

    /// <summary>The form that a plan tries, or a board file wishes for.</summary>
    public static HoldTraits Of(Given given) => All.Single(form => form.Kind == (given.Hold ?? given.File.Housing.Hold));
}

/// <summary>Nothing of its own: the closed housing holds the board by what it has anyway.</summary>
internal sealed class ClosedHousingForm : HoldTraits
{
    /// <inheritdoc />
    public override HoldKind Kind => HoldKind.Auto;

    /// <inheritdoc />
    public override double LipReach(Given given) => 0;

    /// <inheritdoc />
    public override HoldInPlan InPlan(Given given, ShellPlan shell, Reasons reasons) => new(this, []);

    /// <inheritdoc />
    public override (string What, double Height)? BelowBoard(Given given, double gap) => null;

    /// <inheritdoc />
    public override IEnumerable<(string What, double Height)> OverBoard(Given given, double gap, LipSection lip) => [];

    /// <inheritdoc />
    public override HolderPlan? Plan(HousingDraft draft, FrontSide front, ClosurePlan closure, Reasons reasons) => null;
}
