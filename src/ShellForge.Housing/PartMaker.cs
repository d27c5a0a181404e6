using System.Collections.Immutable;
using ShellForge.Geometry.Booleans;
using ShellForge.Planning.Plan;

namespace ShellForge.Housing;

/// <summary>From a plan to meshes: builds the parts and evaluates them.</summary>
public static class PartMaker
{
    /// <summary>
    /// The parts of a plan, in its order. They share nothing, so they are evaluated side by side. A part that fails has a defect in place
    /// of a mesh.
    /// </summary>
    /// <param name="plan">What to make.</param>
    /// <param name="kept">Parts of other housings: those that are drawn alike are taken from it. Null to compute every part.</param>
    /// <param name="cancel">Stops the evaluation.</param>
    public static ImmutableArray<MadePart> Make(HousingPlan plan, KeptParts? kept = null, CancellationToken cancel = default)
    {
        ImmutableArray<HousingPart> parts = HousingBuilder.Build(plan);
        var made = new MadePart[parts.Length];
        Parallel.For(0, parts.Length, new ParallelOptions { CancellationToken = cancel }, i =>
            made[i] = new MadePart
            {
                Plan = parts[i].Plan,
                InPrint = kept?.Evaluate(parts[i].InPrint, cancel) ?? SolidEvaluator.Evaluate(parts[i].InPrint, cancel),
            });
        return [.. made];
    }
}
