using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Hands;

namespace ShellForge.Output.Page;

/// <summary>Everything the report page shows, already put into words.</summary>
public sealed record PageContent
{
    /// <summary>Name of the housing.</summary>
    public required string Name { get; init; }

    /// <summary>Revision mark; empty for none.</summary>
    public string Revision { get; init; } = "";

    /// <summary>The verdict.</summary>
    public required PageVerdict Verdict { get; init; }

    /// <summary>Short answers to the first questions.</summary>
    public required ImmutableArray<PageAnswer> Answers { get; init; }

    /// <summary>The few figures to keep in sight while numbers are tried.</summary>
    public ImmutableArray<(string What, string Value)> Facts { get; init; } = [];

    /// <summary>Findings, worst first.</summary>
    public required ImmutableArray<PageFinding> Findings { get; init; }

    /// <summary>Bodies of the 3D view, from the floor up.</summary>
    public required ImmutableArray<PageBody> Bodies { get; init; }

    /// <summary>The computed light on the diffuser's face; null when there is none.</summary>
    public PageLight? Light { get; init; }

    /// <summary>A still picture of the housing, for paper and where no script runs; null for none.</summary>
    public byte[]? Still { get; init; }

    /// <summary>Dimensioned drawings.</summary>
    public required ImmutableArray<PageDrawing> Drawings { get; init; }

    /// <summary>Light and heat: pictures.</summary>
    public ImmutableArray<PagePicture> Pictures { get; init; } = [];

    /// <summary>Light, heat and power: figures in words.</summary>
    public ImmutableArray<(string What, string Value, string Meaning)> Figures { get; init; } = [];

    /// <summary>Temperatures of every body, as a table.</summary>
    public PageTable? Temperatures { get; init; }

    /// <summary>What to have at hand.</summary>
    public required ImmutableArray<(string Item, int Count)> Shopping { get; init; }

    /// <summary>How each part is printed.</summary>
    public required ImmutableArray<PagePart> Parts { get; init; }

    /// <summary>The maker's G-code beside the plan: a column a file; null where none was given.</summary>
    public PageTable? Sliced { get; init; }

    /// <summary>Sentences that hold for all prints: what to switch off in the slicer.</summary>
    public ImmutableArray<string> PrintAdvice { get; init; } = [];

    /// <summary>Sentences about the settings of single parts and about the estimates.</summary>
    public ImmutableArray<string> PrintNotes { get; init; } = [];

    /// <summary>Assembly in the order of the hands.</summary>
    public required ImmutableArray<PageStep> Steps { get; init; }

    /// <summary>Every resolved value.</summary>
    public required ImmutableArray<(string Path, string Value, string From, string Why)> Resolved { get; init; }

    /// <summary>Cautions that belong to no step.</summary>
    public ImmutableArray<HandCaution> Cautions { get; init; } = [];

    /// <summary>Set when the page follows a file.</summary>
    public PageLive? Live { get; init; }
}

/// <summary>A table.</summary>
/// <param name="Caption">What it is of.</param>
/// <param name="Heads">Heads of its columns.</param>
/// <param name="Rows">Its cells.</param>
public sealed record PageTable(string Caption, ImmutableArray<string> Heads, ImmutableArray<ImmutableArray<string>> Rows);

/// <summary>The verdict.</summary>
/// <param name="Kind">good, warn or stop.</param>
/// <param name="Words">In words.</param>
public sealed record PageVerdict(string Kind, string Words);

/// <summary>A short answer to one of the first questions.</summary>
/// <param name="Question">As a maker asks it.</param>
/// <param name="Answer">In a sentence or two.</param>
/// <param name="At">The place it is about, as assembled, mm; null for none.</param>
public sealed record PageAnswer(string Question, string Answer, Point3? At = null);

/// <summary>A finding on the page.</summary>
public sealed record PageFinding(
    int Number, string Severity, string Rule, string Subject, string Message, string Data, string Remedy, Point3? At, string Accepted);

/// <summary>A body of the 3D view, as assembled.</summary>
/// <param name="Name">Name of the part, or of what it belongs to on the board.</param>
/// <param name="Label">For people.</param>
/// <param name="Mesh">The written mesh.</param>
/// <param name="Colour">Colour as <c>#rrggbb</c>.</param>
/// <param name="Opacity">1: opaque.</param>
/// <param name="Level">Place in the stack, from 0: how far it moves when the housing is pulled apart.</param>
/// <param name="Translucent">Whether it glows with the computed light.</param>
/// <param name="BelongsTo">The name whose tick box shows and hides it.</param>
public sealed record PageBody(
    string Name, string Label, Mesh Mesh, string Colour, double Opacity, double Level, bool Translucent, string BelongsTo);

/// <summary>A picture laid on the diffuser's face.</summary>
/// <param name="Png">The file.</param>
/// <param name="Extent">What it covers, mm: of the plane; of a band in the wall, the whole way round in degrees and z in mm.</param>
/// <param name="Around">Whether it goes round the wall.</param>
public sealed record PageLight(byte[] Png, Box2 Extent, bool Around);

/// <summary>A drawing.</summary>
/// <param name="Title">For people.</param>
/// <param name="Svg">A whole SVG document without XML head.</param>
/// <param name="Width">Width of the sheet, mm.</param>
/// <param name="Height">Height of the sheet, mm.</param>
public sealed record PageDrawing(string Title, string Svg, double Width, double Height);

/// <summary>A picture.</summary>
/// <param name="Caption">What it shows.</param>
/// <param name="Alternative">For those who do not see it.</param>
/// <param name="Png">The file.</param>
/// <param name="Dark">Whether it is a picture of light in the dark.</param>
public sealed record PagePicture(string Caption, string Alternative, byte[] Png, bool Dark);

/// <summary>How a part is printed.</summary>
public sealed record PagePart(
    string Name, string File, string Filament, string Size, string Mass, string Time, string Orientation, string Layers, string Walls,
    string Fill, string Pauses, ImmutableArray<string> Solid);

/// <summary>A step of the assembly.</summary>
/// <param name="Title">What the hands do.</param>
/// <param name="Text">How.</param>
/// <param name="Check">What to check after it; empty for nothing.</param>
/// <param name="Cautions">Where the hand is at risk.</param>
/// <param name="Tools">Tools for it.</param>
/// <param name="Png">A picture; null for none.</param>
/// <param name="Alternative">The picture in words.</param>
public sealed record PageStep(
    string Title, string Text, string Check, ImmutableArray<HandCaution> Cautions, ImmutableArray<string> Tools, byte[]? Png,
    string Alternative);

/// <summary>What the page needs to follow a file.</summary>
/// <param name="Version">Counts the good versions of the file.</param>
/// <param name="Tries">Numbers that can be tried.</param>
/// <param name="Checked">Whether the rules have been run; the housing is shown before.</param>
/// <param name="Mistakes">Mistakes in the file, each with its place and the line it stands in.</param>
public sealed record PageLive(long Version, ImmutableArray<PageTry> Tries, bool Checked = true,
    ImmutableArray<PageMistake> Mistakes = default)
{
    /// <summary>The file that is written in on the page, by name, and what the page's requests must carry; null for none.</summary>
    public (string File, string Key)? Written { get; init; }
}

/// <summary>A mistake in the file that is followed.</summary>
/// <param name="Text">With its place.</param>
/// <param name="Source">The line it stands in; empty when it stands in none.</param>
/// <param name="Line">The line of the followed file, from 1; 0 when it is in none.</param>
/// <param name="Column">The column, from 1; 0 when the whole line is meant.</param>
public sealed record PageMistake(string Text, string Source, int Line = 0, int Column = 0);

/// <summary>A number that can be tried.</summary>
public sealed record PageTry(string Path, string Label, double Value, double Least, double Most, double Step);
