using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.ProfileForms;

/// <summary>A cell or pouch in a profile file.</summary>
internal static class BatteryProfileForm
{
    /// <summary>The mapping below its name.</summary>
    public static Form<Func<string, BatteryProfile>> Form { get; } = new("a battery", keys =>
    {
        FormKey<Sourced> diameter = keys.Optional("diameter", ProfileNumbers.Length(3, 50), "Largest diameter of a cylinder.");
        FormKey<Sourced> thickness = keys.Optional("thickness", ProfileNumbers.Length(1, 40), "Largest thickness of a pouch, new.");
        FormKey<Sourced> width = keys.Optional("width", ProfileNumbers.Length(5, 150), "Largest width of a pouch.");
        FormKey<Sourced> length = keys.Required("length", ProfileNumbers.Length(5, 200), "Largest length, without wires.");
        FormKey<Sourced> grams = keys.Required("grams", ProfileNumbers.Number(0.2, 1000), "Its mass in grams.");
        FormKey<bool> lithium = keys.Defaulted("lithium", new FlagKind(), "Whether it holds lithium.", "true");
        FormKey<Sourced> warmest = keys.Required("warmest", ProfileNumbers.Number(20, 90), "Warmest air that it may lie in.");
        keys.ExactlyOneOf(diameter, thickness);
        keys.Needs(thickness, width);
        keys.Needs(width, thickness);
        return values => name => new BatteryProfile
        {
            Name = name,
            Form = values.Get(diameter).Given ? BatteryForm.Round : BatteryForm.Flat,
            Thickness = values.Get(diameter) is { Given: true } round ? round.Value : values.Get(thickness).Value,
            Width = values.Get(diameter) is { Given: true } across ? across.Value : values.Get(width).Value,
            Length = values.Get(length).Value,
            Grams = values.Get(grams).Value,
            Lithium = values.Get(lithium).Value,
            WarmestCelsius = values.Get(warmest).Value,
        };
    });
}
