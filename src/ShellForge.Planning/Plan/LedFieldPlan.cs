using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Planning.Plan;

/// <summary>
/// LEDs that lie on no full circles about the board's middle: grids, arcs, spirals, free places. Which of them are neighbours says where
/// light has to blend, and how far each one's own light has to reach.
/// </summary>
/// <param name="Leds">The LEDs that shine to the front, in the order of their data.</param>
/// <param name="Links">Neighbours: no other LED lies between the two.</param>
public sealed record LedFieldPlan(ImmutableArray<FieldLed> Leds, ImmutableArray<LedLink> Links);

/// <summary>An LED of a field.</summary>
/// <param name="Ref">Its designator.</param>
/// <param name="At">Its middle in plan.</param>
/// <param name="Pitch">Distance to the nearest LED, mm; twice its own body where none is near.</param>
/// <param name="Alone">Whether none is near.</param>
public readonly record struct FieldLed(string Ref, Point2 At, double Pitch, bool Alone);

/// <summary>Two neighbours.</summary>
/// <param name="From">Index of the one.</param>
/// <param name="To">Index of the other.</param>
/// <param name="Centre">Centre of the pitch circle that both lie on side by side; null where the way between them is straight.</param>
public readonly record struct LedLink(int From, int To, Point2? Centre);
