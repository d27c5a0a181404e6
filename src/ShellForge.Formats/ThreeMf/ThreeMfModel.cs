using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Formats.ThreeMf;

/// <summary>A filament as a slicer knows it: by its place in the printer, and by its colour on screens.</summary>
/// <param name="Name">Name of the filament.</param>
/// <param name="Colour">Colour on screens, <c>#rrggbb</c>.</param>
public sealed record PrintFilament(string Name, string Colour);

/// <summary>A body of plastic in a print job.</summary>
/// <param name="Name">Name of the part.</param>
/// <param name="Mesh">Its mesh, in the frame of its job.</param>
/// <param name="Filament">What it is printed of.</param>
public sealed record PrintBody(string Name, Mesh Mesh, PrintFilament Filament);

/// <summary>What is printed in one go: one body, or several of different filaments that fuse, in one frame with z = 0 on the bed.</summary>
/// <param name="Name">Name of the job.</param>
/// <param name="Bodies">At least one.</param>
public sealed record PrintJob(string Name, ImmutableArray<PrintBody> Bodies);

/// <summary>A job with its place on the plate.</summary>
/// <param name="Job">The job.</param>
/// <param name="Shift">How far it is moved, mm; from <see cref="PlateLayout"/>, whole eighths of a millimetre.</param>
public sealed record PlacedJob(PrintJob Job, Point3 Shift);

/// <summary>What is printed at once, and becomes one file.</summary>
/// <param name="Jobs">Jobs with their places.</param>
/// <param name="Filaments">
/// The filaments in the order in which they are loaded, those of all jobs among them. It may name more than this plate needs, so that the
/// plates of a housing number them alike.
/// </param>
public sealed record PrintPlate(ImmutableArray<PlacedJob> Jobs, ImmutableArray<PrintFilament> Filaments);

/// <summary>The bed that plates are laid out for; its near left corner is (0, 0).</summary>
/// <param name="Width">Along x, mm.</param>
/// <param name="Depth">Along y, mm.</param>
/// <param name="Margin">Rim that is kept free, mm.</param>
/// <param name="Filaments">How many filaments the printer changes between by itself; at least one.</param>
public sealed record PrintBed(double Width, double Depth, double Margin, int Filaments);
