using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.ThreeMf;

/// <summary>
/// Lays print jobs out on as many plates as the bed asks for, in rows, none nearer to another than a gap. A job joins a plate only where
/// it adds no layer that needs a change of filament; beside a job that needs changes by itself a strip is left for the slicer's purge
/// tower. A job that is larger than the bed gets a plate of its own and lies over the margin.
/// </summary>
public static class PlateLayout
{
    /// <summary>Free distance between jobs, mm: room for a brim round each, and what slicers keep between objects. Typical.</summary>
    public const double Gap = 6;

    /// <summary>Width that a purge tower takes with its brim, mm. Typical: slicers' own are 35 to 60 wide.</summary>
    public const double TowerStrip = 60;

    // Shifts are whole steps, few enough binary digits that a slicer which adds them in single precision rounds nothing.
    private const double Step = 0.125;

    // So many plates are looked at for a job, the latest ones: jobs come by their depth, and what earlier plates have free is narrow.
    private const int MostOpen = 32;

    /// <summary>Arranges jobs on plates.</summary>
    /// <param name="jobs">The jobs, each with z = 0 on the bed.</param>
    /// <param name="bed">The bed.</param>
    /// <returns>The plates, by their first jobs; the jobs of a plate in the order they were given in.</returns>
    public static ImmutableArray<PrintPlate> Arrange(ImmutableArray<PrintJob> jobs, PrintBed bed)
    {
        ImmutableArray<PrintFilament> all = Filaments(jobs);
        return
        [
            .. Fill([.. jobs.Select(JobBox.Of)], bed).Select(plate => new PrintPlate(
                [.. plate.Select(placed => new PlacedJob(jobs[placed.Job], placed.Shift))],
                all.Length <= bed.Filaments ? all : Filaments(plate.Select(placed => jobs[placed.Job])))),
        ];
    }

    /// <summary>Arranges boxes on plates, for jobs whose meshes nobody needs yet.</summary>
    /// <param name="jobs">Boxes of the jobs.</param>
    /// <param name="bed">The bed.</param>
    /// <returns>The plates, by their first jobs; the jobs of a plate in the order they were given in.</returns>
    public static ImmutableArray<ImmutableArray<PlacedBox>> Fill(ImmutableArray<JobBox> jobs, PrintBed bed)
    {
        var plates = new List<List<Footprint>>();

        // The deepest first: rows are as deep as their deepest.
        foreach (Footprint job in jobs.Select(Footprint.Of).OrderByDescending(job => job.Depth))
        {
            List<Footprint>? open = plates.Skip(plates.Count - MostOpen)
                .FirstOrDefault(plate => Joins(plate, job) && Rows([.. plate, job], bed) is not null);
            if (open is null)
            {
                plates.Add([job]);
            }
            else
            {
                open.Add(job);
            }
        }

        return [.. plates.OrderBy(plate => plate.Min(job => job.Number)).Select(plate => Placed(plate, bed))];
    }

    private static ImmutableArray<PlacedBox> Placed(List<Footprint> plate, PrintBed bed)
    {
        Dictionary<int, Point2> corners = Rows(plate, bed) ?? new() { [plate[0].Number] = Centred(plate[0].Width, plate[0].Depth, bed) };
        return [.. plate.OrderBy(job => job.Number).Select(job => new PlacedBox(job.Number, job.ShiftTo(corners[job.Number])))];
    }

    // Where the near left corner of each job comes to lie, by number; null where the bed is too small.
    private static Dictionary<int, Point2>? Rows(IReadOnlyCollection<Footprint> plate, PrintBed bed)
    {
        double width = Grid.Down(bed.Width - (2 * bed.Margin));
        double depth = Grid.Down(bed.Depth - (2 * bed.Margin));
        if (MixedHeight(plate) > 0)
        {
            width = Math.Max(plate.Max(job => job.Width), width - TowerStrip);
        }

        var corners = new Dictionary<int, Point2>();
        double x = 0;
        double y = 0;
        double rowDepth = 0;
        double reach = 0;
        foreach (Footprint job in plate.OrderByDescending(job => job.Depth))
        {
            if (x > 0 && x + job.Width > width)
            {
                x = 0;
                y += rowDepth + Gap;
                rowDepth = 0;
            }

            corners.Add(job.Number, new Point2(x, y));
            rowDepth = Math.Max(rowDepth, job.Depth);
            reach = Math.Max(reach, x + job.Width);
            x += job.Width + Gap;
        }

        if (reach > Grid.Down(bed.Width - (2 * bed.Margin)) || y + rowDepth > depth)
        {
            return null;
        }

        var middle = new Point2(Grid.Down((width - reach) / 2) + Grid.Up(bed.Margin),
            Grid.Down((depth - y - rowDepth) / 2) + Grid.Up(bed.Margin));
        return corners.ToDictionary(at => at.Key, at => at.Value + middle);
    }

    private static Point2 Centred(double width, double depth, PrintBed bed) =>
        new(Math.Max(0, Grid.Down((bed.Width - width) / 2)), Math.Max(0, Grid.Down((bed.Depth - depth) / 2)));

    private static bool Joins(List<Footprint> plate, Footprint job) =>
        MixedHeight([.. plate, job]) <= Math.Max(MixedHeight(plate), MixedHeight([job]));

    // Height over which more than one filament is printed, in lattice steps.
    private static long MixedHeight(IEnumerable<Footprint> jobs)
    {
        FilamentSpan[] spans = [.. jobs.SelectMany(job => job.Spans)];
        if (spans.All(span => span.Filament == spans[0].Filament))
        {
            return 0;
        }

        int[] levels = [.. spans.SelectMany(span => new[] { span.From, span.To }).Distinct().Order()];
        long mixed = 0;
        for (int i = 0; i + 1 < levels.Length; i++)
        {
            int filaments = spans.Where(span => span.From <= levels[i] && span.To > levels[i]).Select(span => span.Filament).Distinct()
                .Count();
            mixed += filaments > 1 ? levels[i + 1] - levels[i] : 0;
        }

        return mixed;
    }

    /// <summary>The filaments of jobs, in the order in which they first occur.</summary>
    public static ImmutableArray<PrintFilament> Filaments(IEnumerable<PrintJob> jobs) =>
        [.. jobs.SelectMany(job => job.Bodies).Select(body => body.Filament).Distinct()];

    private static class Grid
    {
        public static double Down(double value) => Math.Floor(value / Step) * Step;

        public static double Up(double value) => Math.Ceiling(value / Step) * Step;
    }

    // A job's box in plan, its sides on the grid.
    private sealed record Footprint(int Number, ImmutableArray<FilamentSpan> Spans, Point2 Min, double Z, double Width, double Depth)
    {
        public static Footprint Of(JobBox job, int number)
        {
            Box3 bounds = job.Bounds;
            if (bounds.IsEmpty)
            {
                return new Footprint(number, [], default, 0, 0, 0);
            }

            var min = new Point2(Grid.Down(bounds.Min.X), Grid.Down(bounds.Min.Y));
            return new Footprint(number, job.Spans, min, bounds.Min.Z, Grid.Up(bounds.Max.X) - min.X, Grid.Up(bounds.Max.Y) - min.Y);
        }

        public Point3 ShiftTo(Point2 corner) => new(corner.X - Min.X, corner.Y - Min.Y, 0 - Z);
    }
}
