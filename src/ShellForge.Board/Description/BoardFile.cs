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

    /// <summary>Code of the variant of a sweep, part of the names of parts and files; empty for a housing of its own.</summary>
    public string Variant { get; init; } = "";

    /// <summary>What a part or a plate is called in files and slicers: a variant's carry its code.</summary>
    public string NameOf(string part) => Variant.Length == 0 ? part : $"{part}-{Variant}";

    /// <summary>The board angle that points up in use.</summary>
    public Angle Up { get; init; } = Angle.FromDegrees(90);

    /// <summary>The turn that brings what points up in use to the top of a sheet.</summary>
    public Angle Upright => Angle.FromDegrees(90) - Up;

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

    /// <summary>Sizes that were measured on the batch at hand, already taken over.</summary>
    public ImmutableArray<MeasuredSize> Measured { get; init; } = [];

    /// <summary>Rules that the maker has accepted to be broken, each with the reason.</summary>
    public ImmutableArray<AcceptedRule> Accept { get; init; } = [];

    /// <summary>Whether the maker has accepted a rule to be broken.</summary>
    public bool Accepts(string rule) => Accept.Any(entry => entry.Rule == rule);

    /// <summary>
    /// What the reader told of the file that does not keep it from being used: what is still to do, what does not fit together. In the
    /// order of their places.
    /// </summary>
    public ImmutableArray<Diagnostic> Remarks { get; init; } = [];

    /// <summary>
    /// Where each value stood in the file, by dotted path ("housing.walls", "board.holes[0].diameter"): for `resolved` and for
    /// findings that point back.
    /// </summary>
    public ImmutableDictionary<string, FilePlace> Places { get; init; } = ImmutableDictionary<string, FilePlace>.Empty;

    /// <summary>
    /// The same with all files named bare: reasons then point into the board file wherever it lies, and the same file gives the same
    /// report, from whatever folder it was named.
    /// </summary>
    public BoardFile NamingFilesBare() => this with
    {
        Remarks = [.. Remarks.Select(remark => remark with { File = Path.GetFileName(remark.File) })],
        Places = Places.ToImmutableDictionary(place => place.Key, place => place.Value with { File = Path.GetFileName(place.Value.File) }),
    };
}

/// <summary>A place in a text file, both counted from 1.</summary>
public readonly record struct FilePlace(string File, int Line, int Column);

/// <summary>A rule that the maker accepts to be broken.</summary>
public sealed record AcceptedRule(string Rule, string Why);
