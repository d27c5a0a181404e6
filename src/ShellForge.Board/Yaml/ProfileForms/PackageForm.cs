using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.ProfileForms;

/// <summary>A part's package in a profile file.</summary>
internal static class PackageForm
{
    private static readonly Sourced SurfaceMount = ProfileNumbers.None("surface mounted: nothing comes out on the far side");

    /// <summary>The mapping below the package's name.</summary>
    public static Form<Func<string, PackageProfile>> Form { get; } = new("a package", keys =>
    {
        FormKey<Sourced> length = keys.Required("length", ProfileNumbers.Length(0.2, 200),
            "Body along its x, the diameter of a round one.");
        FormKey<Sourced> width = keys.Required("width", ProfileNumbers.Length(0.2, 200), "Body along its y.");
        FormKey<Sourced> height = keys.Optional("height", ProfileNumbers.Length(0, 100), "Body above the board, flat mounted.", "unknown");
        FormKey<bool> round = keys.Defaulted("round", new FlagKind(), "A cylinder that stands on the board.", "false");
        FormKey<Sourced> taller = keys.Optional("height-tolerance", ProfileNumbers.Length(0, 10),
            "By how much makers allow it to be taller.", "0");
        FormKey<bool> passive = keys.Defaulted("passive", new FlagKind(), "Small passive whose unknown height is no danger.", "false");
        FormKey<bool> mounting = keys.Defaulted("mounting-required", new FlagKind(), "Whether `mounted:` must be said.", "false");
        FormKey<Sourced> onPins = keys.Optional("height-on-pins", ProfileNumbers.Length(0, 100), "Height on pin headers.");
        FormKey<Sourced> inSocket = keys.Optional("height-in-socket", ProfileNumbers.Length(0, 100), "Height in a socket.");
        FormKey<Sourced> midBoard = keys.Optional("height-mid-board", ProfileNumbers.Length(0, 100), "Height when sunk into a cutout.");
        FormKey<Sourced> joint = keys.Optional("joint-protrusion", ProfileNumbers.Length(0, 20), "Leads on the far side.", "0");
        FormKey<Sourced> watts = keys.Optional("watts", ProfileNumbers.Number(0, 50), "Heat given off, W.", "0");
        FormKey<Sourced> pusher = keys.Optional("pusher", ProfileNumbers.Length(0.5, 30),
            "Diameter of a button's pusher, on the body's axis.", "no button");
        FormKey<MouthProfile> mouth = keys.Optional("mouth", MouthForm.Form, "The opening that a plug enters.", "takes no plug");
        return values => name => new PackageProfile
        {
            Name = name,
            Length = values.Get(length).Value,
            Width = values.Get(width).Value,
            Height = Maybe(values.Get(height)),
            HeightTolerance = values.Get(taller).Or(ProfileNumbers.None("the height is the largest of the trade")),
            Round = values.Get(round).Value,
            Passive = values.Get(passive).Value,
            MountingRequired = values.Get(mounting).Value,
            HeightOnPins = Maybe(values.Get(onPins)),
            HeightInSocket = Maybe(values.Get(inSocket)),
            HeightMidBoard = Maybe(values.Get(midBoard)),
            JointProtrusion = values.Get(joint).Or(SurfaceMount),
            Watts = values.Get(watts).Or(ProfileNumbers.None("gives off no heat worth counting")),
            Pusher = Maybe(values.Get(pusher)),
            Mouth = values.Get(mouth).Given ? values.Get(mouth).Value : null,
        };
    });

    private static Sourced? Maybe(Parsed<Sourced> said) => said.Given ? said.Value : null;
}
