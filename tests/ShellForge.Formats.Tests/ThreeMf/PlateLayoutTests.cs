using System.Collections.Immutable;
using FsCheck.Xunit;
using ShellForge.Formats.ThreeMf;
using ShellForge.Geometry.Numerics;
using ShellForge.Testing;

namespace ShellForge.Formats.Tests.ThreeMf;

public class PlateLayoutTests
{
    private static readonly PrintFilament Black = new("black", "#101010");
    private static readonly PrintFilament White = new("white", "#f0f0f0");
    private static readonly PrintBed Bed = new(210, 210, 5, 2);

    private static PrintJob Job(string name, double size, params PrintFilament[] filaments) =>
        new(name, [
            .. filaments.Select((filament, i) => new PrintBody($"{name} {i}", Bodies.Tetrahedron(size / (i + 1), -size / 2), filament))]);

    private static (double FromX, double FromY, double FromZ, double ToX, double ToY) Box(PlacedJob placed)
    {
        Point3[] all = [.. placed.Job.Bodies.SelectMany(body => body.Mesh.Vertices).Select(v => v.ToMillimetres() + placed.Shift)];
        return (all.Min(p => p.X), all.Min(p => p.Y), all.Min(p => p.Z), all.Max(p => p.X), all.Max(p => p.Y));
    }

    private static string Names(PrintPlate plate) => string.Join(' ', plate.Jobs.Select(placed => placed.Job.Name));

    [Fact]
    public void Two_jobs_of_97_lie_side_by_side_on_a_bed_of_210() =>
        Assert.Equal(["tub cover"], PlateLayout.Arrange([Job("tub", 96.775, Black), Job("cover", 96.775, Black)], Bed).Select(Names));

    [Fact]
    public void What_the_bed_does_not_hold_goes_to_the_next_plate() =>
        Assert.Equal(
            ["tub", "baffle cover"],
            PlateLayout.Arrange([Job("tub", 150, Black), Job("baffle", 30, Black), Job("cover", 155, Black)], Bed).Select(Names));

    [Fact]
    public void A_job_joins_no_plate_where_it_adds_layers_of_two_filaments()
    {
        // The cover changes filament over its diffuser's 20 mm; a white baffle beside a black tub would change over all of its own 40.
        ImmutableArray<PrintPlate> plates =
            PlateLayout.Arrange([Job("tub", 40, Black), Job("baffle", 40, White), Job("cover", 40, Black, White)], Bed);

        Assert.Equal(["tub cover", "baffle"], plates.Select(Names));
        Assert.All(plates, plate => Assert.Equal<PrintFilament>([Black, White], plate.Filaments));
    }

    [Fact]
    public void A_printer_of_one_filament_has_that_one_alone_on_each_plate()
    {
        ImmutableArray<PrintPlate> plates = PlateLayout.Arrange([Job("tub", 40, Black), Job("diffuser", 40, White)],
            Bed with { Filaments = 1 });

        Assert.Equal<PrintFilament>([Black, White], plates.Select(plate => Assert.Single(plate.Filaments)));
    }

    [Fact]
    public void A_strip_stays_free_for_the_purge_tower_where_filaments_change()
    {
        PlacedJob cover = Assert.Single(Assert.Single(PlateLayout.Arrange([Job("cover", 100, Black, White)], Bed)).Jobs);

        Assert.True(Box(cover).ToX <= 210 - 5 - PlateLayout.TowerStrip, $"{Box(cover)}");
    }

    [Fact]
    public void A_job_larger_than_the_bed_stands_alone_and_in_its_middle()
    {
        ImmutableArray<PrintPlate> plates = PlateLayout.Arrange([Job("tub", 206, Black), Job("baffle", 10, Black)], Bed);

        Assert.Equal(["tub", "baffle"], plates.Select(Names));
        Assert.Equal(2, Box(plates[0].Jobs[0]).FromX, 0.2);
    }

    [Property(Arbitrary = [typeof(Draws.Rows)])]
    public void All_jobs_lie_on_the_bed_apart_and_once(Draws draws)
    {
        ImmutableArray<PrintJob> jobs = [.. Enumerable.Range(0, draws.Next(1, 9)).Select(i => Job(
            $"job {i}", draws.Next(1, 200) + draws.NextDouble(),
            draws.Next(3) switch { 0 => [Black], 1 => [White], _ => [Black, White] }))];

        ImmutableArray<PrintPlate> plates = PlateLayout.Arrange(jobs, Bed);

        Assert.Equal(jobs.Select(job => job.Name).Order(),
            plates.SelectMany(plate => plate.Jobs).Select(placed => placed.Job.Name).Order());
        foreach (PrintPlate plate in plates)
        {
            foreach (PlacedJob placed in plate.Jobs)
            {
                (double fromX, double fromY, double fromZ, double toX, double toY) = Box(placed);
                Assert.True(fromX >= 5 && fromY >= 5 && toX <= 205 && toY <= 205, $"{Box(placed)}");
                Assert.Equal(0, fromZ);
                Assert.Equal(placed.Shift,
                    new Point3(Math.Round(placed.Shift.X * 8) / 8, Math.Round(placed.Shift.Y * 8) / 8, placed.Shift.Z));
                foreach (PlacedJob other in plate.Jobs.Where(other => other != placed))
                {
                    (double otherX, double otherY, _, double otherToX, double otherToY) = Box(other);
                    Assert.True(
                        Math.Max(Math.Max(otherX - toX, fromX - otherToX), Math.Max(otherY - toY, fromY - otherToY)) >= PlateLayout.Gap);
                }
            }
        }
    }
}
