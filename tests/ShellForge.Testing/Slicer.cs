using System.Diagnostics;
using System.Globalization;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Testing;

/// <summary>What a slicer says of a part.</summary>
/// <param name="Grams">Mass of the filament.</param>
/// <param name="Minutes">Time of the print, without heating.</param>
public readonly record struct SlicerFigures(double Grams, double Minutes);

/// <summary>A line of plastic.</summary>
/// <param name="From">Where it begins, mm.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Z">Upper face of its layer.</param>
public readonly record struct SlicedLine(Point2 From, Point2 To, double Z);

/// <summary>
/// A general-purpose slicer of this machine, as a foreign judge of times and masses. It gets the speeds of a printer profile.
/// </summary>
public static class Slicer
{
    // Where the middle of a part is laid, mm.
    private const int Centre = 150;

    /// <summary>Where it is; null where there is none.</summary>
    public static string? Executable { get; } = ForeignRun.Find("prusa-slicer");

    /// <summary>The lines of plastic that the slicer lays, in the part's own coordinates; the skirt among them.</summary>
    /// <exception cref="InvalidOperationException">The slicer failed or took longer than the limit.</exception>
    public static IReadOnlyList<SlicedLine> Lines(Mesh part, PrinterProfile printer, double density, TimeSpan limit)
    {
        using var folder = new TemporaryFolder();
        string code = Run(folder, part, printer, density, limit);
        Box3 bounds = Measure.Bounds(part);
        var lines = new List<SlicedLine>();
        (double x, double y, double z, double e) = (0, 0, 0, 0);
        foreach (string line in File.ReadLines(code))
        {
            string[] words = line.Split(';')[0].Split(' ', StringSplitOptions.RemoveEmptyEntries);
            double Word(char letter, double otherwise) => words.Skip(1).FirstOrDefault(word => word[0] == letter) is { } word
                ? double.Parse(word[1..], CultureInfo.InvariantCulture) : otherwise;
            if (words is ["G1", ..] or ["G0", ..])
            {
                (double toX, double toY, double toE) = (Word('X', x), Word('Y', y), Word('E', e));
                z = Word('Z', z);
                if (toE > e && (toX != x || toY != y))
                {
                    var shift = new Point2(Centre - bounds.Centre.X, Centre - bounds.Centre.Y);
                    lines.Add(new SlicedLine(new Point2(x, y) - shift, new Point2(toX, toY) - shift, z));
                }

                (x, y, e) = (toX, toY, toE);
            }
            else if (words is ["G92", ..])
            {
                e = Word('E', e);
            }
        }

        return lines;
    }

    /// <summary>Slices a part as it lies and reads the time and the mass that the slicer wrote.</summary>
    /// <exception cref="InvalidOperationException">The slicer failed or took longer than the limit.</exception>
    public static SlicerFigures Slice(Mesh part, PrinterProfile printer, double density, TimeSpan limit)
    {
        using var folder = new TemporaryFolder();
        string code = Run(folder, part, printer, density, limit);
        return new SlicerFigures(
            double.Parse(Value(code, "; filament used [g] = "), CultureInfo.InvariantCulture),
            Minutes(Value(code, "; estimated printing time (normal mode) = ")));
    }

    /// <summary>The G-code of a part as it lies, with other settings than a printer profile says.</summary>
    /// <param name="part">The part.</param>
    /// <param name="printer">The printer.</param>
    /// <param name="density">Density of the filament, g/cm3.</param>
    /// <param name="other">Words of a command line that come last.</param>
    /// <exception cref="InvalidOperationException">The slicer failed or took too long.</exception>
    public static byte[] Code(Mesh part, PrinterProfile printer, double density, params string[] other)
    {
        using var folder = new TemporaryFolder();
        return File.ReadAllBytes(Run(folder, part, printer, density, TimeSpan.FromMinutes(3), other));
    }

    private static string Run(
        TemporaryFolder folder, Mesh part, PrinterProfile printer, double density, TimeSpan limit, params string[] other)
    {
        string model = Path.Combine(folder.Path, "part.stl");
        string settings = Path.Combine(folder.Path, "printer.ini");
        string code = Path.Combine(folder.Path, "part.gcode");
        WriteStl(model, part);
        File.WriteAllLines(settings, Settings(printer, density).Select(setting => $"{setting.Key} = {setting.Value}"));
        using Process process = Process.Start(new ProcessStartInfo(
            Executable!, ["-g", "--load", settings, "--center", $"{Centre},{Centre}", "--loglevel", "0", "-o", code, .. other, model])
        { RedirectStandardOutput = true, RedirectStandardError = true })!;
        Task<string> told = process.StandardOutput.ReadToEndAsync();
        Task<string> failed = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(limit))
        {
            process.Kill(true);
            throw new InvalidOperationException($"The slicer took longer than {limit}.");
        }

        return File.Exists(code) ? code : throw new InvalidOperationException(told.Result + failed.Result);
    }

    // What both sides take for given: the profile's numbers, under the slicer's names.
    private static IEnumerable<KeyValuePair<string, string>> Settings(PrinterProfile printer, double density)
    {
        PrinterMotion motion = printer.Motion;
        (string Key, double Value)[] numbers =
        [
            ("layer_height", printer.LayerHeight), ("first_layer_height", printer.FirstLayerHeight), ("nozzle_diameter", printer.Nozzle),
            .. new[] { "", "first_layer_", "external_perimeter_", "perimeter_", "infill_", "solid_infill_", "top_infill_" }
                .Select(kind => ($"{kind}extrusion_width", printer.LineWidth.Value)),
            ("perimeters", motion.Perimeters), ("top_solid_layers", motion.SkinLayers), ("bottom_solid_layers", motion.SkinLayers),
            ("filament_density", density), ("filament_diameter", 1.75), ("max_volumetric_speed", printer.FlowRate),
            ("external_perimeter_speed", motion.SpeedOuter), ("perimeter_speed", motion.SpeedInner), ("gap_fill_speed", motion.SpeedInner),
            ("small_perimeter_speed", motion.SpeedSmall), ("solid_infill_speed", motion.SpeedSkin),
            ("top_solid_infill_speed", motion.SpeedTop),
            ("infill_speed", motion.SpeedInfill), ("bridge_speed", motion.SpeedBridge), ("first_layer_speed", motion.SpeedFirstLayer),
            ("travel_speed", motion.SpeedTravel), ("slowdown_below_layer_time", motion.LayerTime), ("min_print_speed", motion.SpeedLeast),
            ("retract_length", motion.Retraction), ("retract_speed", motion.RetractionSpeed),
            ("retract_before_travel", motion.RetractionFrom),
            ("machine_max_acceleration_x", Math.Max(motion.Acceleration, motion.TravelAcceleration)),
            ("machine_max_acceleration_y", Math.Max(motion.Acceleration, motion.TravelAcceleration)),
            ("machine_max_acceleration_extruding", motion.Acceleration), ("machine_max_acceleration_travel", motion.TravelAcceleration),
            ("machine_max_jerk_x", motion.CornerStep), ("machine_max_jerk_y", motion.CornerStep),
            ("machine_max_feedrate_x", 2000), ("machine_max_feedrate_y", 2000), ("machine_max_acceleration_retracting", 5000),
            ("machine_max_acceleration_e", 5000), ("machine_max_acceleration_z", 500), ("machine_max_feedrate_z", 12),
            ("machine_max_jerk_z", 0.4),
            ("machine_max_jerk_e", 5), ("machine_max_feedrate_e", 120), ("max_print_height", 300), ("silent_mode", 0),
        ];
        return
        [
            .. numbers.Select(number => KeyValuePair.Create(number.Key, number.Value.ToString(CultureInfo.InvariantCulture))),
            KeyValuePair.Create("fill_density", (100 * motion.Infill).ToString(CultureInfo.InvariantCulture) + "%"),
            KeyValuePair.Create("fill_pattern", "grid"),
            KeyValuePair.Create("gcode_flavor", "marlin"),
            KeyValuePair.Create("machine_limits_usage", "emit_to_gcode"),
            KeyValuePair.Create("bed_shape", "0x0,300x0,300x300,0x300"),
        ];
    }

    private static string Value(string code, string name) =>
        File.ReadLines(code).First(line => line.StartsWith(name, StringComparison.Ordinal))[name.Length..];

    private static double Minutes(string words) => words.Split(' ').Sum(word =>
        double.Parse(word[..^1], CultureInfo.InvariantCulture) * word[^1] switch { 'd' => 1440, 'h' => 60, 'm' => 1, _ => 1 / 60.0 });

    private static void WriteStl(string path, Mesh mesh)
    {
        using var writer = new BinaryWriter(File.Create(path));
        writer.Write(new byte[80]);
        writer.Write(mesh.TriangleCount);
        for (int i = 0; i < mesh.TriangleCount; i++)
        {
            writer.Write(new byte[12]);
            foreach (Point3 corner in mesh.Triangles.Slice(3 * i, 3).Select(vertex => mesh.Vertices[vertex].ToMillimetres()))
            {
                writer.Write((float)corner.X);
                writer.Write((float)corner.Y);
                writer.Write((float)corner.Z);
            }

            writer.Write((short)0);
        }
    }
}
