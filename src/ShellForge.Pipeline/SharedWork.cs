using ShellForge.Checks.Gauges;
using ShellForge.Housing;

namespace ShellForge.Pipeline;

/// <summary>
/// What several housings have in common: parts that are drawn alike are evaluated, sliced, measured and estimated once. Any number of
/// threads may make housings with one; each housing is the same to the byte as one that is made alone.
/// </summary>
public sealed class SharedWork
{
    /// <summary>Evaluated parts.</summary>
    public KeptParts Parts { get; } = new();

    /// <summary>What was measured on them; it goes when its part does.</summary>
    public KeptGauges Gauges { get; } = new();
}
