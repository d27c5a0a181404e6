using ShellForge.Geometry.Booleans.Arranging;
using ShellForge.Geometry.Booleans.Classifying;

namespace ShellForge.Geometry.Booleans.Rounding;

/// <summary>What an exact round gives; it can be rounded to the lattice more than once.</summary>
internal sealed record ExactResult(Arrangement Arrangement, Boundary Boundary, Patches Patches, Facets Facets)
{
    /// <summary>The rounded mesh.</summary>
    public RoundedMesh Round(int mergeSteps, bool tidies, int threads, CancellationToken ct) =>
        MeshAssembler.Assemble(this, mergeSteps, tidies, threads, ct);
}
