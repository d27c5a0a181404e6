using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.ProfileForms;

/// <summary>A filament in a profile file.</summary>
internal static class FilamentForm
{
    private static readonly WordKind<bool> Law = new(("scatters", false), ("absorbs", true));
    private const double UsualSpread = 0.0015;

    /// <summary>The mapping below the filament's name.</summary>
    public static Form<Func<string, FilamentProfile>> Form { get; } = new("a filament", keys =>
    {
        FormKey<string> family = keys.Required("family", ProfileNumbers.Word, "Plastic family: only parts of one family fuse.");
        FormKey<string> colour = keys.Required("colour", ProfileNumbers.Word, "Colour in a word.");
        FormKey<string> screen = keys.Required("screen", new TextKind("a colour as #rrggbb", 7), "Colour on screens.");
        FormKey<Sourced> density = keys.Required("density", ProfileNumbers.Number(0.5, 10), "g/cm3.");
        FormKey<Sourced> service = keys.Required("service-limit", ProfileNumbers.Number(20, 300),
            "Highest wall temperature in continuous service, degrees C.");
        FormKey<Sourced> glass = keys.Required("glass-transition", ProfileNumbers.Number(20, 300), "Degrees C.");
        FormKey<Sourced> along = keys.Required("strain-along-layers", ProfileNumbers.Number(0, 0.5),
            "Repeatable strain in the layers' plane, as a fraction.");
        FormKey<Sourced> across = keys.Required("strain-across-layers", ProfileNumbers.Number(0, 0.5),
            "Repeatable strain across layers, as a fraction.");
        FormKey<Sourced> modulus = keys.Required("modulus", ProfileNumbers.Number(10, 20000), "Young's modulus, MPa.");
        FormKey<Sourced> shrinkage = keys.Required("shrinkage", ProfileNumbers.Number(0, 0.05), "Linear, as a fraction.");
        FormKey<Sourced> spread = keys.Optional(
            "shrinkage-spread", ProfileNumbers.Number(0, 0.02),
            "How much more or less a spool shrinks, as a fraction; small once a coupon is measured.", "0.0015");
        FormKey<Sourced> conductivity = keys.Required("conductivity", ProfileNumbers.Number(0.01, 50), "W/mK of the solid.");
        FormKey<Sourced> reflectance = keys.Required("reflectance", ProfileNumbers.Number(0, 1),
            "Share of light thrown back by a thick wall.");
        FormKey<Sourced> transmission = keys.Required("transmission-length",
            ProfileNumbers.Length(FilamentProfile.TransmissionRange.Least, FilamentProfile.TransmissionRange.Most),
            "t0 of T = 1 / (1 + t / t0), or of T = exp(-t / t0) for what absorbs.");
        FormKey<bool> law = keys.Defaulted("transmission-law", Law, "Whether it scatters light or, like a dark pigment, absorbs it.",
            "scatters");
        FormKey<Sourced> iron = keys.Required("iron", ProfileNumbers.Number(100, 400), "Iron for setting inserts, degrees C.");
        return values => name => new FilamentProfile
        {
            Name = name,
            Family = values.Get(family).Value,
            Colour = values.Get(colour).Value,
            Screen = values.Get(screen).Value,
            Density = values.Get(density).Value,
            ServiceLimitCelsius = values.Get(service).Value,
            GlassTransitionCelsius = values.Get(glass).Value,
            StrainAlongLayers = values.Get(along).Value,
            StrainAcrossLayers = values.Get(across).Value,
            ModulusMegapascals = values.Get(modulus).Value,
            Shrinkage = values.Get(shrinkage).Value,
            ShrinkageSpread =
                values.Get(spread).Or(new Sourced(UsualSpread, "half the trade's range for most plastics; typical: print a coupon")),
            Conductivity = values.Get(conductivity).Value,
            Reflectance = values.Get(reflectance).Value,
            Absorbs = values.Get(law).Value,
            TransmissionLength = values.Get(transmission).Value,
            IronCelsius = values.Get(iron).Value,
        };
    });
}
