using System.Globalization;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Testing;

/// <summary>
/// Board files as makers write them, drawn by a seed: discs, rings and polygons with a pattern of holes, LEDs on a circle clear of screw
/// heads and edge, and any of the housing's wishes. What they ask for can be printed, so a finding about geometry that only the housing has
/// is a defect of the housing.
/// </summary>
public static class RandomBoards
{
    // Insert, hole in the board, largest head over it, mm.
    private static readonly (string Insert, double Hole, double Head)[] Fixings =
    [
        ("m2x3-od3.6", 2.2, 4.0), ("m2x4-od3.6", 2.2, 4.0), ("m2.5x4-od4.6", 2.7, 5.0), ("m2.5x5.7-od4.6", 2.7, 5.0),
        ("m3x4-od4.6", 3.2, 6.0),
        ("m3x4-od5.0", 3.2, 6.0), ("m3x5.7-od4.6", 3.2, 6.0), ("m3x5.7-od4.6-tapered", 3.2, 6.0),
    ];

    private static readonly (string Package, double Diagonal)[] Leds = [("2020", 2.9), ("3535", 5.0), ("5050", 7.1)];

    private static readonly string[] Printers = ["fdm-0.4", "fdm-0.4", "fdm-0.4-fine", "fdm-0.4-draft", "fdm-0.6"];

    private static readonly string[] Labels = ["A", "TIDE 3", "Harbour light", "No 12", "x2-B", "Boathouse, west gable 1"];

    /// <summary>The text of a board file.</summary>
    public static string Text(int seed)
    {
        var dice = new Random(seed);
        (string insert, double hole, double head) = Pick(dice, Fixings);
        (string led, double diagonal) = Pick(dice, Leds);
        string shape = Pick(dice, ["disc", "ring", "polygon"]);
        double outer = Tenths(45 + (75 * dice.NextDouble()));
        int corners = 5 + dice.Next(4);

        // Of a polygon only what lies within its flats is free all round.
        double free = shape == "polygon" ? outer * Angle.FromDegrees(180.0 / corners).Cos : outer;
        double bore = Tenths(outer * (0.25 + (0.1 * dice.NextDouble())));
        double holeCircle = Tenths(free - (2 * ((head / 2) + 1.2)));
        double ledCircle = Tenths(holeCircle - head - diagonal - 2);
        string outline = shape switch
        {
            "disc" => Mm($"{{disc: {outer}}}"),
            "ring" => Mm($"{{ring: {{outer: {outer}, bore: {bore}}}}}"),
            _ => "{polygon: [" + string.Join(", ", Enumerable.Range(0, corners).Select(i => Corner(outer / 2, i, corners))) + "]}",
        };
        int leds = Math.Clamp((int)(Math.PI * ledCircle / (diagonal + 2 + (4 * dice.NextDouble()))), 4, 60);
        List<string> lines =
        [
            "format: shellforge/1", $"name: Drawn {seed}", "up: 90", "board:", $"  outline: {outline}", "  centre: [0, 0]",
            "  thickness: 1.6", "  holes:",
            Mm($"    - {{circle: {holeCircle}, count: {3 + dice.Next(3)}, from: {45 + (5 * dice.Next(5))}, diameter: {hole}}}"),
            Mm($"  pixels: {{package: \"{led}\", circle: {ledCircle}, count: {leds}, from: 90}}"),
        ];
        string cable = Pick(dice, ["none", "{round: 4}", "{round: 5, relief: knot}"]);
        if (shape == "disc" && dice.Next(3) == 0)
        {
            lines.Add("  parts:");
            lines.Add("    - {ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: 1.0}");
            cable = "{part: J1}";
        }

        lines.Add("housing:");
        lines.Add($"  insert: {insert}");
        lines.Add($"  walls: {Pick(dice, ["3", "4", "5"])}");
        lines.Add($"  closure: {Pick(dice, ["snap", "screws", "screws", shape != "polygon" && cable == "none" ? "twist" : "snap"])}");
        lines.Add($"  cable: {cable}");
        lines.Add($"  light: {{look: {Pick(dice, ["blend", "pixels"])}, evenness: {Pick(dice, ["soft", "dots"])}}}");
        lines.Add($"  diffuser: {Pick(dice, ["{thickness: 0.8}", "{thickness: 1.2}", "{sheet: 2}"])}");
        lines.Add($"  vents: {Pick(dice, ["auto", "floor", "none"])}");
        if (shape == "ring")
        {
            lines.Add($"  bore: {Pick(dice, ["open", "closed"])}");
        }

        if (dice.Next(3) > 0)
        {
            lines.Add(
                Mm($"  label: {{text: \"{Pick(dice, Labels)}\", where: {Pick(dice, ["floor-outside", "floor-inside"])}, height: {3 + dice.Next(8)}}}"));
        }

        if (dice.Next(2) == 0)
        {
            lines.Insert(2, $"revision: {Pick(dice, ["B", "C2", "m2x3-od3.6"])}");
        }

        lines.Add($"print: {{printer: {Pick(dice, Printers)}, shell: petg-black, diffuser: petg-white}}");
        return string.Join('\n', lines) + "\n";
    }

    private static string Corner(double radius, int i, int corners)
    {
        var at = Point2.Polar(radius, Angle.FromDegrees(((2 * i) + 1) * 180.0 / corners));
        return string.Create(CultureInfo.InvariantCulture, $"[{at.X:0.###}, {at.Y:0.###}]");
    }

    private static T Pick<T>(Random dice, T[] from) => from[dice.Next(from.Length)];

    private static double Tenths(double value) => Math.Round(value, 1);

    private static string Mm(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
