using System.Diagnostics;
using System.Globalization;
using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

/// <summary>What a slicer lays down of a plate, read from its G-code.</summary>
internal sealed class SlicedPlate
{
    // The bed of the shipped profiles, several filaments through one nozzle; no purge tower, which would count as an object of its own.
    private const string Settings = """
        bed_shape = 0x0,210x0,210x210,0x210
        nozzle_diameter = 0.4,0.4
        filament_diameter = 1.75,1.75
        extruder_colour = "";""
        single_extruder_multi_material = 1
        temperature = 240,240
        first_layer_temperature = 240,240
        layer_height = 0.2
        first_layer_height = 0.2
        perimeters = 4
        fill_density = 20%
        wipe_tower = 0
        skirts = 0
        support_material = 0
        gcode_label_objects = 1
        """;

    private const int LongestRun = 200_000; // ms

    // Raster of what lies in a layer: a cell's side, how far plastic reaches beside the middle of its line, and half of the raster's side,
    // mm.
    private const double Cell = 0.2;
    private const double Reach = 0.35;
    private const double Side = 220;
    private const int Cells = (int)(Side / Cell);

    private readonly Dictionary<(string Object, int Filament), (double FromX, double FromY, double ToX, double ToY)> _laid = [];
    private bool[] _below = new bool[Cells * Cells];
    private bool[] _here = new bool[Cells * Cells];

    /// <summary>Names of the objects.</summary>
    public IEnumerable<string> Objects => _laid.Keys.Select(key => key.Object).Distinct();

    /// <summary>Changes of filament after the first.</summary>
    public int Changes { get; private set; } = -1;

    /// <summary>Box of all plastic that each filament lays within each object, mm.</summary>
    public IReadOnlyDictionary<(string Object, int Filament), (double FromX, double FromY, double ToX, double ToY)> Laid => _laid;

    /// <summary>Longest stretch of a line with nothing under it, mm, and where.</summary>
    public (double Length, string Where) LongestInAir { get; private set; } = (0, "");

    /// <summary>Slices a file as it lies.</summary>
    public static SlicedPlate Of(string file)
    {
        using var folder = new TemporaryFolder();
        folder.Write("settings.ini", Settings);
        string code = folder.File("plate.gcode");
        var start = new ProcessStartInfo(Slicer.Executable!,
            ["--load", folder.File("settings.ini"), "--dont-arrange", "--export-gcode", "-o", code, file])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using Process process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        if (!process.WaitForExit(LongestRun))
        {
            process.Kill(true);
        }

        Assert.True(process.ExitCode == 0 && File.Exists(code), output.Result + errors.Result);
        var plate = new SlicedPlate();
        plate.Read(File.ReadLines(code));
        return plate;
    }

    private void Read(IEnumerable<string> code)
    {
        (int tool, string current, double x, double y, double z) = (0, "", 0, 0, 0);
        foreach (string line in code)
        {
            if (line.StartsWith(";Z:", StringComparison.Ordinal))
            {
                z = double.Parse(line[3..], CultureInfo.InvariantCulture);
                (_below, _here) = (_here, _below);
                Array.Clear(_here);
            }
            else if (line.StartsWith("; printing object ", StringComparison.Ordinal))
            {
                current = line.Split(' ')[3];
            }
            else if (line.StartsWith("; stop printing", StringComparison.Ordinal))
            {
                current = "";
            }
            else if (line is ['T', var digit and >= '0' and <= '9', ..])
            {
                tool = digit - '0';
                Changes++;
            }
            else if (line.StartsWith("G1 X", StringComparison.Ordinal))
            {
                string[] words = line.Split(';')[0].Split(' ', StringSplitOptions.RemoveEmptyEntries);
                (double toX, double toY) = (Number(words, 'X') ?? x, Number(words, 'Y') ?? y);
                if (current.Length > 0 && Number(words, 'E') is > 0)
                {
                    (double fromX, double fromY, double mostX,
                        double mostY) = _laid.GetValueOrDefault((current, tool), (toX, toY, toX, toY));
                    _laid[(current, tool)] = (Math.Min(fromX, toX), Math.Min(fromY, toY), Math.Max(mostX, toX), Math.Max(mostY, toY));
                    Lay((x, y), (toX, toY), z, current);
                }

                (x, y) = (toX, toY);
            }
        }

        Changes = Math.Max(0, Changes);
    }

    private void Lay((double X, double Y) from, (double X, double Y) to, double z, string name)
    {
        double length = Math.Sqrt(((to.X - from.X) * (to.X - from.X)) + ((to.Y - from.Y) * (to.Y - from.Y)));
        int steps = Math.Max(1, (int)Math.Ceiling(length / Cell));
        int reach = (int)Math.Ceiling(Reach / Cell);
        int bare = 0;
        bool first = z < 0.3;
        for (int i = 0; i <= steps; i++)
        {
            int column = (int)((from.X + ((to.X - from.X) * i / steps)) / Cell);
            int row = (int)((from.Y + ((to.Y - from.Y) * i / steps)) / Cell);
            bare = first || _below[(row * Cells) + column] ? 0 : bare + 1;
            if (bare * length / steps > LongestInAir.Length)
            {
                LongestInAir = (bare * length / steps, $"{name} at z = {z}, ({from.X:0.0}, {from.Y:0.0}) to ({to.X:0.0}, {to.Y:0.0})");
            }

            for (int r = -reach; r <= reach; r++)
            {
                for (int c = -reach; c <= reach; c++)
                {
                    _here[((row + r) * Cells) + column + c] |= Cell * Cell * ((r * r) + (c * c)) <= Reach * Reach;
                }
            }
        }
    }

    private static double? Number(string[] words, char axis) => words.FirstOrDefault(word => word[0] == axis) is { } word
        ? double.Parse(word[1..], CultureInfo.InvariantCulture)
        : null;
}
