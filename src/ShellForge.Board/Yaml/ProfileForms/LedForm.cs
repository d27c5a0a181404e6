using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.ProfileForms;

/// <summary>An LED package in a profile file.</summary>
internal static class LedForm
{
    private static readonly WordKind<LedEmission> Emission = new(("top", LedEmission.Top), ("side", LedEmission.Side));

    private const double WhiteBody = 0.7;

    /// <summary>The mapping below the package's name.</summary>
    public static Form<Func<string, LedProfile>> Form { get; } = new("an LED package", keys =>
    {
        FormKey<Sourced> length = keys.Required("length", ProfileNumbers.Length(0.3, 30), "Body along its x.");
        FormKey<Sourced> width = keys.Required("width", ProfileNumbers.Length(0.3, 30), "Body along its y.");
        FormKey<Sourced> height = keys.Required("height", ProfileNumbers.Length(0.1, 30), "Body above the board.");
        FormKey<Sourced> window = keys.Required("window-width", ProfileNumbers.Length(0.1, 30), "Side of the emitting window.");
        FormKey<Sourced> angle = keys.Required("viewing-angle", ProfileNumbers.Number(5, 170), "Full angle at half intensity, degrees.");
        FormKey<Sourced> body = keys.Optional("body-reflectance", ProfileNumbers.Number(0, 1),
            "Share of light that its body throws back: white 0.7, black 0.05.", "0.7");
        FormKey<LedEmission> emission = keys.Defaulted("emission", Emission, "Which way it shines.", "top");
        FormKey<Sourced> face = keys.Optional("shining-face", ProfileNumbers.Number(-360, 360),
            "Which way the shining face looks in the package's frame, degrees: 0 is +x, 90 is +y; for side-facing ones.", "0");
        FormKey<Sourced> axis = keys.Optional("axis-height", ProfileNumbers.Length(0, 20),
            "Emission axis above the board, for side-facing ones.");
        FormKey<Sourced> white = keys.Required("full-white-ma", ProfileNumbers.Number(0.5, 1000), "Full white, mA, for heat.");
        FormKey<Sourced> least = keys.Optional("least-white-ma", ProfileNumbers.Number(0.5, 1000),
            "Full white, mA, with the weakest dies that ship under the name.", "full-white-ma");
        FormKey<Sourced> wiring = keys.Required("wiring-ma", ProfileNumbers.Number(0.5, 1000),
            "Full white, mA, with the strongest dies that ship under the name: for wiring and fuses, and the upper end of temperatures.");
        FormKey<Sourced> idle = keys.Required("idle-ma", ProfileNumbers.Number(0, 50), "When dark, mA.");
        FormKey<Sourced> limit = keys.Required("temperature-limit", ProfileNumbers.Number(30, 200),
            "Highest temperature in continuous use, degrees C.");
        FormKey<Sourced> tail = keys.Optional("tail-length", ProfileNumbers.Length(0, 20), "Tails on the far side.", "0");
        return values => name => new LedProfile
        {
            Name = name,
            Length = values.Get(length).Value,
            Width = values.Get(width).Value,
            Height = values.Get(height).Value,
            WindowWidth = values.Get(window).Value,
            ViewingAngleDegrees = values.Get(angle).Value,
            BodyReflectance = values.Get(body).Or(new Sourced(WhiteBody, "a white body, as most are; typical: check yours")),
            Emission = values.Get(emission).Value,
            ShiningFaceDegrees = values.Get(face).Or(ProfileNumbers.None("the +x face")),
            AxisHeight = values.Get(axis).Given ? values.Get(axis).Value : null,
            FullWhiteMilliamps = values.Get(white).Value,
            LeastWhiteMilliamps = values.Get(least).Given ? values.Get(least).Value : values.Get(white).Value,
            WiringMilliamps = values.Get(wiring).Value,
            IdleMilliamps = values.Get(idle).Value,
            TemperatureLimitCelsius = values.Get(limit).Value,
            TailLength = values.Get(tail).Or(ProfileNumbers.None("surface mounted: nothing comes out on the far side")),
        };
    });
}
