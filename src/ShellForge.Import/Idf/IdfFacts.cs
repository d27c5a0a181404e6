using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Drawing;

namespace ShellForge.Import.Idf;

/// <summary>A drilled hole of an IDF board, in mm.</summary>
internal sealed record IdfHole(Point2 At, double Diameter, bool Plated, string Part, string Type, int Line);

/// <summary>A placement record. The mounting offset is the gap between board and part, in mm.</summary>
internal sealed record IdfPlacement(
    string Package, string PartNumber, string Reference, Point2 At, double Offset, double RotationDegrees, bool Bottom, string Status,
    int Line)
{
    /// <summary>Whether the part is on the board at all.</summary>
    public bool IsPlaced => !Status.Equals("UNPLACED", StringComparison.OrdinalIgnoreCase);
}

/// <summary>What a board file says.</summary>
internal sealed record IdfBoardFacts(
    string File,
    string Version,
    string Unit,
    double? Thickness,
    ImmutableArray<OutlineLoop> Loops,
    ImmutableArray<IdfHole> Holes,
    ImmutableArray<IdfPlacement> Placements);

/// <summary>A package of a library file: the box of its outline and its height in mm, as written.</summary>
internal sealed record IdfPackage(string Package, string PartNumber, double Height, Box2 Outline, bool Mechanical, int Line,
    bool HeightIsInThou);

/// <summary>What a library file says.</summary>
internal sealed record IdfLibraryFacts(string File, ImmutableArray<IdfPackage> Packages);
