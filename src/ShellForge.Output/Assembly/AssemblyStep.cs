using System.Collections.Immutable;

namespace ShellForge.Output.Assembly;

/// <summary>A step of the assembly, in the order of the hands.</summary>
public sealed record AssemblyStep
{
    /// <summary>What the hands do.</summary>
    public required string Title { get; init; }

    /// <summary>How.</summary>
    public required string Text { get; init; }

    /// <summary>What to check after it.</summary>
    public required string Check { get; init; }

    /// <summary>Where the hand or the eye is at risk; empty for none.</summary>
    public string Caution { get; init; } = "";

    /// <summary>Tools for it.</summary>
    public ImmutableArray<string> Tools { get; init; } = [];

    /// <summary>Bodies that a picture of this step shows, from the floor up: names of parts, and "board".</summary>
    public ImmutableArray<string> Shown { get; init; } = [];

    /// <summary>The body that is being put in place, drawn lifted; null for none.</summary>
    public string? Lifted { get; init; }
}
