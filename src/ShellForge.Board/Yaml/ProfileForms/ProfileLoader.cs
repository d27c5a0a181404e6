using System.Collections.Immutable;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.ProfileForms;

/// <summary>Reads profile files: first all names of all files, then each profile with what it is `like` filled in.</summary>
internal sealed class ProfileLoader
{
    private const string ResourceStart = "profiles/";
    private const int LongestName = 80;

    private readonly DiagnosticSink _sink = new();

    // Kind of profile, such as "inserts", then name: the raw mapping. The first file that gives a name keeps it.
    private readonly Dictionary<string, List<MappingEntry>> _raw = new(StringComparer.Ordinal);

    // Kinds and names of the shipped profiles, whoever wins them.
    private readonly HashSet<(string Kind, string Name)> _shipped = [];

    // All profiles of a name, the one that wins first: a profile that is `like` its own name means the next one.
    private readonly Dictionary<(string Kind, string Name), List<MappingNode>> _versions = [];
    private ImmutableDictionary<(string File, string Name), string> _sources =
        ImmutableDictionary<(string, string), string>.Empty;

    private ProfileLoader()
    {
    }

    /// <summary>Loads the user's files, the one that wins first, and the shipped ones.</summary>
    public static ProfileLoadResult Load(ImmutableArray<(string FileName, string Text)> userFiles)
    {
        var loader = new ProfileLoader();
        foreach ((string file, string text) in userFiles)
        {
            loader.Take(file, text, isShipped: false);
        }

        foreach ((string file, string text) in Shipped())
        {
            loader.Take(file, text, isShipped: true);
        }

        var library = new ProfileLibrary
        {
            Inserts = loader.Shelf("inserts", InsertForm.Form),
            Screws = loader.Shelf("screws", ScrewForm.Form),
            Packages = loader.Shelf("packages", PackageForm.Form),
            Leds = loader.Shelf("leds", LedForm.Form),
            Filaments = loader.Shelf("filaments", FilamentForm.Form),
            Printers = loader.Shelf("printers", PrinterForm.Form),
            Pairings = loader.Shelf("pairings", PairingForm.Form),
            Supplies = loader.Shelf("supplies", SupplyForm.Form),
            Heat = loader.Shelf("heat", HeatForm.Form),
            Batteries = loader.Shelf("batteries", BatteryProfileForm.Form),
        };
        return new ProfileLoadResult(library, loader._sink.InOrder());
    }

    /// <summary>The shipped files, in the order of their names.</summary>
    public static IEnumerable<(string FileName, string Text)> Shipped()
    {
        System.Reflection.Assembly assembly = typeof(ProfileLoader).Assembly;
        foreach (string name in assembly.GetManifestResourceNames().Order(StringComparer.Ordinal))
        {
            if (name.StartsWith(ResourceStart, StringComparison.Ordinal) && assembly.GetManifestResourceStream(name) is { } stream)
            {
                using var reader = new StreamReader(stream);
                yield return (name, reader.ReadToEnd());
            }
        }
    }

    private void Take(string file, string text, bool isShipped)
    {
        PositionedNode? root = YamlTreeReader.Read(file, text, _sink);
        if (root is null || !ProfileFileForm.Form.TryRead(root, new ReadingContext(_sink, null), out _))
        {
            return;
        }

        foreach (MappingEntry shelf in ((MappingNode)root).Entries)
        {
            if (shelf.Value is not MappingNode entries)
            {
                continue;
            }

            if (shelf.Key.Text == "sources")
            {
                _sources = _sources.SetItems(entries.Entries
                    .Where(e => e.Value is ScalarNode)
                    .Select(e => KeyValuePair.Create((file, e.Key.Text), ((ScalarNode)e.Value).Text)));
                continue;
            }

            foreach (MappingEntry profile in entries.Entries)
            {
                Keep(shelf.Key.Text, profile, isShipped);
            }
        }
    }

    private void Keep(string kind, MappingEntry profile, bool isShipped)
    {
        if (!_raw.TryGetValue(kind, out List<MappingEntry>? shelf))
        {
            _raw[kind] = shelf = [];
        }

        string name = profile.Key.Text;
        if (name.Length is 0 or > LongestName || name.Any(c => char.IsWhiteSpace(c) || char.IsControl(c)))
        {
            _sink.Error(profile.Key.Place, "bad-profile-name", $"{profile.Key.KindInWords} cannot name a profile",
                "expected a word without spaces");
        }
        else
        {
            if (isShipped)
            {
                _shipped.Add((kind, name));
            }

            if (!shelf.Exists(e => e.Key.Text == name))
            {
                shelf.Add(profile);
            }

            if (!_versions.TryGetValue((kind, name), out List<MappingNode>? versions))
            {
                _versions[(kind, name)] = versions = [];
            }

            if (profile.Value is MappingNode mapping)
            {
                versions.Add(mapping);
            }
        }
    }

    private ProfileShelf<T> Shelf<T>(string kind, Kind<Func<string, T>> form)
        where T : class
    {
        var read = new List<(string, T)>();
        var context = new ReadingContext(_sink, null) { Sources = _sources };

        // What is looked for by its kind, such as a cap screw of some thread, is the shipped one: an own profile wins by its name alone.
        foreach (MappingEntry entry in (_raw.GetValueOrDefault(kind) ?? []).OrderBy(
            entry => _shipped.Contains((kind, entry.Key.Text)) ? 0 : 1))
        {
            PositionedNode? full = Filled(kind, entry.Key, entry.Value, []);
            if (full is not null && form.TryRead(full, context, out Func<string, T> make))
            {
                read.Add((entry.Key.Text, make(entry.Key.Text)));
            }
        }

        return new ProfileShelf<T>(read);
    }

    // The profile with the values of what it is like put behind its own.
    private PositionedNode? Filled(string kind, ScalarNode name, PositionedNode node, ImmutableList<MappingNode> onTheWay)
    {
        if (node is not MappingNode mapping || mapping.Find(ProfileFileForm.LikeKey) is not { } like)
        {
            return node;
        }

        MappingNode? model = like is ScalarNode word ? Model(kind, word.Text, mapping) : null;
        if (model is null || onTheWay.Exists(m => ReferenceEquals(m, model)))
        {
            string problem = model is null ? $"there is no profile {like.KindInWords} to be like"
                : $"'{name.Text}' is like itself in the end";
            string? nearest = like is ScalarNode typed ? NearestName.In(typed.Text, _raw[kind].Select(e => e.Key.Text)) : null;
            _sink.Error(like.Place, "unknown-profile", problem, $"expected the name of another profile among {kind}", nearest);
            return null;
        }

        if (Filled(kind, name, model, onTheWay.Add(mapping)) is not MappingNode behind)
        {
            return null;
        }

        return new MappingNode(
            mapping.Place,
            [
                .. mapping.Entries.Where(e => e.Key.Text != ProfileFileForm.LikeKey),
                .. behind.Entries.Where(e => mapping.Find(e.Key.Text) is null),
            ]);
    }

    private MappingNode? Model(string kind, string name, MappingNode asking)
    {
        List<MappingNode> versions = _versions.GetValueOrDefault((kind, name)) ?? [];
        return versions.ElementAtOrDefault(versions.FindIndex(v => ReferenceEquals(v, asking)) + 1);
    }
}
