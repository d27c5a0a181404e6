using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.Forms;

/// <summary>
/// The housing as said: first the wishes that stand for themselves, then what needs the board, the profiles or another key to be
/// understood, which the resolver puts in.
/// </summary>
internal sealed record ParsedHousing(
    HousingSpec Wishes,
    Parsed<InsertProfile> Insert,
    Parsed<ParsedScrew> Screw,
    Parsed<SizeWish> Size,
    Parsed<ParsedClearance> Clearance,
    Parsed<ImmutableArray<ParsedCable>> Cable,
    Parsed<ClosureKind> Closure,
    Parsed<int> ClosureScrews,
    Parsed<bool> BoreOpen,
    Parsed<ParsedLight> Light,
    Parsed<ImmutableArray<ParsedOpening>> Openings,
    Parsed<ParsedBattery> Battery,
    Parsed<ParsedSecondBoard> SecondBoard,
    Parsed<ParsedMeasuredThings> Measured,
    MappingNode Node);

/// <summary>A wall as lines of plastic or as a thickness.</summary>
internal readonly record struct ParsedWall(int? Lines, double? Thickness);

/// <summary>Clearances as said.</summary>
internal readonly record struct ParsedClearance(double? BoardEdge, double? BelowParts);

/// <summary>The mapping at `housing:`.</summary>
internal static class HousingForm
{
    private static readonly Kind<ParsedWall> Walls = new ChoiceKind<ParsedWall>(
        new MappedKind<int, ParsedWall>(new CountKind("a count of lines", 1, 20), lines => new ParsedWall(lines, null)),
        new MappedKind<double, ParsedWall>(BoardKinds.Length("a thickness such as 1.6 or 2.0", 0.4, 12), t => new ParsedWall(null, t)));

    // A radius below the least would be no more than the chamfer that is there without it.
    private static readonly Kind<EdgeWish> Edge = new ChoiceKind<EdgeWish>(
        new WordKind<EdgeWish>(("chamfer", EdgeWish.Chamfer), ("round", new EdgeWish(EdgeForm.Round, null)),
            ("soft", new EdgeWish(EdgeForm.Soft, null))),
        new MappedKind<double, EdgeWish>(BoardKinds.Length("a radius", 0.8, 20), radius => new EdgeWish(EdgeForm.Round, radius)));

    private static readonly Form<SizeWish> Size = new("the size from outside", keys =>
    {
        FormKey<double> outer = keys.Optional("outer", BoardKinds.Length("an outer size", 10, 400),
            "Diameter over the outer walls, or the longer side of a housing that is not round; the gap round the board takes what is left.",
            "as the board needs it");
        FormKey<double> height = keys.Optional("height", BoardKinds.Length("a height", 4, 200),
            "From the outer floor to the front, in whole layers; room under the board takes what is left, and the diffuser comes nearer "
                + "where there is too little.", "as what stands in it needs it");
        return values => new SizeWish(
            values.Get(outer) is { Given: true } o ? o.Value : null, values.Get(height) is { Given: true } h ? h.Value : null);
    });

    private static readonly Form<ParsedClearance> Clearance = new("the clearances", keys =>
    {
        FormKey<double?> edge = keys.Optional("board-edge", BoardKinds.LengthOrAuto("a gap", 0.1, 10),
            "Gap between the board's edge and the wall.", "auto");
        FormKey<double?> below = keys.Optional("below-parts", BoardKinds.LengthOrAuto("a gap", 0.1, 50),
            "Gap between the tallest bottom part and the floor.", "auto");
        return values => new ParsedClearance(values.Get(edge).Or(null), values.Get(below).Or(null));
    });

    /// <summary>The mapping.</summary>
    public static Form<ParsedHousing> Form { get; } = new("the housing", keys =>
    {
        FormKey<InsertProfile> insert = keys.Optional(
            "insert", new ProfileKind<InsertProfile>("an insert", l => l.Inserts),
            "The insert in the drawer, by its body; not needed without mounting holes, closure screws and a clamp ring.", "none");
        FormKey<ParsedScrew> screw = keys.Optional("screw", ScrewWordKind.Kind,
            "The screw that goes into it: a profile, or pan, cap, button or countersunk, whose thread is the insert's.", "pan");
        FormKey<bool> washers = keys.Defaulted("washers", BoardKinds.Flag, "Washers under the board screws' heads.", "false");
        FormKey<ParsedWall> walls = keys.Optional("walls", Walls,
            "Wall: a whole number of lines of plastic, or a thickness such as 1.6, 2.0 or 2 mm.", "the plan decides");
        FormKey<double> floor = keys.Optional("floor", BoardKinds.Length("a floor's thickness", 0.4, 20), "Floor.", "the plan decides");
        FormKey<SizeWish> size = keys.Optional("size", Size, "How large the housing shall be from outside.", "as board and parts need it");
        FormKey<EdgeWish> edge = keys.Defaulted("edge", Edge,
            "Outer edges at the front and round the floor: chamfer, round (2 mm where there is room), soft (as round as walls and what "
                + "lies near allow), or a radius such as 3 mm.", "chamfer");
        FormKey<ParsedClearance> clearance = keys.Optional("clearance", Clearance, "Gaps round the board.");
        FormKey<ImmutableArray<ParsedCable>> cable = keys.Optional("cable", CableForm.Kind,
            "How cables come in: a connector, a round cable, none, or a list of several, of which the first brings the power.",
            "the only connector that takes a plug, else none");
        FormKey<ClosureKind> closure = keys.Optional(
            "closure",
            new WordKind<ClosureKind>(("snap", ClosureKind.Snap), ("screws", ClosureKind.Screws), ("twist", ClosureKind.Twist),
                ("glue", ClosureKind.Glue)), "How cover and tub hold together.",
            "snap; where that does not hold, another closure that does");
        FormKey<HoldKind> hold = keys.Defaulted(
            "hold",
            new WordKind<HoldKind>(("auto", HoldKind.Auto), ("clamp", HoldKind.Clamp), ("clips", HoldKind.Clips)),
            "What keeps the board in the tub beside screws through its holes: clamp (a printed ring over its rim, screwed to the tub), "
                + "clips (posts that it snaps under), or auto (what the closed cover gives, else one of the two).", "auto");
        FormKey<int> closureScrews = keys.Optional("closure-screws", new CountKind("a number of screws", 2, 24), "Closure screws.",
            "by circumference");
        FormKey<bool> bore = keys.Optional("bore", new WordKind<bool>(("open", true), ("closed", false)),
            "Whether a ring's bore stays open.", "open");
        FormKey<ParsedLight> light = keys.Defaulted("light", LightForm.Form, "Where the light leaves and what the eye should see.");
        FormKey<DiffuserSpec> diffuser = keys.Optional("diffuser", LightForm.Diffuser, "What scatters the light.", "the plan decides");
        FormKey<bool> baffle = keys.Defaulted("baffle", new WordKind<bool>(("loose", false), ("joined", true)),
            "Light baffle as a part of its own, or joined to the cover.", "loose");
        FormKey<VentKind> vents = keys.Defaulted(
            "vents", new WordKind<VentKind>(("auto", VentKind.Auto), ("none", VentKind.None), ("floor", VentKind.Floor)), "Vents.", "auto");
        FormKey<MountKind> mount = keys.Defaulted(
            "mount",
            new WordKind<MountKind>(
                [.. Enum.GetValues<MountKind>().Select(kind => (kind.ToString().ToLower(CultureInfo.InvariantCulture), kind))]),
            "How it is hung or stood.",
            "none");
        FormKey<LabelSpec> label = keys.Optional("label", LightForm.Label, "Lettering.", "none");
        FormKey<ImmutableArray<ParsedOpening>> openings = keys.Optional(
            "openings", new ListKind<ParsedOpening>("a list of openings", OwnOpeningEntry.Form, 0, BoardKinds.Most),
            "Holes and slots of your own: for a sensor, a microphone, a lever, a screwdriver, air.", "none");
        FormKey<ParsedBattery> battery = keys.Optional("battery", BatteryEntry.Kind,
            "A cell or pouch inside, under the board: its bay with a strap is found by the plan.", "none");
        FormKey<ParsedSecondBoard> secondBoard = keys.Optional("second-board", SecondBoardEntry.Form,
            "A second board inside, such as a controller or a driver: loose on the tub's floor, or on spacers behind the LED board.",
            "none");
        FormKey<ParsedMeasuredThings> measured = keys.Optional("measured", MeasuredForm.Things,
            "Measured sizes of this batch's insert, magnets, plug and battery; they override the nominal ones.");
        return values =>
        {
            ParsedWall? wall = values.Get(walls) is { Given: true } w ? w.Value : null;
            ParsedClearance? gaps = values.Get(clearance) is { Given: true } c ? c.Value : null;
            var wishes = new HousingSpec
            {
                Washers = values.Get(washers).Value,
                WallLines = wall?.Lines,
                WallThickness = wall?.Thickness,
                Floor = values.Get(floor).OrNull(),
                Size = values.Get(size).Or(SizeWish.Free),
                Edge = values.Get(edge).Value,
                BoardEdgeClearance = gaps?.BoardEdge,
                BelowPartsClearance = gaps?.BelowParts,
                Closure = values.Get(closure).Or(ClosureKind.Snap),
                Hold = values.Get(hold).Value,
                ClosureScrews = values.Get(closureScrews).OrNull(),
                BoreOpen = values.Get(bore).OrNull(),
                Light = LightForm.SpecOf(values.Get(light).Value),
                Diffuser = values.Get(diffuser).Or(new DiffuserSpec()),
                BaffleJoined = values.Get(baffle).Value,
                Vents = values.Get(vents).Value,
                Mount = values.Get(mount).Value,
                Label = values.Get(label) is { Given: true } lettering ? lettering.Value : null,
            };
            return new ParsedHousing(
                wishes,
                values.Get(insert),
                values.Get(screw),
                values.Get(size),
                values.Get(clearance),
                values.Get(cable),
                values.Get(closure),
                values.Get(closureScrews),
                values.Get(bore),
                values.Get(light),
                values.Get(openings),
                values.Get(battery),
                values.Get(secondBoard),
                values.Get(measured),
                values.Node);
        };
    }, buildsIncomplete: true);
}
