using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Forms;

/// <summary>LEDs as said.</summary>
internal sealed record PixelsSaid(
    PlacementSaid Place,
    Said<LedProfile> Package,
    Said<string> Ref,
    Said<PixelFacing> Facing,
    Said<Angle> Rotation,
    Said<bool> Turns,
    Said<ImmutableArray<CompanionSaid>> With,
    MappingNode Node);

/// <summary>A part beside every LED, as said.</summary>
internal sealed record CompanionSaid(
    Said<string> Ref,
    Said<PackageProfile> Package,
    Said<ImmutableArray<double>> Size,
    Said<double?> Height,
    Said<Point2> At,
    Said<Angle> Rotation,
    Said<BoardSide> Side,
    MappingNode Node);

/// <summary>An entry of `pixels:`.</summary>
internal static class PixelForm
{
    private static readonly Form<CompanionSaid> Companion = new("a part beside each LED", keys =>
    {
        FormKey<string> name = keys.Optional("ref", BoardKinds.Name, "Designator of the first one.", "C1, counted on");
        FormKey<PackageProfile> package = keys.Optional("package", new ProfileKind<PackageProfile>("a package", l => l.Packages), "Package.");
        FormKey<ImmutableArray<double>> size = keys.Optional("size", PartForm.Size, "Body [along x, along y, height] instead of a package.");
        FormKey<double?> height = keys.Optional("height", PartForm.Height, "Top of the body above the board.", "the package's");
        FormKey<Point2> at = keys.Required(
            "at", BoardKinds.Point, "From the LED's middle: x away from the board's centre, y counter-clockwise; with `turns: false` along the board's axes.");
        FormKey<Angle> rotation = keys.Optional("rotation", BoardKinds.Angle, "Turn, in the same frame.", "0");
        FormKey<BoardSide> side = keys.Optional("side", BoardKinds.Side, "Side it sits on.", "top");
        keys.ExactlyOneOf(package, size);
        return values => new CompanionSaid(
            values.Said(name),
            values.Said(package),
            values.Said(size),
            values.Said(height),
            values.Said(at),
            values.Said(rotation),
            values.Said(side),
            values.Node);
    }, buildsIncomplete: true);

    private static readonly Kind<ImmutableArray<CompanionSaid>> Companions = new ChoiceKind<ImmutableArray<CompanionSaid>>(
        new ListKind<CompanionSaid>("parts beside each LED", Companion, 1, 8),
        new MappedKind<CompanionSaid, ImmutableArray<CompanionSaid>>(Companion, one => [one]));

    private static readonly Form<PixelsSaid> Single = new("LEDs", keys =>
    {
        var place = new PlacementKeys(keys, needed: true);
        FormKey<LedProfile> package = keys.Required("package", new ProfileKind<LedProfile>("an LED package", l => l.Leds), "LED package.");
        FormKey<string> name = keys.Optional("ref", BoardKinds.Name, "Designator of the first LED; the others count on.", "D1, or the next free number");
        FormKey<PixelFacing> facing = keys.Optional(
            "facing", new WordKind<PixelFacing>(("up", PixelFacing.Up), ("out", PixelFacing.Out), ("in", PixelFacing.In)), "Where they look.", "up");
        FormKey<Angle> rotation = keys.Optional("rotation", BoardKinds.Angle, "Turn of the package, beyond the circle's when it turns.", "0");
        FormKey<bool> turns = keys.Optional("turns", BoardKinds.Flag, "Whether each package turns with its place on the circle.", "true");
        FormKey<ImmutableArray<CompanionSaid>> with = keys.Optional("with", Companions, "A part beside each LED, such as its capacitor, or several.");
        return values => new PixelsSaid(
            place.Said(values),
            values.Said(package),
            values.Said(name),
            values.Said(facing),
            values.Said(rotation),
            values.Said(turns),
            values.Said(with),
            values.Node);
    }, buildsIncomplete: true);

    /// <summary>One mapping, or a list of them.</summary>
    public static Kind<ImmutableArray<PixelsSaid>> Kind { get; } = new ChoiceKind<ImmutableArray<PixelsSaid>>(
        new ListKind<PixelsSaid>("circles of LEDs and single ones", Single, 0, BoardKinds.Most),
        new MappedKind<PixelsSaid, ImmutableArray<PixelsSaid>>(Single, one => [one]));
}
