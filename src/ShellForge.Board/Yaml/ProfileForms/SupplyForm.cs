using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.ProfileForms;

/// <summary>A supply in a profile file.</summary>
internal static class SupplyForm
{
    /// <summary>The mapping below the supply's name.</summary>
    public static Form<Func<string, SupplyProfile>> Form { get; } = new("a supply", keys =>
    {
        FormKey<Sourced> volts = keys.Required("volts", ProfileNumbers.Number(1, 60), "Volts at the board.");
        FormKey<Sourced> amps = keys.Required("amps", ProfileNumbers.Number(0.01, 100), "Amperes in continuous use.");
        return values => name => new SupplyProfile
        {
            Name = name,
            Volts = values.Get(volts).Value,
            Amps = values.Get(amps).Value,
        };
    });
}
