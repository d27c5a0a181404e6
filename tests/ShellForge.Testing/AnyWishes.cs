using System.Globalization;

namespace ShellForge.Testing;

/// <content>What is wanted of the housing.</content>
public sealed partial class AnyBoards
{
    private void Housing(string[] connectors)
    {
        _lines.Add("housing:");
        _lines.Add($"  insert: {Sane("m2.5x4-od4.6", [.. WrittenBoard.Shipped.Inserts.Names])}");
        Maybe("walls", "3", "4", "5", "1", "20", "1.6", "12.0");
        Maybe("floor", "2", "0.4", "7", "20");
        Maybe("screw", "pan", "cap", "button", "countersunk");
        Maybe("washers", "true");
        Maybe("clearance", "{board-edge: 0.6}", "{board-edge: 0.1}", "{board-edge: 10}", "{below-parts: 0.1}", "{below-parts: 50}");
        string angle = _dice.Next(360).ToString(CultureInfo.InvariantCulture);
        string cable = connectors.Length > 0 && !Once(4) ? $"{{part: {connectors[0]}}}"
            : _tame ? Pick("none", $"{{round: 4, angle: {angle}}}", $"{{round: 4, angle: {angle}, relief: knot}}")
            : Pick("none", "none", $"{{round: 4, angle: {angle}}}", $"{{round: 1, angle: {angle}, relief: knot}}",
                $"{{round: 16, angle: {angle}}}", $"{{round: 5, plug: [14, 8], angle: {angle}}}");
        _lines.Add($"  cable: {cable}");
        _lines.Add($"  closure: {Pick("snap", "snap", "screws", "twist", "glue")}");
        Maybe("hold", "auto", "clamp", "clips");
        Maybe("closure-screws", "4", "2", "5", "24");
        Maybe("bore", "open", "closed");
        string window = Sane("auto", "auto", "auto", "follow", "disc", "ring", "1", "14", "200",
            "{polygon: [[-9, -7], [12, -7], [3, 11]]}");
        _lines.Add(
            $"  light: {{through: {Sane("front", "front", "front", "front", "wall")}, look: {Pick("blend", "pixels")}, window: {window}, evenness: {Sane("soft", "even", "dots", "0.05", "0.99")}}}");
        Maybe("diffuser", "{thickness: 0.8}", "{thickness: 0.2}", "{thickness: 6}", "{sheet: 3}", "{sheet: 10}", "{distance: 0.5}", "{distance: 100}",
            "{thickness: 1.2, distance: 8}");
        Maybe("baffle", "loose", "joined");
        Maybe("vents", "auto", "none", "floor");
        Maybe("mount", "keyhole", "magnets", "stand", "tripod", "feet", "none");
        Maybe("label", "{text: \"TIDE 3\"}", "{text: \"A\", height: 60}",
            "{text: \"The longest label that anyone would ever want to have on it\", height: 10}",
            "{text: \"x\", where: floor-inside, height: 2}");
        Battery();
        SecondBoard();
    }

    // With dice of its own: boards of a seed keep all else that they had before there were batteries.
    private void Battery()
    {
        const int apart = 7_919;
        var dice = new Random(_seed + apart);
        string[] wild =
        [
            "aa", "18650", "pouch-401230", "{cell: aaa, count: 3, strap: tie}", "{flat: [3, 12, 20], grams: 2}", "{round: [50, 200]}",
            "{cell: pouch-502030, at: [3, -4], along: 30}", "{round: [3, 5], count: 6, along: 720}", "{flat: [40, 150, 200], count: 6}",
        ];
        if (dice.Next(4) == 0)
        {
            _lines.Add($"  battery: {(_tame ? wild[dice.Next(4)] : wild[dice.Next(wild.Length)])}");
        }
    }

    // With dice of its own as well; one on spacers comes with its holes, which are drawn with the board.
    private void SecondBoard()
    {
        var dice = new Random(_seed + ApartSecond);
        string[] wild =
        [
            "{size: [24, 18], above: 4}", "{round: 20, above: 3, hold: clips}", "{size: [30, 16], above: 5, hold: strap, watts: 1}",
            "{size: [26, 20], above: 6, holes: {at: [[10, 7], [-10, -7]], diameter: 2.7}}",
            "{size: [12, 12], above: 0, below: 0, turn: 33}", "{size: [200, 200], above: 60, below: 60}",
            "{size: [34, 30], above: 2, holes: {at: [[14, 12], [-14, 12], [0, -12]], diameter: 3.4}, hold: screws, at: [4, -3]}",
            "{round: 12, above: 1, hold: strap, at: [9, 9], thickness: 6}", "{size: [18, 60], above: 3, hold: clips, mains: true}",
        ];
        if (HasSpacers)
        {
            string[] hung = ["{round: 30, above: 2, spacers: 8}", "{round: 30, above: 9, spacers: 3}",
                "{size: [40, 26], above: 2, spacers: 12, turn: 20}"];
            _lines.Add($"  second-board: {hung[_tame ? 0 : dice.Next(hung.Length)]}");
        }
        else if (dice.Next(4) == 0)
        {
            _lines.Add($"  second-board: {(_tame ? wild[dice.Next(4)] : wild[dice.Next(wild.Length)])}");
        }
    }

    private void Rest()
    {
        _lines.Add(
            $"power: {{supply: {Sane("usb-c-1.5A", "usb-default", "{volts: 12, amps: 100}", "{volts: 5, amps: 0.01}")}, brightness: {Sane("0.1", "0.2", "1", "0.01")}, capped: true}}");
        string[] filaments = [.. WrittenBoard.Shipped.Filaments.Names];
        string shell = _tame || Once(2) ? "petg-black" : Pick(filaments);
        _lines.Add(
            $"print: {{printer: {Sane("fdm-0.4", [.. WrittenBoard.Shipped.Printers.Names])}, shell: {shell}, diffuser: {(_tame || Once(2) ? "petg-white" : Pick(filaments))}}}");
        _lines.Add($"use: {{orientation: {Pick("wall", "table", "hanging")}, ambient: {Sane("25", "30", "-30", "80", "[-10, 40]")}}}");
    }

    private void Maybe(string key, params string[] values)
    {
        if (_dice.Next(3) == 0)
        {
            _lines.Add($"  {key}: {Sane(values[0], values)}");
        }
    }

    // What makers write, or for wilder files anything.
    private string Sane(string first, params string[] rest) => _tame ? first : Pick([first, .. rest]);
}
