using System.Diagnostics;
using System.Globalization;
using System.Text;
using ShellForge.Formats.Gcode;
using ShellForge.Geometry.Numerics;
using ShellForge.Testing;
using Xunit.Abstractions;

namespace ShellForge.Formats.Tests.Gcode;

/// <summary>What slicers write, in the forms that are about; and what is no G-code.</summary>
public class GcodeReaderTests(ITestOutputHelper output)
{
    // A square of 20 mm, three layers of 0.2 mm, 0.3 the first; E absolute.
    private static string Square(string kind = ";TYPE:External perimeter") =>
        $"""
        G21
        G90
        M82
        M104 S215
        {kind}
        G1 Z0.3 F600
        {Loop(0.3, 0)}
        G92 E0
        M104 S205
        G1 Z0.5
        {Loop(0.5, 0)}
        G92 E0
        G1 Z0.7
        {Loop(0.7, 0)}
        M104 S0
        """;

    private static string Loop(double z, double from) => string.Create(CultureInfo.InvariantCulture,
        $"""
        G1 X100 Y100 F3000
        G1 X120 Y100 E{from + 1}
        G1 X120 Y120 E{from + 2}
        G1 X100 Y120 E{from + 3}
        G1 X100 Y100 E{from + 4} ; at {z}
        """);

    private static GcodeFile Read(string text)
    {
        GcodeReading reading = GcodeReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(text)));
        Assert.True(reading.File is not null, $"{reading.Fault}");
        return reading.File!;
    }

    [Fact]
    public void Layers_size_filament_and_temperature_are_measured_where_no_comment_says_them()
    {
        GcodeFile file = Read(Square());

        Assert.Equal((0.2, 0.3, 0.7, 3), (file.LayerHeight, file.FirstLayer, file.Top, file.Layers));
        GcodeObject only = Assert.Single(file.Objects);
        Assert.Equal(new Box2(new Point2(100, 100), new Point2(120, 120)), only.Bounds);
        Assert.Equal((80 / Math.PI) + 0.45, only.MeanWidth(0.45), 9);
        Assert.Equal(12.0, Assert.Single(file.FilamentMillimetres), 9);
        Assert.Equal(4 * Math.PI * 1.75 * 1.75 / 4 / 0.2, file.SecondLayerArea, 9);
        Assert.Equal((215.0, 0), (file.FirstLayerCelsius, file.ToolChanges));
        Assert.Null(file.Seconds);
        Assert.Empty(file.FilamentGrams);
    }

    [Theory]
    [InlineData("; estimated printing time (normal mode) = 1d 2h 5m 29s", 93929)]
    [InlineData(";TIME:6666", 6666)]
    [InlineData(";PRINT.TIME:120", 120)]
    [InlineData(";Print Time: 7529.25", 7529.25)]
    [InlineData(";   Build time: 2 hours 5 minutes", 7500)]
    [InlineData("; model printing time: 2h 5m 29s; total estimated time: 2h 12m 30s", 7950)]
    [InlineData("; model printing time: 59s", 59)]
    public void A_time_is_read_in_every_form(string comment, double seconds) =>
        Assert.Equal(seconds, Read(Square() + "\n" + comment).Seconds);

    [Theory]
    [InlineData("; filament used [mm] = 7340.28", "7340.28", "")]
    [InlineData("; filament used [mm] = 7340.28, 12.5\n; filament used [g] = 22.42, 0.04", "7340.28 12.5", "22.42 0.04")]
    [InlineData("; total filament used [g] = 22.42", "12", "22.42")]
    [InlineData(";Filament used: 2.34m", "2340", "")]
    [InlineData(";Filament used: 2.34m, 0.5m", "2340 500", "")]
    [InlineData("; filament used = 7340.3mm (17.7cm3)\n; filament used = 100.5mm (0.2cm3)", "7340.3 100.5", "")]
    [InlineData(";   Filament length: 7340.3 mm (7.34 m)\n;   Plastic weight: 22.42 g (0.05 lb)", "7340.3", "22.42")]
    [InlineData("; total filament length [mm] : 7340.28,12.5\n; total filament weight [g] : 22.42,0.04", "7340.28 12.5", "22.42 0.04")]
    [InlineData("; filament used [g] = 0.00", "12", "")]
    public void Filament_is_read_in_every_form(string comments, string millimetres, string grams)
    {
        GcodeFile file = Read(Square() + "\n" + comments);

        Assert.Equal(millimetres, Told(file.FilamentMillimetres));
        Assert.Equal(grams, Told(file.FilamentGrams));
        static string Told(IEnumerable<double> numbers) => string.Join(' ', numbers.Select(n => n.ToString(CultureInfo.InvariantCulture)));
    }

    [Theory]
    [InlineData("; perimeters = 4\n; fill_density = 20%\n; top_solid_layers = 4\n; bottom_solid_layers = 3\n; nozzle_diameter = 0.4,0.4")]
    [InlineData("; wall_loops = 4\n; sparse_infill_density = 20%\n; top_shell_layers = 3\n; bottom_shell_layers = 4\n"
        + "; nozzle_diameter = 0.4")]
    [InlineData(";   perimeterOutlines,4\n;   infillPercentage,20\n;   topSolidLayers,3\n"
        + ";   bottomSolidLayers,3\n;   extruderDiameter,0.4")]
    [InlineData("; perimeters = 4\n; fill_density = 0.2\n; top_solid_layers = 3\n; bottom_solid_layers = 3\n"
        + ";EXTRUDER_TRAIN.0.NOZZLE.DIAMETER:0.4")]
    public void Walls_fill_and_nozzle_are_read_in_every_form(string comments)
    {
        GcodeFile file = Read(Square() + "\n" + comments);

        Assert.Equal((4, 0.2, 3, 0.4), (file.Walls, file.Infill, file.SkinLayers, file.Nozzle));
    }

    [Theory]
    [InlineData(";TYPE:Support material", ";TYPE:Perimeter")]
    [InlineData(";TYPE:SUPPORT-INTERFACE", ";TYPE:WALL-OUTER")]
    [InlineData("; FEATURE: Support interface", "; FEATURE: Outer wall")]
    [InlineData("; feature support", "; feature outer perimeter")]
    public void Support_is_told_with_its_line_and_is_no_part_of_the_size(string support, string wall)
    {
        GcodeFile file = Read($"{Square(wall)}\n{support}\nG1 Z0.4\nG1 X200 Y100\nG92 E0\nG1 X210 Y100 E1\n{wall}\nG1 X100 Y100");

        Assert.True(file.TellsKinds);
        Assert.Equal(120, Assert.Single(file.Objects).Bounds.Max.X);
        Assert.Equal((10.0, 0.4), (file.SupportLength, file.SupportZ));
        Assert.Equal(Square(wall).Split('\n').Length + 5, file.SupportLine);
        Assert.Equal(3, file.Layers);
    }

    [Theory]
    [InlineData("; printing object tub id:0 copy 0", "; stop printing object tub id:0 copy 0")]
    [InlineData(";MESH:tub", ";MESH:NONMESH")]
    [InlineData("EXCLUDE_OBJECT_START NAME=tub", "EXCLUDE_OBJECT_END NAME=tub")]
    [InlineData("M486 S0 A\"tub\"\nM486 S0", "M486 S-1")]
    public void Objects_of_a_plate_are_told_apart(string begin, string end)
    {
        GcodeFile file = Read($"{begin}\n{Square()}\n{end}\n{begin.Replace("tub", "cover", StringComparison.Ordinal)
            .Replace("S0", "S1", StringComparison.Ordinal)}\nG92 E0\nG1 Z1\n{Loop(1, 0)}\n{end}");

        Assert.Equal(["cover", "tub"], file.Objects.Select(each => each.Name));
        Assert.Equal((0.3, 0.7), (file.Objects[1].Bottom, file.Objects[1].Top));
    }

    [Fact]
    public void Relative_extrusion_inches_arcs_line_numbers_and_tools_are_followed()
    {
        GcodeFile file = Read(
            """
            N1 G20*17
            N2 M83*36
            T0
            G1 Z0.01
            G1 X1 Y1
            G1 X2 Y1 E0.05
            G1 Z.02
            G3 X1 Y1 I-.5 J0 E0.05
            T1
            G2X2Y1I.5J0E.05
            T1000
            G1 X1 E.05
            """);

        Assert.Equal(1, file.ToolChanges);
        Assert.Equal([0, 1], file.Tools.AsEnumerable());
        Box2 bounds = Assert.Single(file.Objects).Bounds;
        Assert.Equal(25.4, bounds.Min.X, 9);
        Assert.Equal(1.5 * 25.4, bounds.Max.Y, 0.02);
        Assert.Equal(2 * 0.05 * 25.4, file.FilamentMillimetres[1], 9);
    }

    [Fact]
    public void What_gets_the_plastic_flowing_is_no_layer_of_the_part()
    {
        GcodeFile file = Read("M82\nG1 Z0.5\nG1 X0 Y0\nG1 X0 Y200 E15\nG92 E0\n" + Square());

        Assert.Equal((0.3, 3), (file.FirstLayer, file.Layers));
        Assert.Equal(100, Assert.Single(file.Objects).Bounds.Min.X);
    }

    [Theory]
    [InlineData("", 0, "the file is empty")]
    [InlineData("format: shellforge/1\nname: Lamp", 1, "'format: shellforge/1' is no G-code")]
    [InlineData("G1 X10\nG1 X1..2 E1", 2, "a letter has no number after it, or one beyond the reach of any printer")]
    [InlineData("G1 X10\nG1 X1e9 Y E1", 2, "a letter has no number after it, or one beyond the reach of any printer")]
    [InlineData("; a comment\nG28\nG1 X10 Y10", 0, "no line of this file lays plastic")]
    [InlineData("G21\n\u0000\u0001", 2, "this is no text, and no G-code")]
    [InlineData("GCDE\u0001", 1, "this is binary G-code; have your slicer write it as text")]
    [InlineData("PK\u0003\u0004\u0014\u0000", 1, "this is an archive, such as a 3MF file; have your slicer write plain G-code")]
    [InlineData("{\"a\": 1}", 1, "'{\"a\": 1}' is no G-code")]
    public void What_is_no_G_code_is_told_with_its_line(string text, long line, string message) =>
        Assert.Equal(new GcodeFault(line, message), GcodeReader.Read(new MemoryStream(Encoding.UTF8.GetBytes(text))).Fault);

    [Fact]
    public void Line_numbers_without_a_command_mean_nothing() => Assert.Equal(3, Read("N1\nN2*17\n" + Square()).Layers);

    [Fact]
    public void A_line_without_end_is_refused_before_it_fills_the_memory()
    {
        GcodeReading reading = GcodeReader.Read(new EndlessStream());

        Assert.Equal(new GcodeFault(1, "this line is longer than any of G-code"), reading.Fault);
    }

    [Fact]
    public void Any_change_of_a_file_gives_a_result_or_a_fault()
    {
        byte[] sound = Encoding.UTF8.GetBytes(Square() + "\n;TYPE:Support\n;TIME:12\n; filament used [mm] = 1, 2\n" + Square(";MESH:b"));
        Random random = FuzzRuns.Dice(7);
        (int read, int refused) = (0, 0);
        var time = new FuzzRuns(3000);
        while (time.Next())
        {
            byte[] changed = [.. sound];
            for (int c = random.Next(1, 6); c > 0; c--)
            {
                int at = random.Next(changed.Length);
                changed = random.Next(4) switch
                {
                    0 => [.. changed[..at], .. changed[random.Next(at, changed.Length)..]],
                    1 => [.. changed[..at], (byte)random.Next(256), .. changed[at..]],
                    2 => [.. changed[..at], .. changed[..random.Next(changed.Length)], .. changed[at..]],
                    _ => [.. changed[..at], (byte)"0123456789.-GMTXYZE;: \n"[random.Next(23)], .. changed[(at + 1)..]],
                };
            }

            var watch = Stopwatch.StartNew();
            GcodeReading reading = GcodeReader.Read(new MemoryStream(changed));
            Assert.True(watch.Elapsed < TimeSpan.FromSeconds(5));
            Assert.True(reading.File is not null ^ reading.Fault is not null);
            Assert.True(reading.File is not { } file || (double.IsFinite(file.Top) && file.Objects.Length > 0 && file.Tools.Length > 0));
            read += reading.File is null ? 0 : 1;
            refused += reading.File is null ? 1 : 0;
        }

        output.WriteLine($"{read} read, {refused} refused");
        Assert.True(read > 300 && refused > 300, $"{read} read, {refused} refused");
    }

    private sealed class EndlessStream : MemoryStream
    {
        public override int Read(byte[] buffer, int offset, int count)
        {
            buffer.AsSpan(offset, count).Fill((byte)'G');
            return count;
        }
    }
}
