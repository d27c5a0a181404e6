using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

public sealed partial class NoWishIgnoredTests
{
    private const string Print = "print: {printer: fdm-0.4, shell: petg-black, diffuser: petg-white}";

    internal static Dictionary<string, string> Boards => new()
    {
        ["parts"] = $$$"""
            format: shellforge/1
            name: Parts
            revision: A
            up: 90
            board:
              outline: {disc: 70}
              thickness: 1.6
              edge: tabs
              measured: {outer: 70.2, thickness: 1.65, tab-stub: 0.5}
              cutouts: [{circle: 4, at: [-12, 0]}]
              holes:
                - {circle: 60, count: 5, from: 45, direction: cw, skip: [2], diameter: 2.7, for: mount, keep-out: {top: 6, bottom: 6}}
                - {polar: [31, 0], diameter: 1.2, for: tooling}
              pixels: {package: "2020", circle: 34, count: 10, from: 90, direction: cw, skip: [3], with: [{package: "0603", at: [-2.6, 0], rotation: 90, side: top}]}
              parts:
                - {ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: 1, port: open}
                - {ref: U1, package: controller-module-18x21, side: bottom, at: [0, 12], rotation: 0, mounted: flat}
                - {ref: C1, package: electrolytic-6.3x11, side: bottom, polar: [20, 200], mounted: lying, turns: false, joint-protrusion: 1.5}
                - {ref: C2, size: [6.3, 6.3, 7.7], round: true, side: bottom, at: [18, -8]}
                - {ref: R1, package: "0805", side: top, circle: 48, count: 3, from: 10, direction: ccw}
              wires:
                - {name: out, at: [10, 20], side: bottom, conductors: 2, gauge: 24, to: out}
            housing: {insert: m2.5x4-od4.6, screw: pan, walls: 4, floor: 2, cable: {part: J1}, closure: snap, mount: keyhole, label: {text: "PARTS", height: 5}}
            power: {supply: {volts: 5, amps: 0.3}, brightness: 0.3, capped: true}
            use: {orientation: wall, ambient: 25}
            {{{Print}}}
            """,
        ["octagon"] = File.ReadAllText(Repository.At("tests", "boards", "valid", "polygon-cable.yaml")),
        ["disc"] = $$$"""
            format: shellforge/1
            name: Disc
            board:
              outline: {disc: 50}
              thickness: 1.6
              holes: [{circle: 42, count: 3, from: 45, diameter: 2.2}]
              pixels: {package: "2020", circle: 24, count: 8, from: 90}
            housing: {insert: m2x3-od3.6, cable: {round: 4, angle: 270, relief: tie}, closure: snap}
            {{{Print}}}
            """,
        ["magnets"] = $$$"""
            format: shellforge/1
            name: Magnets
            board:
              outline: {disc: 90}
              thickness: 1.6
              holes: [{circle: 80, count: 3, from: 45, diameter: 2.2}]
              pixels: {package: "2020", circle: 50, count: 8, from: 90}
            housing: {insert: m2x3-od3.6, cable: none, closure: snap, mount: magnets}
            {{{Print}}}
            """,
        ["battery"] = $$$"""
            format: shellforge/1
            name: Battery
            board:
              outline: {disc: 90}
              thickness: 1.6
              holes: [{circle: 82, count: 3, from: 45, diameter: 2.2}]
              pixels: {package: "2020", circle: 50, count: 8, from: 90}
              parts: [{ref: J9, size: [6, 8, 6], side: bottom, at: [0, 30]}]
            housing:
              insert: m2x3-od3.6
              cable: none
              closure: screws
              battery: {cell: 14500, count: 1, at: [0, 0], along: 0, strap: hook-and-loop}
            {{{Print}}}
            """,
        ["two boards"] = File.ReadAllText(Repository.At("tests", "boards", "valid", "second-board-loose.yaml")),
        ["stacked"] = File.ReadAllText(Repository.At("tests", "boards", "valid", "second-board-spacers.yaml")),
        ["heavy"] = File.ReadAllText(Repository.At("tests", "boards", "valid", "second-board-loose.yaml"))
            .Replace("  vents: none", "  vents: none\n  mount: stand", StringComparison.Ordinal),
        ["pouch"] = $$$"""
            format: shellforge/1
            name: Pouch
            board:
              outline: {disc: 90}
              thickness: 1.6
              holes: [{circle: 82, count: 3, from: 45, diameter: 2.2}]
              pixels: {package: "2020", circle: 50, count: 8, from: 90}
            housing: {insert: m2x3-od3.6, cable: none, closure: screws, mount: stand, battery: {flat: [6, 20, 40], grams: 10}}
            {{{Print}}}
            """,
        ["screws"] = $$$"""
            format: shellforge/1
            name: Screws
            board:
              outline: {disc: 60}
              thickness: 1.6
              holes: [{circle: 52, count: 4, from: 45, diameter: 2.2}]
              pixels: {package: "2020", circle: 30, count: 8, from: 90}
            housing: {insert: m2x3-od3.6, cable: none, closure: screws}
            {{{Print}}}
            """,
        ["ring"] = $$$"""
            format: shellforge/1
            name: Ring
            board:
              outline: {ring: {outer: 90, bore: 45}}
              thickness: 1.6
              holes: [{circle: 54, count: 3, from: 45, diameter: 2.7}]
              pixels: {package: "2020", circle: 72, count: 16, from: 90}
              parts:
                - {ref: J1, package: usb-c-receptacle, side: bottom, faces: 270, past-edge: 1}
                - {ref: S1, package: switch-smd-3x4, side: bottom, polar: [36, 0]}
                - {ref: J2, package: wire-2.0-2p-side, side: bottom, polar: [36, 90], faces: 90}
            housing: {insert: m2.5x4-od4.6, cable: {part: J1}, closure: snap, light: {look: pixels}}
            power: {supply: usb-c-1.5A}
            {{{Print}}}
            """,
        ["grid"] = $$$"""
            format: shellforge/1
            name: Grid
            board:
              outline: {polygon: [[-40, -30], [40, -30], [40, 30], [-40, 30]]}
              thickness: 1.6
              holes: [{grid: {columns: 2, rows: 2, pitch: [70, 50]}, diameter: 2.2}]
              pixels: {package: "3535", grid: {columns: 4, rows: 3, pitch: 8}, ref: D1}
            housing: {insert: m2x3-od3.6, cable: none, closure: snap}
            {{{Print}}}
            """,
        ["arc"] = $$$"""
            format: shellforge/1
            name: Arc
            board:
              outline: {disc: 70}
              thickness: 1.6
              holes: [{circle: 60, count: 3, from: 45, step: 100, diameter: 2.2}]
              pixels: {package: "3535", circle: 40, count: 8, from: 20, step: 20}
            housing: {insert: m2x3-od3.6, cable: none, closure: snap}
            {{{Print}}}
            """,
        ["openings"] = $$$"""
            format: shellforge/1
            name: Openings
            board:
              outline: {disc: 70}
              thickness: 1.6
              holes: [{circle: 60, count: 3, from: 45, diameter: 2.2}]
              pixels: {package: "2020", circle: 30, count: 8, from: 90}
              parts:
                - {ref: S1, size: [8, 4, 3], side: bottom, polar: [32, 100]}
            housing:
              insert: m2x3-od3.6
              cable: none
              closure: snap
              openings:
                - {name: lever, wall: 10, height: 6, slot: [9, 3]}
                - {name: light, wall: 300, over-board: 3, diameter: 3}
                - {name: trim, floor: [0, -10], rectangle: [6, 4], corner: 1, turn: 20}
                - {name: sensor, front: [0, 0], diameter: 3}
            {{{Print}}}
            """,
        ["wall"] = $$$"""
            format: shellforge/1
            name: Wall
            board:
              outline: {disc: 60}
              thickness: 1.6
              holes: [{circle: 40, count: 4, from: 45, diameter: 2.2}]
              pixels: {package: 4020-side, circle: 54, count: 16, from: 90, facing: out}
            housing: {insert: m2x3-od3.6, cable: none, closure: snap, light: {through: wall}}
            {{{Print}}}
            """,
    };

    // One change a line, on a board where the key makes sense, or where a maker would write it all the same.
    private static readonly string[] Cases =
    [
        "parts | revision=D", "parts | up=0", "parts | board.measured.outer=69.6", "parts | board.measured.thickness=1.5",
        "parts | board.measured.tab-stub=0.9", "parts | board.measured.led-height=1.2",
        "parts | housing.measured={insert: {outer: 4.4}}", "parts | housing.measured={insert: {length: 4.3}}",
        "parts | housing.measured={plug: {width: 11}}", "parts | housing.measured={plug: {height: 7.3}}",
        "parts | housing.measured={plug: {corner-radius: 0.3}}",
        "parts | housing.measured={magnet: {diameter: 8.2}}", "magnets | housing.measured={magnet: {diameter: 8.2}}",
        "magnets | housing.measured={magnet: {height: 3.3}}",
        "parts | board.edge=clean", "disc | board.edge=v-scored", "disc | board.outline.disc=52", "disc | board.thickness=1.2",
        "ring | board.measured={bore: 45.6}", "ring | board.outline.ring.bore=44",
        "ring | board.outline.ring.outer=91",
        "octagon | board.outline={polygon: [[10, 0], [30, 0], [40, 10], [40, 32], [30, 42], [10, 42], [0, 32], [0, 10]]}",
        "disc | board.outline={arcs: [[-25, 0], [25, 0, 180], [-25, 0, 180]]}", "octagon | board.centre=[19, 20]",
        "parts | board.holes[0].circle=59", "parts | board.holes[0].count=6", "parts | board.holes[0].from=50",
        "parts | board.holes[0].direction=ccw", "parts | board.holes[0].skip=[3]", "parts | board.holes[0].for=tooling",
        "parts | board.holes[0].screw=m2.5-cap", "parts | board.holes[0].insert=m2.5x5.7-od4.6", "parts | board.holes[0].diameter=2.4",
        "parts | board.holes[1]={at: [20, 20], diameter: 2.7, for: mount}",
        "parts | board.pixels.package=\"3535\"", "parts | board.pixels.circle=36", "parts | board.pixels.count=12",
        "parts | board.pixels.from=60", "parts | board.pixels.direction=ccw", "parts | board.pixels.skip=[4]",
        "grid | board.pixels.grid.columns=5", "grid | board.pixels.grid.rows=4", "grid | board.pixels.grid.pitch=9",
        "grid | board.pixels.grid.at=[3, 0]", "grid | board.pixels.grid.turn=10", "grid | board.pixels.grid.skip=[1]",
        "grid | board.pixels.grid.first=bottom-right", "grid | board.pixels.grid.along=columns", "grid | board.pixels.grid.snake=true",
        "grid | board.holes[0].grid.pitch=[68, 48]", "arc | board.pixels.step=15", "arc | board.holes[0].step=110",
        "parts | board.pixels.rotation=45", "parts | board.pixels.turns=false", "parts | board.pixels.facing=out",
        "parts | board.pixels.with[0]={size: [1, 0.5], height: 6, at: [-2.6, 0]}",
        "disc | board.pixels={package: \"2020\", polar: [12, 90]}",
        "parts | board.parts[J1].package=micro-b-receptacle", "parts | board.parts[J1].side=top", "parts | board.parts[J1].faces=240",
        "parts | board.parts[J1].past-edge=0.2", "parts | board.parts[J1].port=closed", "parts | board.parts[J1].rotation=10",
        "parts | board.parts[U1].mounted=on-pins", "parts | board.parts[U1].lift=6", "parts | board.parts[C1].mounted=standing",
        "parts | board.parts[C1].polar=[20, 190]", "parts | board.parts[C2].size=[6.3, 6.3, 12]",
        "parts | board.parts[C2].height=14", "parts | board.parts[R1].circle=44", "parts | board.parts[R1].count=4",
        "parts | board.parts[R1].from=20", "parts | board.parts[R1].direction=cw",
        "parts | board.parts[R1].skip=[1]", "ring | board.parts[S1].port=open", "parts | board.wires[out].diameter=3.2",
        "parts | board.wires[out].conductors=8", "parts | board.parts[C1].joint-protrusion=4", "parts | board.wires[out].side=top",
        "parts | housing.insert=m2.5x5.7-od4.6", "parts | housing.screw=cap", "disc | housing.screw=countersunk",
        "disc | housing.washers=true", "parts | housing.walls=3", "parts | housing.floor=3",
        "parts | housing.edge=round", "disc | housing.edge=soft", "octagon | housing.edge=3 mm", "wall | housing.edge=round",
        "disc | housing.size={outer: 90}", "disc | housing.size={height: 24}", "octagon | housing.size={outer: 40, height: 8}",
        "parts | housing.clearance={board-edge: 1.2}", "parts | housing.clearance={below-parts: 3}", "ring | housing.cable=none",
        "ring | housing.cable.part=J2", "disc | housing.cable={round: 5, angle: 270, relief: tie}",
        "disc | housing.cable={round: 4, angle: 180, relief: tie}",
        "disc | housing.cable=[{name: in, round: 4, angle: 180}, {name: on, round: 4, angle: 0}]",
        "disc | housing.cable={round: 4, angle: 270, relief: knot}",
        "octagon | housing.cable.plug=[14, 5]", "octagon | housing.cable.angle=90",
        "octagon | housing.cable.relief=tie", "disc | housing.closure=screws", "disc | housing.closure=twist",
        "disc | housing.closure-screws=4", "screws | housing.closure-screws=3",
        "screws | housing.closure-screws=6", "ring | housing.bore=closed", "disc | housing.bore=closed", "disc | housing.bore=open",
        "disc | housing.light={look: pixels}", "disc | housing.light={window: 8}", "disc | housing.light={evenness: even}",
        "disc | housing.light={through: wall}", "wall | housing.light={through: wall, evenness: even}",
        "wall | housing.light={through: wall, window: 4}", "wall | housing.light={through: wall, look: pixels}",
        "wall | housing.diffuser={distance: 6}", "wall | housing.diffuser={thickness: 2}", "wall | housing.diffuser={sheet: 3}",
        "wall | housing.diffuser={fit: drop-in}", "octagon | housing.diffuser.sheet=2", "octagon | housing.light={window: 6}",
        "octagon | housing.light={window: 1}", "disc | housing.diffuser={sheet: 2}", "disc | housing.diffuser={fit: printed-in}",
        "disc | housing.diffuser={thickness: 1.2}", "disc | housing.diffuser={distance: 9}", "disc | housing.diffuser={distance: 1}",
        "disc | housing.baffle=joined", "ring | housing.baffle=joined", "wall | housing.baffle=joined",
        "disc | housing.hold=clamp", "disc | housing.hold=clips", "wall | housing.hold=clamp", "wall | housing.hold=clips",
        "parts | housing.vents=floor", "parts | housing.mount=none", "disc | housing.mount=stand", "disc | housing.mount=magnets",
        "disc | housing.mount=tripod", "disc | housing.mount=feet",
        "parts | housing.label.text=PORTS", "parts | housing.label.where=floor-inside", "parts | housing.label.height=4",
        "disc | housing.label={text: \"A very long name of a small disc\", height: 12}",
        "disc | housing.battery=aaa", "battery | housing.battery.cell=aa", "battery | housing.battery.count=2",
        "battery | housing.battery.at=[0, 8]", "battery | housing.battery.along=20", "battery | housing.battery.strap=tie",
        "battery | housing.battery={round: [14, 60]}", "pouch | housing.battery.flat=[5, 20, 40]",
        "pouch | housing.battery.grams=20",
        "battery | housing.measured={battery: {diameter: 14.1}}", "battery | housing.measured={battery: {length: 51}}",
        "pouch | housing.measured={battery: {thickness: 6.4}}", "pouch | housing.measured={battery: {width: 20.4}}",
        "disc | housing.second-board={size: [30, 20], above: 5}", "two boards | housing.second-board.size=[40, 24]",
        "two boards | housing.second-board.thickness=1", "two boards | housing.second-board.above=9",
        "two boards | housing.second-board.below=9", "two boards | housing.second-board.holes.diameter=2.9",
        "two boards | housing.second-board.holes.at=[[14, 9], [-14, -9]]", "two boards | housing.second-board.hold=clips",
        "two boards | housing.second-board.at=[0, -4]", "two boards | housing.second-board.turn=50",
        "stacked | housing.second-board.spacers=12",
        "stacked | board.holes[1].for=tooling", "stacked | board.holes[1].screw=m2-pan",
        "disc | housing.openings=[{name: air, wall: 20, slot: [8, 2]}]", "openings | housing.openings[lever].wall=14",
        "openings | housing.openings[lever].wall=S1", "openings | housing.openings[lever].height=7",
        "openings | housing.openings[lever].slot=[8, 3]", "openings | housing.openings[light].over-board=4",
        "openings | housing.openings[light].diameter=4", "openings | housing.openings[light].turn=30",
        "openings | housing.openings[trim].floor=[1, -10]", "openings | housing.openings[trim].rectangle=[6, 5]",
        "openings | housing.openings[trim].corner=0.5", "openings | housing.openings[trim].turn=40",
        "openings | housing.openings[sensor].front=[1, 0]", "openings | housing.openings[sensor].diameter=2",
        "parts | print.printer=fdm-0.6", "parts | print.shell=petg-white", "parts | print.diffuser=pla-white",
        "disc | print.baffle=petg-black", "wall | print.baffle=petg-white",
    ];

    // What no part's shape follows from, with the rule that looks at it.
    private static readonly string[] Rules =
    [
        "parts | board.pixels.with[0].at=[-1, 0] | parts-overlap", "parts | board.parts[C2].at=[2, 12] | parts-overlap",
        "parts | board.parts[C2]={ref: C2, size: [6, 6], height: unknown, at: [18, -8]} | unknown-height",
        "parts | board.parts[C2]={ref: C2, size: [6, 6], passive: true, at: [18, -8]} | unknown-height",
        "parts | board.parts[U1].watts=3 | plastic-too-warm", "parts | power.brightness=0.9 | supply-overloaded",
                "parts | power.capped=false | supply-overloaded", "parts | power.supply={volts: 5, amps: 1.5} | supply-overloaded",
        "parts | power.supply={volts: 12, amps: 2} | voltage-off", "parts | power.duty=0.2 | plastic-too-warm",
        "parts | use.ambient=50 | plastic-too-warm", "parts | use.orientation=table | plastic-too-warm",
        "parts | board.holes[0].keep-out={top: 3, bottom: 3} | head-against-part",
        "two boards | housing.second-board.mains=true | second-board-by-mains",
        "two boards | housing.second-board.watts=9 | plastic-too-warm",
        "stacked | housing.second-board.round=80 | part-against-housing",
        "heavy | housing.second-board.grams=900 | stand-tips",
        "battery | housing.battery.plug=J9 | battery-without-leads",
        "disc | accept=[{rule: missing-key, why: known}] | missing-key",
    ];

    public static TheoryData<string, string, string> Judged
    {
        get
        {
            var data = new TheoryData<string, string, string>();
            foreach (string[] parts in Rules.Select(line => line.Split(" | ")))
            {
                data.Add(parts[0], parts[1], parts[2]);
            }

            return data;
        }
    }

    // Keys whose value other tests follow: into names of files and findings, into drawings and the light of the board, or out of the file
    // that is read.
    private static readonly string[] Elsewhere =
    [
        "format", "name", "board.cutouts", "board.measured.batch", "board.measured.date",
        "housing.measured.batch", "housing.measured.date", "board.parts.ref", "board.pixels.ref", "board.pixels.with.ref",
        "board.wires.gauge", "use.air",
    ];
}
