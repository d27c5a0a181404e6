using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Forms;

/// <summary>The board as said.</summary>
internal sealed record BoardSaid(
    Said<OutlineSaid> Outline,
    Said<Point2> Centre,
    Said<double> Thickness,
    Said<EdgeFinish> Edge,
    Said<MeasuredSaid> Measured,
    Said<ImmutableArray<CutoutSaid>> Cutouts,
    Said<ImmutableArray<HoleSaid>> Holes,
    Said<ImmutableArray<PixelsSaid>> Pixels,
    Said<ImmutableArray<PartSaid>> Parts,
    Said<ImmutableArray<WireSaid>> Wires,
    MappingNode Node);

/// <summary>What calipers said of this batch.</summary>
internal sealed record MeasuredSaid(
    Said<double> Outer, Said<double> Bore, Said<double> Thickness, Said<double> TabStub, Said<string> Batch);

/// <summary>The mapping at `board:`.</summary>
internal static class BoardForm
{
    private static readonly Kind<double> Thickness = BoardKinds.Length("a board's thickness", 0.2, 6);

    private static readonly Form<MeasuredSaid> Measured = new("measured sizes", keys =>
    {
        FormKey<double> outer = keys.Optional("outer", BoardKinds.Length("an outer diameter", 8, BoardKinds.LargestBoard), "Outer diameter of a disc or ring.");
        FormKey<double> bore = keys.Optional("bore", BoardKinds.Length("a bore diameter", 1, BoardKinds.LargestBoard), "Bore of a ring.");
        FormKey<double> thickness = keys.Optional("thickness", Thickness, "Thickness.");
        FormKey<double> stub = keys.Optional("tab-stub", BoardKinds.Length("a stub's length", 0, 5), "Longest stub left by break-off tabs.");
        FormKey<string> batch = keys.Optional("batch", BoardKinds.Name, "Which batch was measured.");
        return values => new MeasuredSaid(
            values.Said(outer), values.Said(bore), values.Said(thickness), values.Said(stub), values.Said(batch));
    }, buildsIncomplete: true);

    /// <summary>The mapping.</summary>
    public static Form<BoardSaid> Form { get; } = new("the board", keys =>
    {
        FormKey<OutlineSaid> outline = keys.Required("outline", OutlineForm.Form, "The edge: disc, ring, polygon or arcs.");
        FormKey<Point2> centre = keys.Optional("centre", BoardKinds.Point, "ECAD coordinates of the board's centre.", "[0, 0]; for polygons and arcs the middle of the outline's box");
        FormKey<double> thickness = keys.Required("thickness", Thickness, "Laminate thickness.");
        FormKey<EdgeFinish> edge = keys.Optional(
            "edge", new WordKind<EdgeFinish>(("clean", EdgeFinish.Clean), ("tabs", EdgeFinish.Tabs), ("v-scored", EdgeFinish.VScored)), "How the edge was made.", "clean");
        FormKey<MeasuredSaid> measured = keys.Optional("measured", Measured, "Measured sizes of this batch; they override the nominal ones.");
        FormKey<ImmutableArray<CutoutSaid>> cutouts = keys.Optional("cutouts", List("cutouts", OutlineForm.Cutout), "Cutouts and edge notches.");
        FormKey<ImmutableArray<HoleSaid>> holes = keys.Optional("holes", List("holes", HoleForm.Form), "Holes and patterns of holes.");
        FormKey<ImmutableArray<PixelsSaid>> pixels = keys.Required("pixels", PixelForm.Kind, "The LEDs: a circle, or a list of circles and single ones.");
        FormKey<ImmutableArray<PartSaid>> parts = keys.Optional("parts", List("parts", PartForm.Form), "Everything else that stands up from the board.");
        FormKey<ImmutableArray<WireSaid>> wires = keys.Optional("wires", List("wires", WireForm.Form), "Soldered leads.");
        return values => new BoardSaid(
            values.Said(outline),
            values.Said(centre),
            values.Said(thickness),
            values.Said(edge),
            values.Said(measured),
            values.Said(cutouts),
            values.Said(holes),
            values.Said(pixels),
            values.Said(parts),
            values.Said(wires),
            values.Node);
    }, buildsIncomplete: true);

    private static ListKind<T> List<T>(string what, Kind<T> item) => new($"a list of {what}", item, 0, BoardKinds.Most);
}
