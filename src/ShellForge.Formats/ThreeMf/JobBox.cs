using System.Collections.Immutable;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.ThreeMf;

/// <summary>Between which heights a body of a job is printed of a filament.</summary>
/// <param name="Filament">Name of the filament.</param>
/// <param name="From">Its lowest place, lattice steps.</param>
/// <param name="To">Its highest place, lattice steps.</param>
public readonly record struct FilamentSpan(string Filament, int From, int To);

/// <summary>What a plate has to know of a job: the box that it takes, and which filament it is printed of at which height.</summary>
/// <param name="Bounds">Box round all bodies, in the job's frame, mm; empty for a job without a triangle.</param>
/// <param name="Spans">One a body with triangles.</param>
public sealed record JobBox(Box3 Bounds, ImmutableArray<FilamentSpan> Spans)
{
    /// <summary>The box of bodies.</summary>
    /// <param name="bodies">Filament and box of each, mm.</param>
    public static JobBox Of(IEnumerable<(string Filament, Box3 Bounds)> bodies)
    {
        Box3 all = Box3.Empty;
        var spans = ImmutableArray.CreateBuilder<FilamentSpan>();
        foreach ((string filament, Box3 box) in bodies.Where(body => !body.Bounds.IsEmpty))
        {
            all = all.Including(box.Min).Including(box.Max);
            spans.Add(new FilamentSpan(filament, Lattice.ToSteps(box.Min.Z), Lattice.ToSteps(box.Max.Z)));
        }

        return new JobBox(all, spans.ToImmutable());
    }

    /// <summary>The box of a job.</summary>
    public static JobBox Of(PrintJob job) => Of(job.Bodies.Select(body => (body.Filament.Name, Measure.Bounds(body.Mesh))));
}

/// <summary>A job by its number with its place on a plate.</summary>
/// <param name="Job">Its number in the list that was laid out, from 0.</param>
/// <param name="Shift">How far it is moved, mm; whole eighths of a millimetre along x and y.</param>
public readonly record struct PlacedBox(int Job, Point3 Shift);
