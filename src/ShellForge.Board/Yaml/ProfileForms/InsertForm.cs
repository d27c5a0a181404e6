using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.ProfileForms;

/// <summary>A heat-set insert in a profile file.</summary>
internal static class InsertForm
{
    /// <summary>The mapping below the insert's name.</summary>
    public static Form<Func<string, InsertProfile>> Form { get; } = new("an insert", keys =>
    {
        FormKey<string> thread = keys.Required("thread", ProfileNumbers.Word, "Thread, such as M2.5.");
        FormKey<Sourced> outer = keys.Required("outer-diameter", ProfileNumbers.Length(1, 30), "Diameter over the knurl.");
        FormKey<Sourced> length = keys.Required("length", ProfileNumbers.Length(1, 40), "Length along the axis.");
        FormKey<Sourced> hole = keys.Required("hole", ProfileNumbers.Length(1, 30), "Hole as drawn for a printed part.");
        FormKey<Sourced> wall = keys.Required("wall", ProfileNumbers.Length(0.4, 10), "Least wall round the hole.");
        FormKey<bool> tapered = keys.Defaulted("tapered", new FlagKind(), "Whether the body is tapered.", "false");
        return values => name => new InsertProfile
        {
            Name = name,
            Thread = values.Get(thread).Value,
            OuterDiameter = values.Get(outer).Value,
            Length = values.Get(length).Value,
            HoleDiameter = values.Get(hole).Value,
            WallThickness = values.Get(wall).Value,
            Tapered = values.Get(tapered).Value,
        };
    });
}
