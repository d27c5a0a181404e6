using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Import.Placement;

/// <summary>One row of a placement list. Coordinates in the list's unit; side null where the row doesn't say.</summary>
internal sealed record PlacementRow(
    string Reference, string Value, string Package, Point2 At, double RotationDegrees, bool? Bottom, bool Unplaced, int Line);

/// <summary>A placement list.</summary>
/// <param name="File">Its name.</param>
/// <param name="Unit">Millimetres per unit; null when nothing says it.</param>
/// <param name="UnitFrom">Where the unit was found.</param>
/// <param name="SideFromName">Side told by the file's name, for rows without one.</param>
/// <param name="HeaderLine">Line of the column names; 0 when there are none.</param>
/// <param name="Rows">The rows in their order.</param>
internal sealed record PlacementFacts(
    string File, double? Unit, string UnitFrom, bool? SideFromName, int HeaderLine, ImmutableArray<PlacementRow> Rows);
