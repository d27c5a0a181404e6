using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.ProfileForms;

/// <summary>A connector's mouth and its plug in a profile file.</summary>
internal static class MouthForm
{
    /// <summary>The mapping at a package's `mouth:`.</summary>
    public static Form<MouthProfile> Form { get; } = new("a connector's mouth", keys =>
    {
        FormKey<string> kind = keys.Required("kind", ProfileNumbers.Word, "usb-c, micro-b, barrel or wire.");
        FormKey<Sourced> overhang = keys.Optional("overhang", ProfileNumbers.Length(-10, 20),
            "How far the mouth stands out past the body.", "0");
        FormKey<Sourced> axis = keys.Required("axis-height", ProfileNumbers.Length(0, 60), "Height of the mouth's axis above the board.");
        FormKey<Sourced> shellWidth = keys.Required("shell-width", ProfileNumbers.Length(0.5, 80),
            "Nose that may enter the wall, along the board.");
        FormKey<Sourced> shellHeight = keys.Required("shell-height", ProfileNumbers.Length(0.5, 60), "Nose along z.");
        FormKey<Sourced> openingWidth = keys.Required("opening-width", ProfileNumbers.Length(0.5, 80),
            "Opening in the wall, along the board.");
        FormKey<Sourced> openingHeight = keys.Required("opening-height", ProfileNumbers.Length(0.5, 60), "Opening along z.");
        FormKey<Sourced> recessWidth = keys.Required("recess-width", ProfileNumbers.Length(0.5, 80),
            "Recess for the overmould, along the board.");
        FormKey<Sourced> recessHeight = keys.Required("recess-height", ProfileNumbers.Length(0.5, 60), "Recess along z.");
        FormKey<Sourced> recessCorner = keys.Required("recess-corner-radius", ProfileNumbers.Length(0, 30),
            "Corner radius of the recess; less where the plug's corners need it.");
        FormKey<Sourced> plugWidth = keys.Required("plug-width", ProfileNumbers.Length(0.5, 80), "Largest overmould, along the board.");
        FormKey<Sourced> plugHeight = keys.Required("plug-height", ProfileNumbers.Length(0.5, 60), "Largest overmould along z.");
        FormKey<Sourced> plugCorner = keys.Optional("plug-corner-radius", ProfileNumbers.Length(0, 30),
            "Corner radius of that overmould, seen from its front.", "0");
        FormKey<Sourced> plugLength = keys.Required("plug-length", ProfileNumbers.Length(1, 100), "Overmould and relief behind its face.");
        FormKey<Sourced> warn = keys.Required("seat-depth-warn", ProfileNumbers.Length(0, 20),
            "Mouth behind the wall face: warn from here.");
        FormKey<Sourced> stop = keys.Required("seat-depth-stop", ProfileNumbers.Length(0, 20),
            "Mouth behind the wall face: no longer seats.");
        FormKey<Sourced> amps = keys.Required("contact-amps", ProfileNumbers.Number(0.05, 50), "Current of the contacts, A.");
        return values => new MouthProfile
        {
            Kind = values.Get(kind).Value,
            Overhang = values.Get(overhang).Or(ProfileNumbers.None("the mouth ends flush with the body")),
            AxisHeight = values.Get(axis).Value,
            ShellWidth = values.Get(shellWidth).Value,
            ShellHeight = values.Get(shellHeight).Value,
            OpeningWidth = values.Get(openingWidth).Value,
            OpeningHeight = values.Get(openingHeight).Value,
            RecessWidth = values.Get(recessWidth).Value,
            RecessHeight = values.Get(recessHeight).Value,
            RecessCornerRadius = values.Get(recessCorner).Value,
            PlugWidth = values.Get(plugWidth).Value,
            PlugHeight = values.Get(plugHeight).Value,
            PlugCornerRadius = values.Get(plugCorner).Or(ProfileNumbers.None("taken as square, since the profile does not say")),
            PlugLength = values.Get(plugLength).Value,
            SeatDepthWarn = values.Get(warn).Value,
            SeatDepthStop = values.Get(stop).Value,
            ContactAmps = values.Get(amps).Value,
        };
    });
}
