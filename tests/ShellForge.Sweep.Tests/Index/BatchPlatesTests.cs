using System.Text.Json;
using ShellForge.Formats.Soup;
using ShellForge.Formats.Stl;
using ShellForge.Formats.ThreeMf;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Output.Files;
using ShellForge.Sweep.Folder;
using ShellForge.Sweep.Index;
using ShellForge.Sweep.Rows;
using ShellForge.Sweep.Running;
using ShellForge.Sweep.Variants;
using ShellForge.Testing;

namespace ShellForge.Sweep.Tests.Index;

public class BatchPlatesTests
{
    private const string Plan = "vary: {housing.walls: [2, 3, 4, 5, 6, 7]}";

    // A tub of a size that follows from the variant, and a diffuser that is printed into it.
    private static MadeVariant Made(Variant variant, string key)
    {
        double size = 60 + (2 * variant.Number);
        (string Name, Mesh Mesh, string? With)[] parts =
        [
            ("tub", Block(new Point3(-size / 2, -size / 2, 0), new Point3(size / 2, size / 2, 20)), null),
            ("diffuser", Block(new Point3(-10, -10, 20), new Point3(10, 10, 21)), "tub"),
        ];
        VariantRow row = Orders.Row(variant, key, stops: variant.Number == 3 ? 1 : 0);
        row = row with
        {
            Housing = row.Housing! with
            {
                Parts = [.. parts.Select(part => row.Housing.Parts[0] with
                {
                    Name = part.Name, PrintedWith = part.With, Filament = part.With is null ? "petg-black" : "petg-white",
                    At = Numbers(Measure.Bounds(part.Mesh).Min), Size = Numbers(Measure.Bounds(part.Mesh).Size),
                })],
            },
        };
        return new MadeVariant(row,
        [
            .. parts.Select(part => OutputFile.Written(
                $"{part.Name}-{row.Code}.stl", stream => StlWriter.Write(stream, part.Mesh, part.Name))),
            new OutputFile("variant.json", RowJson.Line(row)),
        ]);
    }

    private static double[] Numbers(Point3 p) => [p.X, p.Y, p.Z];

    private static Mesh Block(Point3 from, Point3 to) => Meshes.Of(Shapes.Box(from, to));

    private static SweepFolder Swept(TemporaryFolder folder, string plan)
    {
        SweepOrder order = Orders.Of(plan);
        using (SweepFolder sweep = SweepFolder.Open(folder.Path, order))
        {
            SweepRun.Run(order, sweep, new SweepPart(Shard.Whole, 2), (variant, key, _) => Made(variant, key), _ => { },
                CancellationToken.None);
        }

        return SweepFolder.OpenJoined(folder.Path)!;
    }

    [Fact]
    public void Every_part_that_can_be_printed_lies_on_one_plate_apart_from_the_others_and_on_the_bed()
    {
        using var folder = new TemporaryFolder();
        using SweepFolder sweep = Swept(folder, Plan);

        int count = SweepIndex.Write(sweep, plates: true);

        string[] files = Directory.GetFiles(folder.File("plates"));
        Assert.Equal(count, files.Length);
        Assert.InRange(count, 2, 3);
        double volume = 0;
        foreach (string path in files)
        {
            using FileStream stream = File.OpenRead(path);
            SoupFile read = ThreeMfReader.Read(stream);
            Assert.Empty(read.Faults);
            Box3[] boxes = [.. read.Bodies.Select(body => Measure.Bounds(body.Triangles.ToLatticeMesh()!.Mapped(body.Place)))];
            Assert.All(boxes, box => Assert.True(box.Min.X >= 5 && box.Min.Y >= 5 && box.Max.X <= 205 && box.Max.Y <= 205));
            Assert.Equal(0, boxes.Min(box => box.Min.Z));
            volume += boxes.Sum(box => box.Size.X * box.Size.Y * box.Size.Z);
            Box3[] tubs = [.. boxes.Where(box => box.Size.X > 50)];
            Assert.DoesNotContain(tubs.SelectMany((one, i) => tubs[(i + 1)..].Select(other => (one, other))), pair =>
                pair.one.Min.X < pair.other.Max.X + 5 && pair.other.Min.X < pair.one.Max.X + 5
                && pair.one.Min.Y < pair.other.Max.Y + 5 && pair.other.Min.Y < pair.one.Max.Y + 5);
        }

        // The third variant has a stop.
        double wanted = new[] { 1, 2, 4, 5, 6 }.Sum(n => ((60 + (2 * n)) * (60 + (2 * n)) * 20) + (20 * 20 * 1.0));
        Assert.Equal(wanted, volume, 1);
        JsonElement[] told = [.. JsonDocument.Parse(File.ReadAllText(folder.File("index.json"))).RootElement.GetProperty("plates")
            .EnumerateArray()];
        Assert.Equal(files.Select(Path.GetFileName).Order(StringComparer.Ordinal),
            told.Select(plate => Path.GetFileName(plate.GetProperty("file").GetString())).Order(StringComparer.Ordinal));
        Assert.Contains("href=\"plates/plate-001_", File.ReadAllText(folder.File("index.html")), StringComparison.Ordinal);
    }

    [Fact]
    public void Plates_of_an_earlier_plan_go_and_an_index_without_plates_says_how_to_get_them()
    {
        using var folder = new TemporaryFolder();
        using (SweepFolder sweep = Swept(folder, Plan))
        {
            SweepIndex.Write(sweep, plates: true);
        }

        string[] before = Directory.GetFiles(folder.File("plates"));
        using SweepFolder smaller = Swept(folder, Plan.Replace(", 6, 7", "", StringComparison.Ordinal));
        SweepIndex.Write(smaller);
        Assert.Contains("--plates", File.ReadAllText(folder.File("index.html")), StringComparison.Ordinal);

        SweepIndex.Write(smaller, plates: true);

        Assert.Empty(before.Intersect(Directory.GetFiles(folder.File("plates"))));
        Assert.NotEmpty(Directory.GetFiles(folder.File("plates")));
    }

    [Fact]
    public void Without_the_file_of_a_part_it_is_told_which_one_and_what_to_do()
    {
        using var folder = new TemporaryFolder();
        using SweepFolder sweep = Swept(folder, Plan);
        string Tub(bool stopped) => sweep.Rows().Where(row => row.Housing!.Stops > 0 == stopped)
            .Select(row => folder.File(Path.Combine(row.Folder, $"tub-{row.Code}.stl"))).First();
        File.Delete(Tub(stopped: true));

        // What is not printed is not missed.
        SweepIndex.Write(sweep, plates: true);
        string gone = Tub(stopped: false);
        File.Delete(gone);
        Directory.Delete(folder.File("plates"), recursive: true);

        IOException told = Assert.Throws<IOException>(() => SweepIndex.Write(sweep, plates: true));

        Assert.Contains(Path.GetFileName(gone), told.Message, StringComparison.Ordinal);
        Assert.Contains("--formats stl", told.Message, StringComparison.Ordinal);
    }
}
