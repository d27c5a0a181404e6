using System.Text;
using ShellForge.Board.Schema;

namespace ShellForge.Board.Yaml;

/// <summary>A commented board file to start from: it reads without a mistake and gives a housing.</summary>
public static class StarterBoard
{
    private const int LongestName = 60;

    /// <summary>The text of the file.</summary>
    /// <param name="name">What the housing is called; signs that cannot stand on a line are left out.</param>
    public static string Text(string name) =>
        $"# {EditorSchema.Comment}\n" + Template.Replace("{NAME}", Quoted(name), StringComparison.Ordinal);

    private static string Quoted(string name)
    {
        string line = string.Concat(name.Where(c => !char.IsControl(c) && !char.IsSurrogate(c))).Trim();
        line = line.Length == 0 ? "New housing" : line.Length > LongestName ? line[..LongestName].Trim() : line;
        var quoted = new StringBuilder("\"");
        foreach (char c in line)
        {
            quoted.Append(c is '"' or '\\' ? $"\\{c}" : c.ToString());
        }

        return quoted.Append('"').ToString();
    }

    private const string Template = """
        # A board file: everything ShellForge has to know about a round LED board and the housing wanted for it.
        # Lengths are mm, or carry a unit: 0.5 in, 40 mil. Coordinates are the ECAD's: seen from the LED side, x right, y up.
        # Angles run counter-clockwise from +x: 0 is right, 90 is up. Lines that start with # are comments; delete what you don't need.
        format: shellforge/1
        name: {NAME}
        revision: A                     # set inside every printed part
        up: 90                          # the board angle that points up in use

        board:
          outline: {disc: 70}           # or {ring: {outer: 92, bore: 46}}, {polygon: [[x, y], ...]}, {arcs: [[x, y, angle], ...]}
          # centre: [100, 80]           # where the board's centre lies in the ECAD's coordinates, if not at its origin
          thickness: 1.6
          edge: clean                   # clean (routed all round), tabs (broken out of a panel) or v-scored
          # measured: {outer: 69.8, thickness: 1.55, date: 2026-11-29, batch: "March"}   # what calipers say of this batch
          holes:
            # circle: diameter of the pitch circle. A single hole: {at: [x, y], diameter: 2.2, for: tooling}
            - {circle: 60, count: 4, from: 45, diameter: 2.7, for: mount}
          pixels:
            package: "5050"
            circle: 40
            count: 12
            from: 90                    # the first LED
            direction: cw               # the way the data runs, seen from the LED side
            # A part beside each LED: x away from the centre, y counter-clockwise, from the LED's middle.
            with: {package: "0603", at: [-3.9, 0], rotation: 90}
          parts:
            # Whatever stands up from the board. The tallest one decides how high the board sits: measure it.
            # A connector: faces is the direction its mouth looks to, past-edge how far the mouth stands out (negative: inside).
            - {ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: 1.0}
            - {ref: U1, package: soic-8, side: bottom, at: [0, 12]}
            # A part without a package: [along x, along y, height].
            - {ref: C9, size: [6.6, 6.6, 5.4], side: bottom, polar: [15, 200]}
            # Modules, headers and parts with leads must say how they sit: mounted: flat, on-pins, in-socket, standing or lying.

        housing:
          insert: m2.5x4-od4.6          # the insert in your drawer, by its body: measure it over the knurl; leave it out on a board without mounting holes
          screw: pan                    # pan, cap, button or countersunk; the thread follows the insert
          walls: 4                      # lines of plastic, or a thickness such as 2.0
          floor: 2.0
          clearance: {board-edge: auto, below-parts: 0.6}
          cable: {part: J1}             # or {round: 4.5, angle: 270, relief: tie}, or none
          closure: snap                 # snap, screws or twist
          light: {through: front, look: blend, window: 11, evenness: soft}   # look: blend or pixels; evenness: dots, soft or even
          diffuser: {thickness: 0.8, distance: auto}   # or {sheet: 3.0} for a cut sheet
          vents: auto
          mount: none                   # keyhole, magnets, stand, tripod or feet

        # 5 V only. Mains has no place in a printed housing: use a certified supply.
        power: {supply: usb-c-1.5A, brightness: 0.2, capped: true}   # capped: the firmware never goes brighter
        use: {orientation: table, ambient: 30}
        print: {printer: fdm-0.4, shell: petg-black, diffuser: petg-white}

        """;
}
