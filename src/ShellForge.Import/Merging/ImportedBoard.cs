using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Drawing;
using ShellForge.Import.Files;
using ShellForge.Import.Patterns;

namespace ShellForge.Import.Merging;

/// <summary>A file with what was found in it; loops are given for drawings.</summary>
internal sealed record ImportedFile(string Name, FileKind Kind, string Words, string Unit)
{
    public int? Holes { get; init; }

    public int? Slots { get; init; }

    public int? Parts { get; init; }

    public int? OpenChains { get; init; }

    public IReadOnlyList<OutlineLoop>? Loops { get; init; }

    /// <summary>Loops drawn a second time.</summary>
    public int RepeatedLoops { get; init; }

    /// <summary>What its role in the import is: taken, or why not.</summary>
    public string Role { get; init; } = "";
}

/// <summary>A closed loop inside the edge.</summary>
/// <param name="Loop">Its path.</param>
/// <param name="AlsoDrilled">Whether a drill file has the same hole.</param>
internal sealed record ImportedCutout(OutlineLoop Loop, bool AlsoDrilled);

/// <summary>The edge of the board, in file coordinates.</summary>
internal sealed record ImportedOutline(
    string File, string From, OutlineLoop Outer, ImmutableArray<ImportedCutout> Cutouts, double LargestGap, string Unit)
{
    /// <summary>Middle of the board: of its circle, of its bore, or of its box.</summary>
    public Point2 Centre => Outer.Circle?.Centre ?? Bore?.Loop.Circle?.Centre ?? Outer.Bounds.Centre;

    /// <summary>The round opening over the middle, if there is one.</summary>
    public ImportedCutout? Bore
    {
        get
        {
            Point2 middle = Outer.Circle?.Centre ?? Outer.Bounds.Centre;
            ImportedCutout? best = null;
            foreach (ImportedCutout c in Cutouts)
            {
                if (c.Loop.Circle is { } circle && !c.AlsoDrilled
                    && Point2.Distance(circle.Centre, middle) <= circle.Diameter / 2
                    && (best is null || c.Loop.Area > best.Loop.Area))
                {
                    best = c;
                }
            }

            return best;
        }
    }
}

/// <summary>What a drilled hole is.</summary>
internal enum HoleKind
{
    /// <summary>Takes a screw.</summary>
    Mounting,

    /// <summary>Joins layers.</summary>
    Via,

    /// <summary>Takes a lead.</summary>
    Pin,

    /// <summary>Made for the board house or a locating peg.</summary>
    Tooling,

    /// <summary>Cuts the edge.</summary>
    Notch,

    /// <summary>Lies off the board.</summary>
    Outside,

    /// <summary>Not told.</summary>
    Unknown,
}

/// <summary>A hole, in mm and file coordinates.</summary>
internal sealed record ImportedHole(Point2 At, double Diameter, bool? Plated, HoleKind Kind, string File, int Line);

/// <summary>A slot, in mm and file coordinates.</summary>
internal sealed record ImportedSlot(ImmutableArray<Point2> Path, double Width, double Length, bool? Plated, string File, int Line);

/// <summary>Where a part's height comes from.</summary>
internal enum HeightSource
{
    /// <summary>Nowhere.</summary>
    [JsonStringEnumMemberName("unknown")]
    None,

    /// <summary>The library file.</summary>
    Library,

    /// <summary>The library file, but the number is a filler.</summary>
    Filler,

    /// <summary>Our package of that name.</summary>
    Package,
}

/// <summary>A placed part.</summary>
internal sealed record ImportedPart
{
    public required string Reference { get; init; }

    public required string Package { get; init; }

    public string Value { get; init; } = "";

    /// <summary>Point as written in its file, mm.</summary>
    public required Point2 FileAt { get; init; }

    /// <summary>Point in board coordinates: mirrored back and shifted where that was found.</summary>
    public required Point2 At { get; init; }

    /// <summary>Turn as written.</summary>
    public required double FileRotation { get; init; }

    /// <summary>Turn counter-clockwise seen from the top.</summary>
    public required double Rotation { get; init; }

    public required bool Bottom { get; init; }

    /// <summary>Top of the body above its board face, mm, as far as known.</summary>
    public double? Height { get; init; }

    /// <summary>The height as the library has it, filler or not.</summary>
    public double? LibraryHeight { get; init; }

    public HeightSource HeightFrom { get; init; }

    /// <summary>Body in its own frame, mm; empty when unknown.</summary>
    public Box2 Body { get; init; } = Box2.Empty;

    /// <summary>Our package; null when none matches.</summary>
    public PackageMatch? Match { get; init; }

    /// <summary>Why it is no part of the housing's board; null for parts.</summary>
    public string? Skip { get; init; }

    /// <summary>Whether the file counts it as placed.</summary>
    public bool Placed { get; init; } = true;

    public required string File { get; init; }

    public required int Line { get; init; }

    /// <summary>Middle of the body in board coordinates.</summary>
    public Point2 BodyCentre => Body.IsEmpty ? At : At + Mirror(Body.Centre).Turned(Angle.FromDegrees(Rotation));

    // The outline of a bottom part is given as seen from its own side.
    private Point2 Mirror(Point2 p) => Bottom ? new Point2(-p.X, p.Y) : p;
}

/// <summary>LEDs in one pattern.</summary>
/// <param name="Pattern">The pattern, with the indices of its parts.</param>
/// <param name="Counted">Whether their designators count on in it.</param>
internal sealed record LedPattern(PlacePattern Pattern, bool Counted);

/// <summary>Everything an import found.</summary>
internal sealed record ImportedBoard
{
    public required ImmutableArray<ImportedFile> Files { get; init; }

    public ImportedOutline? Outline { get; init; }

    public ImmutableArray<ImportedHole> Holes { get; init; } = [];

    public ImmutableArray<ImportedSlot> Slots { get; init; } = [];

    public ImmutableArray<ImportedPart> Parts { get; init; } = [];

    public double? Thickness { get; init; }

    public string ThicknessFrom { get; init; } = "";

    /// <summary>Patterns of LEDs, in the order of their first designators.</summary>
    public ImmutableArray<LedPattern> LedPatterns { get; init; } = [];

    /// <summary>Whether the middle of a part lies on the board; where no edge is known, it does.</summary>
    public bool Holds(ImportedPart part) => Outline is null || Outline.Outer.Contains(part.BodyCentre);
}
