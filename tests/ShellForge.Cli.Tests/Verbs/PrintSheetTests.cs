using System.Buffers.Binary;
using System.Globalization;
using System.Text.Json;

namespace ShellForge.Cli.Tests.Verbs;

/// <summary>The print sheet, held against the files that it is about.</summary>
public sealed class PrintSheetTests
{
    private static (Bench Bench, JsonElement Sheet, string Text) Made(string board, params string[] set)
    {
        var bench = new Bench();
        File.WriteAllText(bench.Folder.File("buoy.yaml"), board);
        bench.Run(["make", "buoy.yaml", "-o", "out", "-q", .. set.SelectMany(one => new[] { "--set", one })]);
        return (bench, JsonDocument.Parse(File.ReadAllText(bench.Folder.File(Path.Combine("out", "print.json")))).RootElement,
            File.ReadAllText(bench.Folder.File(Path.Combine("out", "print.txt"))));
    }

    private static JsonElement Part(JsonElement sheet, string name) =>
        sheet.GetProperty("parts").EnumerateArray().Single(part => part.GetProperty("name").GetString() == name);

    [Fact]
    public void Sizes_and_layers_are_those_of_the_written_files()
    {
        (Bench bench, JsonElement sheet, _) = Made(Bench.SmallBoard);
        using Bench kept = bench;
        int looked = 0;
        foreach (JsonElement part in sheet.GetProperty("parts").EnumerateArray())
        {
            WrittenStl stl = WrittenStl.Read(bench, part.GetProperty("file").GetString()!);
            double[] size = [.. part.GetProperty("size_mm").EnumerateArray().Select(side => side.GetDouble())];
            Assert.Equal(stl.Extent(c => c.X), size[0], 0.001);
            Assert.Equal(stl.Extent(c => c.Y), size[1], 0.001);
            Assert.Equal(stl.Extent(c => c.Z), size[2], 0.001);
            double height = part.GetProperty("first_layer_mm").GetDouble()
                + ((part.GetProperty("layers").GetInt32() - 1) * part.GetProperty("layer_height_mm").GetDouble());
            Assert.Equal(stl.Extent(c => c.Z), height, 0.01);
            looked++;
        }

        Assert.True(looked >= 3, $"{looked} parts");
    }

    [Fact]
    public void A_place_to_print_solid_is_where_the_file_has_the_insert_hole()
    {
        (Bench bench, JsonElement sheet, string text) = Made(
            Bench.SmallBoard.Replace("housing:", "  parts:\n    - {ref: C1, size: [6, 6, 12], side: bottom, at: [0, 0]}\nhousing:",
                StringComparison.Ordinal));
        using Bench kept = bench;
        JsonElement tub = Part(sheet, "tub");
        JsonElement[] solid = [.. tub.GetProperty("solid").EnumerateArray()];
        Assert.Equal(2, solid.Length);
        WrittenStl stl = WrittenStl.Read(bench, "tub.stl");
        foreach (JsonElement place in solid)
        {
            double x = place.GetProperty("x_mm").GetDouble();
            double y = place.GetProperty("y_mm").GetDouble();
            double radius = place.GetProperty("diameter_mm").GetDouble() / 2;
            double top = place.GetProperty("to_mm").GetDouble();

            // The post's upper face is a ring about the hole: no corner of it lies nearer than the hole, none farther than the post.
            double[] corners =
            [
                .. stl.Corners.Where(corner => Math.Abs(corner.Z - top) < 0.001)
                    .Select(corner => Math.Sqrt(Math.Pow(corner.X - x, 2) + Math.Pow(corner.Y - y, 2)))
                    .Where(distance => distance < radius + 0.3),
            ];
            Assert.NotEmpty(corners);
            Assert.Equal(radius, corners.Max(), 0.05);
            Assert.InRange(corners.Min(), 1.2, radius - 0.8);
            string told = string.Create(CultureInfo.InvariantCulture, $"x {x:0.0;-0.0;0.0}, ");
            Assert.Contains(told, text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Where_filaments_are_changed_by_hand_each_layer_has_its_pause_and_else_none()
    {
        (Bench bench, JsonElement sheet, string text) = Made(Bench.SmallBoard, "housing.diffuser.fit=printed-in");
        using Bench kept = bench;
        JsonElement diffuser = Part(sheet, "diffuser");
        int layers = diffuser.GetProperty("layers").GetInt32();
        JsonElement[] pauses = [.. diffuser.GetProperty("pauses").EnumerateArray()];
        Assert.Equal(Enumerable.Range(1, layers), pauses.Select(pause => pause.GetProperty("layer").GetInt32()));
        Assert.Equal(diffuser.GetProperty("size_mm")[2].GetDouble(), pauses[^1].GetProperty("at_mm").GetDouble(), 0.01);
        Assert.Contains("change the filament to petg-white", text, StringComparison.Ordinal);

        (Bench other, JsonElement several, _) = Made(Bench.SmallBoard, "housing.diffuser.fit=printed-in",
            "print.printer=fdm-0.4-multi-filament");
        using Bench keptToo = other;
        Assert.Empty(Part(several, "diffuser").GetProperty("pauses").EnumerateArray());
        Assert.Equal(layers, Part(several, "diffuser").GetProperty("shared_layers")[0].GetProperty("to_layer").GetInt32());
    }

    [Fact]
    public void A_thick_diffuser_weighs_what_solid_plastic_weighs()
    {
        (Bench bench, JsonElement sheet, _) = Made(Bench.SmallBoard, "housing.diffuser.thickness=4", "print.diffuser=petg-natural");
        using Bench kept = bench;
        JsonElement diffuser = Part(sheet, "diffuser");
        double grams = WrittenStl.Read(bench, "diffuser.stl").Volume * 1.27 / 1000;

        Assert.Equal(1, diffuser.GetProperty("infill").GetDouble());
        Assert.InRange(diffuser.GetProperty("plastic_g").GetDouble() / grams, 0.95, 1.1);
        Assert.Equal([45, 135], diffuser.GetProperty("fill_angles_deg").EnumerateArray().Select(angle => angle.GetDouble()));
    }

    [Fact]
    public void The_text_keeps_to_eighty_columns_and_has_every_part()
    {
        (Bench bench, JsonElement sheet, string text) = Made(Bench.SmallBoard, "housing.diffuser.fit=printed-in");
        using Bench kept = bench;

        Assert.All(text.Split('\n'), line => Assert.True(line.Length <= 80, line));
        Assert.All(sheet.GetProperty("parts").EnumerateArray(),
            part => Assert.Contains($"\n{part.GetProperty("name").GetString()} ", text, StringComparison.Ordinal));
    }

    // A reader of binary STL that knows nothing of the writer.
    private sealed record WrittenStl((double X, double Y, double Z)[] Corners)
    {
        public double Volume => Corners.Chunk(3).Sum(t =>
            ((t[0].X * ((t[1].Y * t[2].Z) - (t[1].Z * t[2].Y))) - (t[0].Y * ((t[1].X * t[2].Z) - (t[1].Z * t[2].X)))
                + (t[0].Z * ((t[1].X * t[2].Y) - (t[1].Y * t[2].X)))) / 6);

        public double Extent(Func<(double X, double Y, double Z), double> along) => Corners.Max(along) - Corners.Min(along);

        public static WrittenStl Read(Bench bench, string name)
        {
            byte[] bytes = File.ReadAllBytes(bench.Folder.File(Path.Combine("out", name)));
            int count = BinaryPrimitives.ReadInt32LittleEndian(bytes.AsSpan(80));
            double Number(int at) => BinaryPrimitives.ReadSingleLittleEndian(bytes.AsSpan(at));
            return new WrittenStl(
            [
                .. from triangle in Enumerable.Range(0, count)
                   from corner in Enumerable.Range(0, 3)
                   let at = 84 + (50 * triangle) + 12 + (12 * corner)
                   select (Number(at), Number(at + 4), Number(at + 8)),
            ]);
        }
    }
}
