using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Checks.Findings;

/// <summary>What a finding means for the print.</summary>
public enum Severity
{
    /// <summary>Good to know.</summary>
    Note,

    /// <summary>Print it, but mind this.</summary>
    Warn,

    /// <summary>Do not print.</summary>
    Stop,
}

/// <summary>
/// Something about the product that a maker must know before printing, with its place in space. What is wrong with the input is a
/// diagnostic, not a finding.
/// </summary>
public sealed record Finding
{
    /// <summary>Name of the rule in kebab case, named for the fault it finds: <c>screw-bottoms-out</c>.</summary>
    public required string Rule { get; init; }

    /// <summary>What it means for the print.</summary>
    public required Severity Severity { get; init; }

    /// <summary>What it is about: a printed part, a designator, a screw, a hole.</summary>
    public required string Subject { get; init; }

    /// <summary>What is the matter, one sentence for the maker.</summary>
    public required string Message { get; init; }

    /// <summary>The value found; null where there is none to measure.</summary>
    public double? Measured { get; init; }

    /// <summary>The value it is held against; null where there is none.</summary>
    public double? Limit { get; init; }

    /// <summary>Unit of both: <c>mm</c>, <c>mm2</c>, <c>A</c>, <c>°C</c>; empty for a bare number.</summary>
    public string Unit { get; init; } = "";

    /// <summary>Place in the assembled frame, mm; null where it has none.</summary>
    public Point3? At { get; init; }

    /// <summary>Place in the board file, or in the maker's G-code; null where it is not about something written there.</summary>
    public FilePlace? InFile { get; init; }

    /// <summary>What the maker can do.</summary>
    public required string Remedy { get; init; }

    /// <summary>Why the maker accepts it; null when not accepted. An accepted finding is a note.</summary>
    public string? Accepted { get; init; }
}
