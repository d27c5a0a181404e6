using System.Globalization;
using System.Text;
using ShellForge.Import.Files;
using ShellForge.Testing;

namespace ShellForge.Import.Tests;

/// <summary>A part of a board made up for a test.</summary>
internal sealed record MadePart(string Ref, string Package, string Value, double X, double Y, double Turn);

/// <summary>
/// A round board with LEDs, parts and holes in patterns, as hand-over files, and what was put in. The places are worked out here, by
/// formulas of their own: nothing of the import or of the board file's reader has a share in them.
/// </summary>
internal sealed class PatternBoard(double x, double y, double resolution, double turnResolution)
{
    public const double Diameter = 320;

    private readonly List<MadePart> _parts = [];
    private readonly List<(double X, double Y, double Diameter)> _holes = [];

    public double X => x;

    public double Y => y;

    public IReadOnlyList<MadePart> Parts => _parts;

    public IReadOnlyList<(double X, double Y, double Diameter)> Holes => _holes;

    public void Led(string name, double px, double py, double turn) => Add(name, "LED_2020", "WS2812B", px, py, turn);

    public void Capacitor(string name, double px, double py, double turn) => Add(name, "C_0402_1005Metric", "100n", px, py, turn);

    public void Resistor(string name, double px, double py, double turn) => Add(name, "R_0603_1608Metric", "1k", px, py, turn);

    public void Hole(double px, double py, double diameter) =>
        _holes.Add((Rounded(px + x, resolution), Rounded(py + y, resolution), diameter));

    public void Add(string name, string package, string value, double px, double py, double turn) => _parts.Add(new MadePart(
        name, package, value, Rounded(px + x, resolution), Rounded(py + y, resolution), Rounded(Whole(turn), turnResolution)));

    /// <summary>The files, with the lines of the list in any order.</summary>
    public EcadFile[] Files(Draws draws)
    {
        var list = new StringBuilder("## Unit = mm, Angle = deg.\n# Ref Val Package PosX PosY Rot Side\n");
        foreach (MadePart p in draws.Shuffled(_parts))
        {
            list.Append(
                CultureInfo.InvariantCulture,
                $"{p.Ref}  {p.Value}  {p.Package}  {p.X:0.0000##}  {p.Y:0.0000##}  {p.Turn:0.00##}  top\n");
        }

        var drill = new StringBuilder("; non-plated\nM48\nMETRIC,TZ\n");
        double[] tools = [.. _holes.Select(h => h.Diameter).Distinct()];
        for (int i = 0; i < tools.Length; i++)
        {
            drill.Append(CultureInfo.InvariantCulture, $"T{i + 1}C{tools[i]}\n");
        }

        drill.Append("%\n");
        for (int i = 0; i < tools.Length; i++)
        {
            drill.Append(CultureInfo.InvariantCulture, $"T{i + 1}\n");
            foreach (var hole in draws.Shuffled(_holes.Where(h => h.Diameter == tools[i])))
            {
                drill.Append(CultureInfo.InvariantCulture, $"X{hole.X:0.0000}Y{hole.Y:0.0000}\n");
            }
        }

        List<EcadFile> files = [new("edge.gbr", Encoding.UTF8.GetBytes(Edge()))];
        if (_parts.Count > 0)
        {
            files.Add(new EcadFile("parts.pos", Encoding.UTF8.GetBytes(list.ToString())));
        }

        if (_holes.Count > 0)
        {
            files.Add(new EcadFile("npth.drl", Encoding.UTF8.GetBytes(drill + "M30\n")));
        }

        return [.. files];
    }

    private static double Rounded(double value, double step) => Math.Round(Math.Round(value / step) * step, 6);

    private static double Whole(double turn) => turn - (360 * Math.Floor(turn / 360));

    private string Edge()
    {
        long right = (long)Math.Round((x + (Diameter / 2)) * 1e6);
        long middle = (long)Math.Round(y * 1e6);
        return "%FSLAX46Y46*%\n%MOMM*%\n%ADD10C,0.1*%\nD10*\n%TF.FileFunction,Profile,NP*%\n"
            + $"X{right}Y{middle}D02*\nG75*\nG03X{right}Y{middle}I-{(long)(Diameter / 2 * 1e6)}J0D01*\nG01*\nM02*\n";
    }
}
