using System.Collections.Immutable;
using ShellForge.Board.Diagnostics;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Description;

/// <summary>
/// Everything the maker has said, read and checked, with profiles looked up and patterns written out. What was left open is null:
/// deciding it is the plan's work. Coordinates are mm from the board's centre, seen from the top side, x right, y up; angles
/// run counter-clockwise from +x.
/// </summary>
public sealed record BoardFile
{
    /// <summary>What the housing is called.</summary>
    public required string Name { get; init; }

    /// <summary>Revision or variant mark, set inside every part; empty for none.</summary>
    public string Revision { get; init; } = "";

    /// <summary>The board angle that points up in use.</summary>
    public Angle Up { get; init; } = Angle.FromDegrees(90);

    /// <summary>The populated board.</summary>
    public required CircuitBoard Board { get; init; }

    /// <summary>What is wanted of the housing.</summary>
    public required HousingSpec Housing { get; init; }

    /// <summary>Supply and brightness.</summary>
    public required PowerSpec Power { get; init; }

    /// <summary>Printer and filaments.</summary>
    public required PrintSpec Print { get; init; }

    /// <summary>Where the finished thing lives.</summary>
    public required UseSpec Use { get; init; }

    /// <summary>Rules that the maker has accepted to be broken, each with the reason.</summary>
    public ImmutableArray<AcceptedRule> Accept { get; init; } = [];

    /// <summary>
    /// What the reader told of the file that does not keep it from being used: what is still to do, what does not fit together. In the order
    /// of their places.
    /// </summary>
    public ImmutableArray<Diagnostic> Remarks { get; init; } = [];

    /// <summary>
    /// Where each value stood in the file, by dotted path ("housing.walls", "board.holes[0].diameter"): for `resolved` and for
    /// findings that point back.
    /// </summary>
    public ImmutableDictionary<string, FilePlace> Places { get; init; } = ImmutableDictionary<string, FilePlace>.Empty;
}

/// <summary>A place in a text file, both counted from 1.</summary>
public readonly record struct FilePlace(string File, int Line, int Column);

/// <summary>A rule that the maker accepts to be broken.</summary>
public sealed record AcceptedRule(string Rule, string Why);
