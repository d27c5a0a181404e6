using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Forms;

/// <summary>LEDs as said.</summary>
internal sealed record ParsedPixels(
    ParsedPlacement Place,
    Parsed<LedProfile> Package,
    Parsed<string> Ref,
    Parsed<PixelFacing> Facing,
    Parsed<Angle> Rotation,
    Parsed<bool> Turns,
    Parsed<ImmutableArray<ParsedCompanion>> With,
    MappingNode Node);

/// <summary>A part beside every LED, as said.</summary>
internal sealed record ParsedCompanion(
    Parsed<string> Ref,
    Parsed<PackageProfile> Package,
    Parsed<ImmutableArray<double>> Size,
    Parsed<double?> Height,
    Parsed<Point2> At,
    Parsed<Angle> Rotation,
    Parsed<BoardSide> Side,
    MappingNode Node);

/// <summary>An entry of `pixels:`.</summary>
internal static class PixelForm
{
    private static readonly Form<ParsedCompanion> Companion = new("a part beside each LED", keys =>
    {
        FormKey<string> name = keys.Optional("ref", BoardKinds.Name, "Designator of the first one.", "C1, counted on");
        FormKey<PackageProfile> package = keys.Optional("package", new ProfileKind<PackageProfile>("a package", l => l.Packages),
            "Package.");
        FormKey<ImmutableArray<double>> size = keys.Optional("size", PartForm.Size,
            "Body [along x, along y, height] instead of a package.");
        FormKey<double?> height = keys.Optional("height", PartForm.Height, "Top of the body above the board.", "the package's");
        FormKey<Point2> at = keys.Required(
            "at", BoardKinds.Point,
            "From the LED's middle: x away from the board's centre, y counter-clockwise; in a grid along its rows; with `turns: "
                + "false` along the board's axes.");
        FormKey<Angle> rotation = keys.Defaulted("rotation", BoardKinds.Angle, "Turn, in the same frame.", "0");
        FormKey<BoardSide> side = keys.Defaulted("side", BoardKinds.Side, "Side it sits on.", "top");
        keys.ExactlyOneOf(package, size);
        return values => new ParsedCompanion(
            values.Get(name),
            values.Get(package),
            values.Get(size),
            values.Get(height),
            values.Get(at),
            values.Get(rotation),
            values.Get(side),
            values.Node);
    }, buildsIncomplete: true);

    private static readonly Kind<ImmutableArray<ParsedCompanion>> Companions = new ChoiceKind<ImmutableArray<ParsedCompanion>>(
        new ListKind<ParsedCompanion>("parts beside each LED", Companion, 1, 8),
        new MappedKind<ParsedCompanion, ImmutableArray<ParsedCompanion>>(Companion, one => [one]));

    private static readonly Form<ParsedPixels> Single = new("LEDs", keys =>
    {
        var place = new PlacementKeys(keys, needed: true);
        FormKey<LedProfile> package = keys.Required("package", new ProfileKind<LedProfile>("an LED package", l => l.Leds), "LED package.");
        FormKey<string> name = keys.Optional("ref", BoardKinds.Name, "Designator of the first LED; the others count on.",
            "D1, or the next free number");
        FormKey<PixelFacing> facing = keys.Optional(
            "facing", new WordKind<PixelFacing>(("up", PixelFacing.Up), ("out", PixelFacing.Out), ("in", PixelFacing.In)),
            "Where they look.", "up");
        FormKey<Angle> rotation = keys.Defaulted("rotation", BoardKinds.Angle,
            "Turn of the package, beyond the circle's or the grid's when it turns.", "0");
        FormKey<bool> turns = keys.Defaulted(
            "turns", BoardKinds.Flag, "Whether each package turns with its place on the circle, or with the grid.", "true");
        FormKey<ImmutableArray<ParsedCompanion>> with = keys.Optional("with", Companions,
            "A part beside each LED, such as its capacitor, or several.");
        return values => new ParsedPixels(
            place.Said(values),
            values.Get(package),
            values.Get(name),
            values.Get(facing),
            values.Get(rotation),
            values.Get(turns),
            values.Get(with),
            values.Node);
    }, buildsIncomplete: true);

    /// <summary>One mapping, or a list of them.</summary>
    public static Kind<ImmutableArray<ParsedPixels>> Kind { get; } = new ChoiceKind<ImmutableArray<ParsedPixels>>(
        new ListKind<ParsedPixels>("circles and grids of LEDs and single ones", Single, 0, BoardKinds.Most),
        new MappedKind<ParsedPixels, ImmutableArray<ParsedPixels>>(Single, one => [one]));
}
