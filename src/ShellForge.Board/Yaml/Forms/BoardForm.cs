using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Forms;

/// <summary>The board as said.</summary>
internal sealed record ParsedBoard(
    Parsed<ParsedOutline> Outline,
    Parsed<Point2> Centre,
    Parsed<double> Thickness,
    Parsed<EdgeFinish> Edge,
    Parsed<ParsedMeasured> Measured,
    Parsed<ImmutableArray<ParsedCutout>> Cutouts,
    Parsed<ImmutableArray<ParsedHole>> Holes,
    Parsed<ImmutableArray<ParsedPixels>> Pixels,
    Parsed<ImmutableArray<ParsedPart>> Parts,
    Parsed<ImmutableArray<ParsedWire>> Wires,
    MappingNode Node);

/// <summary>The mapping at `board:`.</summary>
internal static class BoardForm
{
    /// <summary>The mapping.</summary>
    public static Form<ParsedBoard> Form { get; } = new("the board", keys =>
    {
        FormKey<ParsedOutline> outline = keys.Required("outline", OutlineForm.Form, "The edge: disc, ring, polygon or arcs.");
        FormKey<Point2> centre = keys.Optional("centre", BoardKinds.Point, "ECAD coordinates of the board's centre.",
            "[0, 0]; for polygons and arcs the middle of the outline's box");
        FormKey<double> thickness = keys.Required("thickness", BoardKinds.Thickness, "Laminate thickness.");
        FormKey<EdgeFinish> edge = keys.Defaulted(
            "edge", new WordKind<EdgeFinish>(("clean", EdgeFinish.Clean), ("tabs", EdgeFinish.Tabs), ("v-scored", EdgeFinish.VScored)),
            "How the edge was made.", "clean");
        FormKey<ParsedMeasured> measured = keys.Optional("measured", MeasuredForm.Board,
            "Measured sizes of this batch; they override the nominal ones.");
        FormKey<ImmutableArray<ParsedCutout>> cutouts = keys.Optional("cutouts", List("cutouts", OutlineForm.Cutout),
            "Cutouts and edge notches.");
        FormKey<ImmutableArray<ParsedHole>> holes = keys.Optional("holes", List("holes", HoleForm.Form), "Holes and patterns of holes.");
        FormKey<ImmutableArray<ParsedPixels>> pixels = keys.Required("pixels", PixelForm.Kind,
            "The LEDs: a circle, an arc or a grid, or a list of them and of single ones.");
        FormKey<ImmutableArray<ParsedPart>> parts = keys.Optional("parts", List("parts", PartForm.Form),
            "Everything else that stands up from the board.");
        FormKey<ImmutableArray<ParsedWire>> wires = keys.Optional("wires", List("wires", WireForm.Form), "Soldered leads.");
        return values => new ParsedBoard(
            values.Get(outline),
            values.Get(centre),
            values.Get(thickness),
            values.Get(edge),
            values.Get(measured),
            values.Get(cutouts),
            values.Get(holes),
            values.Get(pixels),
            values.Get(parts),
            values.Get(wires),
            values.Node);
    }, buildsIncomplete: true);

    private static ListKind<T> List<T>(string what, Kind<T> item) => new($"a list of {what}", item, 0, BoardKinds.Most);
}
