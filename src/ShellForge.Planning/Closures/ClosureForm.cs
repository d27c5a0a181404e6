using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Posts;

namespace ShellForge.Planning.Closures;

/// <summary>
/// A way to hold cover and tub together, asked by every stage that its choice matters to. A new form is a class of its own and a line in
/// <see cref="All"/>; the compiler asks it for every answer. Which form a housing has is settled once, by <see cref="ClosureDecision"/>.
/// </summary>
internal abstract class ClosureForm : ClosureTraits
{
    /// <summary>Every form, in the order in which they are offered in place of one that can't be built.</summary>
    public static ImmutableArray<ClosureForm> All { get; } = [new SnapForm(), new ScrewedForm(), new TwistForm(), new GlueForm()];

    /// <summary>The form of a wish.</summary>
    public static ClosureForm Of(ClosureKind kind) => All.Single(form => form.Kind == kind);

    /// <summary>The wish of a board file that asks for it.</summary>
    public abstract ClosureKind Kind { get; }

    /// <summary>Whether the cover comes off again unharmed.</summary>
    public abstract bool Reopens { get; }

    /// <summary>Places for closure screws, asked of the bare walls; none for forms without screws.</summary>
    public abstract Decided<ImmutableArray<ClosureSite>> Sites(
        Given given, ShellPlan bare, ImmutableArray<Joint> joints, LipRing lip);

    /// <summary>Why this housing can't be closed so; null when it can.</summary>
    public abstract ClosureObstacle? Obstacle(
        Given given, ShellPlan shell, LipRing lip, ImmutableArray<OpeningInPlan> openings);

    /// <summary>Direction of what keys the cover where this form does so itself; null where a rib in a slot has to.</summary>
    public abstract Angle? KeyAt(HousingDraft draft);

    /// <summary>Every dimension of it.</summary>
    /// <param name="draft">What is decided before.</param>
    /// <param name="rim">What is taken of the rim.</param>
    /// <param name="key">What keys the cover.</param>
    /// <param name="lipBottom">z of the lip's end.</param>
    public abstract Decided<ClosurePlan> Plan(HousingDraft draft, RimSectors rim, KeyPlan key, double lipBottom);
}

/// <summary>Why a form can't be built, in the words of the refusal.</summary>
/// <param name="Rule">Name of the refusal.</param>
/// <param name="Why">What is in the way, as the end of a sentence.</param>
/// <param name="Message">The whole sentence, without what is planned instead.</param>
/// <param name="Or">What would make this form possible, as the end of a sentence; null where nothing in the file would.</param>
internal sealed record ClosureObstacle(string Rule, string Why, string Message, string? Or);
