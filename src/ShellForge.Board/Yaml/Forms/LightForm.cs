using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.Forms;

/// <summary>Light as said.</summary>
internal sealed record ParsedLight(
    Parsed<LightThrough> Through, Parsed<LightLook> Look, Parsed<ParsedWindow> Window, Parsed<ParsedEvenness> Evenness);

/// <summary>The lit window as said: a width, a shape, or an outline of its own.</summary>
internal sealed record ParsedWindow(WindowShape Shape, double? Width, ImmutableArray<OutlineCorner> Corners);

/// <summary>Evenness as a word with the number it stands for.</summary>
internal readonly record struct ParsedEvenness(string Word, double MinimumOverMean)
{
    /// <summary>
    /// Smallest over mean irradiance. Even meets both of the trade's measures: min/mean of 0.8 and a Michelson contrast of 0.10,
    /// which is min/mean of 0.9 on a row of LEDs. Soft is min/mean of 0.6. Dots is what a row shows at a third of its pitch.
    /// Source: sum over a row of cosine emitters; typical targets.
    /// </summary>
    public static ParsedEvenness Even { get; } = new("even", 0.9);

    /// <summary>See <see cref="Even"/>.</summary>
    public static ParsedEvenness Soft { get; } = new("soft", 0.6);

    /// <summary>See <see cref="Even"/>.</summary>
    public static ParsedEvenness Dots { get; } = new("dots", 0.35);
}

/// <summary>The mappings at `light:`, `diffuser:` and `label:`.</summary>
internal static class LightForm
{
    private static readonly Kind<ParsedEvenness> Evenness = new ChoiceKind<ParsedEvenness>(
        new WordKind<ParsedEvenness>(("even", ParsedEvenness.Even), ("soft", ParsedEvenness.Soft), ("dots", ParsedEvenness.Dots)),
        new MappedKind<double, ParsedEvenness>(
            new NumberKind("smallest over mean irradiance", 0.05, 0.99), n => new ParsedEvenness(NumberText.Written(n), n)));

    private static readonly Kind<ParsedWindow> Window = new ChoiceKind<ParsedWindow>(
        new WordKind<ParsedWindow>(
            ("auto", new ParsedWindow(WindowShape.Auto, null, [])), ("follow", new ParsedWindow(WindowShape.Follow, null, [])),
            ("disc", new ParsedWindow(WindowShape.Disc, null, [])), ("ring", new ParsedWindow(WindowShape.Ring, null, []))),
        new MappedKind<double, ParsedWindow>(new LengthKind("a window's width", 1, 200),
            width => new ParsedWindow(WindowShape.Auto, width, [])),
        new Form<ParsedWindow>("the window", keys =>
        {
            FormKey<ImmutableArray<OutlineCorner>> polygon = keys.Required("polygon", OutlineForm.Polygon,
                "Corners [x, y] in order, in the board's coordinates.");
            return values => new ParsedWindow(WindowShape.Outline, null, values.Get(polygon).Or([]));
        }));

    /// <summary>Light.</summary>
    public static Form<ParsedLight> Form { get; } = new("the light", keys =>
    {
        FormKey<LightThrough> through = keys.Defaulted("through",
            new WordKind<LightThrough>(("front", LightThrough.Front), ("wall", LightThrough.Wall)), "Where it leaves.", "front");
        FormKey<LightLook> look = keys.Defaulted("look", new WordKind<LightLook>(("blend", LightLook.Blend), ("pixels", LightLook.Pixels)),
            "One band of light, or a cell for each LED.", "blend");
        FormKey<ParsedWindow> window = keys.Optional(
            "window", Window,
            "The lit window: its width along the LEDs; follow (what the LEDs light), disc or ring (about the board's middle); or a "
                + "polygon.",
            "auto: half a pitch to each side of the LEDs, as a ring or disc where they lie on circles about the middle");
        FormKey<ParsedEvenness> evenness = keys.Defaulted("evenness", Evenness,
            "even, soft, dots, or smallest over mean irradiance along the circle.", "soft");
        return values => new ParsedLight(values.Get(through), values.Get(look), values.Get(window), values.Get(evenness));
    }, buildsIncomplete: true);

    /// <summary>The wish, but for a window's own outline, which lies in the board's coordinates.</summary>
    public static LightSpec SpecOf(ParsedLight said)
    {
        ParsedWindow? window = said.Window.Given ? said.Window.Value : null;
        return new LightSpec(
            said.Through.Value, said.Look.Value, window?.Width, said.Evenness.Value.MinimumOverMean, said.Evenness.Value.Word)
        {
            Shape = window?.Shape ?? WindowShape.Auto,
        };
    }

    /// <summary>Diffuser.</summary>
    public static Form<DiffuserSpec> Diffuser { get; } = new("the diffuser", keys =>
    {
        FormKey<double?> thickness = keys.Optional("thickness", BoardKinds.LengthOrAuto("a thickness", 0.2, 6),
            "Thickness of a printed one.", "auto: by filament");
        FormKey<double> sheet = keys.Optional("sheet", BoardKinds.Length("a sheet's thickness", 0.2, 10),
            "Thickness of a cut sheet that is dropped in.");
        FormKey<double?> distance = keys.Optional("distance", BoardKinds.LengthOrAuto("a distance", 0.5, 100),
            "From the LED's window to the diffuser's inner face.", "auto: from evenness and pitch");
        FormKey<DiffuserWish> fit =
            keys.Optional("fit", new WordKind<DiffuserWish>(("printed-in", DiffuserWish.PrintedIn), ("drop-in", DiffuserWish.DropIn)),
                "How a printed one is held.",
                "printed in where both plastics are of one family and the printer changes filaments, else a drop-in");
        keys.AtMostOneOf(thickness, sheet);
        keys.AtMostOneOf(fit, sheet);
        return values => new DiffuserSpec
        {
            Fit = values.Get(fit).Given ? values.Get(fit).Value : null,
            Thickness = values.Get(thickness).Or(null),
            Sheet = values.Get(sheet).Given ? values.Get(sheet).Value : null,
            Distance = values.Get(distance).Or(null),
        };
    });

    /// <summary>Lettering.</summary>
    public static Form<LabelSpec> Label { get; } = new("the label", keys =>
    {
        FormKey<string> text = keys.Required("text", new TextKind("lettering", 60, asciiOnly: true), "The lettering.");
        FormKey<LabelPlace> where =
            keys.Defaulted("where",
                new WordKind<LabelPlace>(("floor-outside", LabelPlace.FloorOutside), ("floor-inside", LabelPlace.FloorInside)),
                "Where it goes.", "floor-outside");
        FormKey<double> height = keys.Optional("height", BoardKinds.Length("a letter height", 2, 60), "Letter height.", "5");
        return values => new LabelSpec(
            values.Get(text).Value,
            values.Get(where).Value,
            values.Get(height).Given ? values.Get(height).Value : null);
    });
}
