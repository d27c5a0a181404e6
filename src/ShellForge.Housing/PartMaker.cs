using System.Collections.Immutable;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Remembering;

namespace ShellForge.Housing;

/// <summary>From a plan to meshes: builds the parts and evaluates them.</summary>
public static class PartMaker
{
    // Loose bodies below this are crumbs, mm3: a quarter of a millimetre across and as long as two lines are wide, less than a nozzle
    // drools. They are left where two cuts nearly meet, and no slicer lays them.
    private const double Crumb = 0.05;

    // No part has a hollow that is meant. What features leave shut between them up to this, mm3, is a line or two of plastic more.
    private const double Hollow = 20;

    // With what is measured on it.
    private const long BytesOfTriangle = 300;

    /// <summary>
    /// The parts of a plan, in its order. They share nothing, so they are evaluated side by side. A part that fails has a defect in place
    /// of a mesh.
    /// </summary>
    /// <param name="plan">What to make.</param>
    /// <param name="memory">Knows parts of other housings; those drawn alike are taken from it. Null to compute every part.</param>
    /// <param name="cancel">Stops the evaluation.</param>
    public static ImmutableArray<MadePart> Make(HousingPlan plan, WorkMemory? memory = null, CancellationToken cancel = default)
    {
        ImmutableArray<HousingPart> parts = HousingBuilder.Build(plan);
        var made = new MadePart[parts.Length];
        memory ??= new WorkMemory();
        SolidOutcome Evaluated(Solid solid, string digest) => memory.Of(new SolidKey(digest), () => Evaluate(solid, cancel), BytesOf);
        Parallel.For(0, parts.Length, new ParallelOptions { CancellationToken = cancel }, i => made[i] = new MadePart
        {
            Plan = parts[i].Plan,
            InPrint = Evaluated(parts[i].InPrint, SolidDigest.Of(parts[i].InPrint)),
            Unmarked = parts[i].Unmarked is { } solid && SolidDigest.Of(solid) is var digest
                ? new UnmarkedPart(digest, new Lazy<SolidOutcome>(() => Evaluated(solid, digest))) : null,
            Memory = memory,
        });
        return [.. made];
    }

    /// <summary>A part's mesh, without crumbs.</summary>
    internal static SolidOutcome Evaluate(Solid solid, CancellationToken cancel)
    {
        SolidOutcome outcome = SolidEvaluator.Evaluate(solid, cancel);
        return outcome.Solid is { } mesh ? outcome with { Solid = ShellSplit.WithoutCrumbs(mesh, Crumb, Hollow) } : outcome;
    }

    private static long BytesOf(SolidOutcome outcome) => BytesOfTriangle * (outcome.Solid?.TriangleCount ?? 0);

    private sealed record SolidKey(string Digest);
}
