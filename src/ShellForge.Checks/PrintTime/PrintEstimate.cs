using System.Globalization;
using ShellForge.Board.Profiles;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Remembering;

namespace ShellForge.Checks.PrintTime;

/// <summary>Mass, filament and time of a part, from the lines that are laid in each of its layers.</summary>
/// <param name="Grams">Mass of the plastic laid down.</param>
/// <param name="FilamentMetres">Length of 1.75 mm filament.</param>
/// <param name="LayingMinutes">Time from the first line to the last, changes of filament left out.</param>
public sealed record PrintEstimate(double Grams, double FilamentMetres, double LayingMinutes)
{
    /// <summary>How far the time was found from a slicer's with the same speeds at most, summed over a board, %. Tests hold it.</summary>
    public const double TimeTolerance = 10;

    /// <summary>The same for the mass, %.</summary>
    public const double MassTolerance = 3;

    private const double FilamentDiameter = 1.75;

    // The line that is laid round the part first, to get the plastic flowing; typical of slicers.
    private const double SkirtDistance = 6;

    /// <summary>Changes of filament.</summary>
    public int Changes { get; init; }

    /// <summary>Time of heating, homing and changes of filament.</summary>
    public double WaitingMinutes { get; init; }

    /// <summary>All time on the printer.</summary>
    public double Minutes => LayingMinutes + WaitingMinutes;

    /// <summary>What the estimate holds for, for people.</summary>
    public static string AssumptionsOf(PrinterProfile printer) =>
        $"for {printer.Name} at its speeds; a slicer with the same speeds comes within {TimeTolerance} % of the time and {MassTolerance} "
            + $"% of the mass, "
        + "one with other speeds differs";

    /// <summary>A time in words: "41 min", "2 h 05 min".</summary>
    public static string Duration(double minutes)
    {
        int whole = (int)Math.Round(minutes, MidpointRounding.AwayFromZero);
        return whole < 60
            ? string.Create(CultureInfo.InvariantCulture, $"{whole} min")
            : string.Create(CultureInfo.InvariantCulture, $"{whole / 60} h {whole % 60:00} min");
    }

    /// <summary>The same with heating and homing before it: of a part with a print of its own.</summary>
    public PrintEstimate Started(PrinterProfile printer) => this with { WaitingMinutes = WaitingMinutes + (printer.Motion.StartTime / 60) };

    /// <summary>
    /// The same with the changes of filament that a part needs which is printed into another one: one in each layer that holds both, since
    /// a layer begins with the filament that the layer below ended with.
    /// </summary>
    /// <param name="part">Its layers.</param>
    /// <param name="other">Those of the other part.</param>
    /// <param name="printer">The printer.</param>
    /// <param name="filament">What the nozzle is flushed with.</param>
    public PrintEstimate Changed(PartLayers part, PartLayers other, PrinterProfile printer, FilamentProfile filament)
    {
        int changes = part.SharedWith(other);
        double flushed = changes * printer.Motion.ChangePlastic;
        return this with
        {
            Changes = changes,
            Grams = Grams + Mass(flushed, filament),
            FilamentMetres = FilamentMetres + Metres(flushed),
            WaitingMinutes = WaitingMinutes + (changes * printer.Motion.ChangeTime / 60),
        };
    }

    /// <summary>Estimates a sound part of a housing that is printed alone, without heating and changes of filament.</summary>
    public static PrintEstimate Of(HousingUnderCheck housing, MadePart part)
    {
        PrinterProfile printer = PrinterOf(housing, part);
        return housing.Memory.OfMesh(
            part.PrintMesh, new LaidKey(printer, part.Plan.Filament),
            () => Of(housing.LayersOf(part), printer, part.Plan.Filament, housing.Memory));
    }

    /// <summary>
    /// Estimates a sound part of a housing as it is printed: heated for where it is printed alone; into another one it shares that heating,
    /// and the filament changes wherever a layer holds both.
    /// </summary>
    public static PrintEstimate Printed(HousingUnderCheck housing, MadePart part)
    {
        PrinterProfile printer = PrinterOf(housing, part);
        PrintEstimate alone = Of(housing, part);
        return part.Plan.PrintedWith is { } with && housing.Part(with) is { } other
            ? alone.Changed(housing.LayersOf(part), housing.LayersOf(other), printer, part.Plan.Filament)
            : alone.Started(printer);
    }

    /// <summary>The printer with what the plan says of a part: how densely it is filled.</summary>
    /// <param name="housing">The housing.</param>
    /// <param name="part">One of its parts.</param>
    public static PrinterProfile PrinterOf(HousingUnderCheck housing, MadePart part)
    {
        PrinterProfile printer = housing.Board.Print.Printer;
        Sourced infill = printer.Motion.Infill with { Value = part.Plan.Print.Infill };
        return printer with { Motion = printer.Motion with { Infill = infill } };
    }

    /// <summary>Estimates a part.</summary>
    /// <param name="stack">Its layers.</param>
    /// <param name="printer">The printer.</param>
    /// <param name="filament">What it is printed of.</param>
    /// <param name="memory">Knows the lines of sections that were laid before.</param>
    public static PrintEstimate Of(PartLayers stack, PrinterProfile printer, FilamentProfile filament, WorkMemory? memory = null)
    {
        memory ??= new WorkMemory();
        double volume = 0;
        double seconds = 0;
        int[] runs = Runs(stack);
        int skins = (int)printer.Motion.SkinLayers;
        var sections = new ScanLines?[runs.Length];
        WallLines? walls = null;
        ScanLines? inside = null;
        int[] around = [];
        LayerFill? fill = null;
        (double Volume, double Seconds) layerDone = (0, 0);
        foreach (PrintedLayer layer in stack.Layers)
        {
            int index = layer.Index;
            double step = WallLines.Spacing(printer, layer.Height);
            ScanLines Section(int run) => sections[run] ??= Hatch.Of(stack.Layers[run].Outline, step);
            if (walls is null || runs[index] == index || index == 1)
            {
                walls = WallLines.Of(layer.Outline, printer, layer.Height, memory);
                inside = Hatch.Of(walls.Inside, step);
                sections = index <= 1 ? new ScanLines?[runs.Length] : sections;
            }

            // Layers of one run with the same runs above and below are laid alike.
            int[] now = [.. Enumerable.Range(index - skins - 1, (2 * skins) + 2).Select(i => i < 0 || i >= runs.Length ? -1 : runs[i])];
            if (index <= 1 || !now.AsSpan().SequenceEqual(around))
            {
                ScanLines[] below = [.. Enumerable.Range(1, skins).Select(i => index - i).Where(i => i >= 0).Select(i => Section(runs[i]))];
                ScanLines[] above =
                    [.. Enumerable.Range(1, skins).Select(i => index + i).Where(i => i < runs.Length).Select(i => Section(runs[i]))];
                fill = LayerFill.Of(inside!, below, above, index > 1 ? fill : null, printer);
                var speeds = new PrintedSpeeds(printer, index == 0, layer.Height);
                WallLines over = index > 0 && runs[index] == index ? walls.Over(layer.Outline, stack.Layers[index - 1].Outline, printer)
                    : walls;
                layerDone = Laid(layer, over, fill, speeds, printer);
            }

            around = now;
            volume += layerDone.Volume;
            seconds += layerDone.Seconds;
        }

        return new PrintEstimate(Mass(volume, filament), Metres(volume), seconds / 60);
    }

    private sealed record LaidKey(PrinterProfile Printer, FilamentProfile Filament);

    private static double Mass(double volume, FilamentProfile filament) => volume * filament.Density / 1000;

    private static double Metres(double volume) => volume / (Math.PI * FilamentDiameter * FilamentDiameter / 4) / 1000;

    private static (double Volume, double Seconds) Laid(PrintedLayer layer, WallLines walls, LayerFill fill, PrintedSpeeds speeds,
        PrinterProfile printer)
    {
        IReadOnlyList<LaidLine>[] filled = [.. fill.Lines(printer)];
        IReadOnlyList<LaidLine>[] skirt = layer.Index == 0 ? [[Skirt(layer.Outline)]] : [];
        double volume = (walls.Area * layer.Height)
            + walls.Loops.Sum(line => line.Length * (speeds.SectionOf(line.Kind) - speeds.Section))
            + filled.Concat(skirt).Sum(lines => lines.Sum(line => line.Length * speeds.SectionOf(line.Kind)));
        LayerTour tour = LayerTour.Of([.. skirt, walls.Loops, .. filled]);
        double seconds = tour.Seconds(printer, speeds);
        return (volume, seconds);
    }

    private static LaidLine Skirt(Region outline)
    {
        var hull = outline.Hull().Grown(SkirtDistance).Loops[0];
        return new LaidLine(LineKind.Inner, [.. hull, hull[0]]);
    }

    // For each layer the first of the run of equal layers that it belongs to.
    private static int[] Runs(PartLayers stack)
    {
        int[] runs = new int[stack.Layers.Length];
        for (int i = 0; i < runs.Length; i++)
        {
            runs[i] = i > 0 && stack.Layers[i].SameAsBelow ? runs[i - 1] : i;
        }

        return runs;
    }
}
