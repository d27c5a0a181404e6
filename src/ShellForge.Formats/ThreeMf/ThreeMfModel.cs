using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Formats.ThreeMf;

/// <summary>A body of plastic in a print job.</summary>
/// <param name="Name">Name of the part.</param>
/// <param name="Mesh">Its mesh, in the frame of its job.</param>
/// <param name="Material">Name of the filament.</param>
/// <param name="Colour">Colour on screens, <c>#rrggbb</c>.</param>
public sealed record PrintBody(string Name, Mesh Mesh, string Material, string Colour);

/// <summary>What is printed in one go: one body, or several that fuse, in one frame with z = 0 on the bed.</summary>
/// <param name="Name">Name of the job.</param>
/// <param name="Bodies">At least one.</param>
public sealed record PrintJob(string Name, ImmutableArray<PrintBody> Bodies);

/// <summary>A job with its place on the plate.</summary>
/// <param name="Job">The job.</param>
/// <param name="Shift">How far it is moved, mm.</param>
public sealed record PlacedJob(PrintJob Job, Point3 Shift);
