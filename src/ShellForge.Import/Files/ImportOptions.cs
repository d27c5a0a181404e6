using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Import.Files;

/// <summary>What a person can settle when files leave it open.</summary>
public sealed record ImportOptions
{
    /// <summary>Added to all placement coordinates, mm: for lists written with another origin.</summary>
    public Point2? PartsShift { get; init; }

    /// <summary>Millimetres per drawing unit of DXF files that name no unit; null assumes millimetres and says so.</summary>
    public double? DrawingUnit { get; init; }

    /// <summary>Profiles whose packages and LEDs may stand behind hand-over names; null for those shipped with the tool.</summary>
    public ProfileLibrary? Profiles { get; init; }

    /// <summary>Name of the board for the file that is written.</summary>
    public string Name { get; init; } = "Imported board";
}
