using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.Forms;

/// <summary>The housing as said.</summary>
internal sealed record HousingSaid(
    Said<InsertProfile> Insert,
    Said<ScrewSaid> Screw,
    Said<bool> Washers,
    Said<WallSaid> Walls,
    Said<double> Floor,
    Said<ClearanceSaid> Clearance,
    Said<CableSaid> Cable,
    Said<ClosureKind> Closure,
    Said<int> ClosureScrews,
    Said<bool> BoreOpen,
    Said<LightSaid> Light,
    Said<DiffuserSpec> Diffuser,
    Said<bool> BaffleJoined,
    Said<VentKind> Vents,
    Said<MountKind> Mount,
    Said<LabelSpec> Label,
    MappingNode Node);

/// <summary>A wall as lines of plastic or as a thickness.</summary>
internal readonly record struct WallSaid(int? Lines, double? Thickness);

/// <summary>Clearances as said.</summary>
internal readonly record struct ClearanceSaid(double? BoardEdge, double? BelowParts);

/// <summary>The mapping at `housing:`.</summary>
internal static class HousingForm
{
    private static readonly Kind<WallSaid> Walls = new ChoiceKind<WallSaid>(
        new MappedKind<int, WallSaid>(new CountKind("a count of lines", 1, 20), lines => new WallSaid(lines, null)),
        new MappedKind<double, WallSaid>(BoardKinds.Length("a thickness such as 1.6 or 2.0", 0.4, 12), t => new WallSaid(null, t)));

    private static readonly Form<ClearanceSaid> Clearance = new("the clearances", keys =>
    {
        FormKey<double?> edge = keys.Optional("board-edge", BoardKinds.LengthOrAuto("a gap", 0.1, 10), "Gap between the board's edge and the wall.", "auto");
        FormKey<double?> below = keys.Optional("below-parts", BoardKinds.LengthOrAuto("a gap", 0.1, 50), "Gap between the tallest bottom part and the floor.", "auto");
        return values => new ClearanceSaid(values.Said(edge).Or(null), values.Said(below).Or(null));
    });

    /// <summary>The mapping.</summary>
    public static Form<HousingSaid> Form { get; } = new("the housing", keys =>
    {
        FormKey<InsertProfile> insert = keys.Optional(
            "insert", new ProfileKind<InsertProfile>("an insert", l => l.Inserts), "The insert in the drawer, by its body; not needed without mounting holes and closure screws.", "none");
        FormKey<ScrewSaid> screw = keys.Optional("screw", ScrewSaidKind.Kind, "The screw that goes into it: a profile, or pan, cap, button or countersunk, whose thread is the insert's.", "pan");
        FormKey<bool> washers = keys.Optional("washers", BoardKinds.Flag, "Washers under the board screws' heads.", "false");
        FormKey<WallSaid> walls = keys.Optional("walls", Walls, "Wall: a whole number of lines of plastic, or a thickness such as 1.6, 2.0 or 2 mm.", "the plan decides");
        FormKey<double> floor = keys.Optional("floor", BoardKinds.Length("a floor's thickness", 0.4, 20), "Floor.", "the plan decides");
        FormKey<ClearanceSaid> clearance = keys.Optional("clearance", Clearance, "Gaps round the board.");
        FormKey<CableSaid> cable = keys.Optional("cable", CableForm.Kind, "How power comes in: a connector, a round cable, or none.", "the only connector that takes a plug, else none");
        FormKey<ClosureKind> closure = keys.Optional(
            "closure", new WordKind<ClosureKind>(("snap", ClosureKind.Snap), ("screws", ClosureKind.Screws), ("twist", ClosureKind.Twist), ("glue", ClosureKind.Glue)), "How cover and tub hold together.", "snap");
        FormKey<int> closureScrews = keys.Optional("closure-screws", new CountKind("a number of screws", 2, 24), "Closure screws.", "by circumference");
        FormKey<bool> bore = keys.Optional("bore", new WordKind<bool>(("open", true), ("closed", false)), "Whether a ring's bore stays open.", "open");
        FormKey<LightSaid> light = keys.Optional("light", LightForm.Form, "Where the light leaves and what the eye should see.");
        FormKey<DiffuserSpec> diffuser = keys.Optional("diffuser", LightForm.Diffuser, "What scatters the light.", "the plan decides");
        FormKey<bool> baffle = keys.Optional("baffle", new WordKind<bool>(("loose", false), ("joined", true)), "Light baffle as a part of its own, or joined to the cover.", "loose");
        FormKey<VentKind> vents = keys.Optional(
            "vents", new WordKind<VentKind>(("auto", VentKind.Auto), ("none", VentKind.None), ("floor", VentKind.Floor)), "Vents.", "auto");
        FormKey<MountKind> mount = keys.Optional(
            "mount",
            new WordKind<MountKind>([.. Enum.GetValues<MountKind>().Select(kind => (kind.ToString().ToLower(CultureInfo.InvariantCulture), kind))]),
            "How it is hung or stood.",
            "none");
        FormKey<LabelSpec> label = keys.Optional("label", LightForm.Label, "Lettering.", "none");
        return values => new HousingSaid(
            values.Said(insert),
            values.Said(screw),
            values.Said(washers),
            values.Said(walls),
            values.Said(floor),
            values.Said(clearance),
            values.Said(cable),
            values.Said(closure),
            values.Said(closureScrews),
            values.Said(bore),
            values.Said(light),
            values.Said(diffuser),
            values.Said(baffle),
            values.Said(vents),
            values.Said(mount),
            values.Said(label),
            values.Node);
    }, buildsIncomplete: true);
}
