using System.Collections.Immutable;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.ProfileForms;

/// <summary>A profile file: short names of sources, and profiles of any kind by name.</summary>
internal static class ProfileFileForm
{
    /// <summary>What the first key of a profile file says.</summary>
    public const string Format = "shellforge-profiles/1";

    /// <summary>The key that names another profile whose values are taken over.</summary>
    public const string LikeKey = "like";

    private const int MostProfiles = 1000;

    /// <summary>The whole file.</summary>
    public static Form<bool> Form { get; } = new("a profile file", keys =>
    {
        keys.Required("format", new WordKind<bool>((Format, true)), "Format and version of the file.");
        keys.Optional("sources", new MapKind<string>("names of sources", new TextKind("a source", 300), MostProfiles),
            "Short names for sources.");
        Shelf(keys, "inserts", InsertForm.Form);
        Shelf(keys, "screws", ScrewForm.Form);
        Shelf(keys, "packages", PackageForm.Form);
        Shelf(keys, "leds", LedForm.Form);
        Shelf(keys, "filaments", FilamentForm.Form);
        Shelf(keys, "printers", PrinterForm.Form);
        Shelf(keys, "pairings", PairingForm.Form);
        Shelf(keys, "supplies", SupplyForm.Form);
        Shelf(keys, "heat", HeatForm.Form);
        Shelf(keys, "batteries", BatteryProfileForm.Form);
        return _ => true;
    });

    private static void Shelf<T>(FormKeys keys, string name, Form<Func<string, T>> form) =>
        keys.Optional(name, new ProfileMapKind<T>(name, form), $"Profiles by name. `like: NAME` takes over another one's values.");

    /// <summary>Profiles by name; each may be `like` another one, which is resolved before its own form reads it.</summary>
    private sealed class ProfileMapKind<T>(string what, Form<Func<string, T>> form)
        : Kind<ImmutableArray<PositionedNode>>
    {
        public override string Expected => what + " by name";

        public override bool Suits(PositionedNode node) => node is MappingNode;

        // Only the shape is read here: profiles of all files are put on one shelf first.
        public override bool TryRead(PositionedNode node, ReadingContext context, out ImmutableArray<PositionedNode> value)
        {
            value = [];
            return node is MappingNode || Refuse(node, context, out value);
        }

        public override void WriteSchema(Schema.SchemaWriter schema) => schema.Map(new Likeable(form), MostProfiles);

        private sealed class Likeable(Form<Func<string, T>> form) : Schema.ISchemaSource
        {
            public void WriteSchema(Schema.SchemaWriter schema) => schema.Mapping(what: form.What, form.Keys, LikeKey);
        }
    }
}
