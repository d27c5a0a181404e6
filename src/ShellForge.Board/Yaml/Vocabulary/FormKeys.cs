using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Vocabulary;

/// <summary>The keys of a form and which of them go together.</summary>
internal sealed class FormKeys
{
    private readonly List<FormKey> _all = [];
    private readonly List<KeyGroup> _groups = [];
    private readonly List<(string Key, string Needs)> _needs = [];

    /// <summary>All keys, in the order of their declaration.</summary>
    public IReadOnlyList<FormKey> All => _all;

    /// <summary>Keys of which one, or at most one, may be given.</summary>
    public IReadOnlyList<KeyGroup> Groups => _groups;

    /// <summary>Keys that mean something beside another key only.</summary>
    public IReadOnlyList<(string Key, string Needs)> Dependencies => _needs;

    /// <summary>Declares a key that must be given.</summary>
    public FormKey<T> Required<T>(string name, Kind<T> kind, string help) => Add(new FormKey<T>(name, kind, help, true, null));

    /// <summary>Declares a key that may be given.</summary>
    /// <param name="name">The key.</param>
    /// <param name="kind">What stands there.</param>
    /// <param name="help">What it is, for people.</param>
    /// <param name="otherwise">What holds when it is not given, in words.</param>
    public FormKey<T> Optional<T>(string name, Kind<T> kind, string help, string? otherwise = null) =>
        Add(new FormKey<T>(name, kind, help, false, otherwise));

    /// <summary>Declares a key that may be given and has a value when it is not.</summary>
    /// <param name="name">The key.</param>
    /// <param name="kind">What stands there.</param>
    /// <param name="help">What it is, for people.</param>
    /// <param name="value">The value, as one would write it in the file.</param>
    public FormKey<T> Defaulted<T>(string name, Kind<T> kind, string help, string value) =>
        Add(new FormKey<T>(name, kind, help, false, value) { Default = place => new ScalarNode(place, value, false) });

    /// <summary>Declares a mapping that may be left out: each of its keys then has its default.</summary>
    /// <param name="name">The key.</param>
    /// <param name="form">What stands there.</param>
    /// <param name="help">What it is, for people.</param>
    public FormKey<T> Defaulted<T>(string name, Form<T> form, string help) =>
        Add(new FormKey<T>(name, form, help, false, null) { Default = place => new MappingNode(place, []) });

    /// <summary>Exactly one of these keys is given.</summary>
    public void ExactlyOneOf(params FormKey[] keys) => _groups.Add(new KeyGroup([.. keys.Select(k => k.Name)], true));

    /// <summary>At most one of these keys is given.</summary>
    public void AtMostOneOf(params FormKey[] keys) => _groups.Add(new KeyGroup([.. keys.Select(k => k.Name)], false));

    /// <summary>A key has a meaning only beside another.</summary>
    public void Needs(FormKey key, FormKey other) => _needs.Add((key.Name, other.Name));

    /// <summary>The key of a name, or null.</summary>
    public FormKey? Find(string name) => _all.Find(k => k.Name == name);

    /// <summary>The key that a mistyped one was probably meant to be, or null.</summary>
    public string? Nearest(string name) => NearestName.In(name, _all.Select(k => k.Name));

    /// <summary>Tells keys that are missing or do not go together; false when the form can't be put together.</summary>
    public bool Check(MappingNode mapping, string what, DiagnosticSink sink)
    {
        bool complete = true;
        string?[] mistyped = [.. mapping.Entries.Where(e => Find(e.Key.Text) is null).Select(e => Nearest(e.Key.Text))];
        foreach (FormKey key in _all.Where(k => k.Required && mapping.Find(k.Name) is null))
        {
            complete = false;
            if (!mistyped.Contains(key.Name))
            {
                sink.Error(mapping.Place, "missing-key", $"{what} lacks '{key.Name}'", $"expected {key.Name}: {key.Expected}");
            }
        }

        foreach (KeyGroup group in _groups)
        {
            MappingEntry[] given = [.. mapping.Entries.Where(e => group.Keys.Contains(e.Key.Text))];
            if (given.Length == 0 && group.OneIsNeeded)
            {
                complete = false;
                if (!mistyped.Intersect(group.Keys).Any())
                {
                    sink.Error(mapping.Place, "missing-key", $"{what} lacks all of {string.Join(", ", group.Keys)}",
                        "expected one of them");
                }
            }

            if (given.Length > 1)
            {
                sink.Error(
                    given[1].Key.Place, "conflicting-keys", $"'{given[1].Key.Text}' cannot stand beside '{given[0].Key.Text}'",
                    "expected one of them");
                complete = false;
            }
        }

        foreach ((string key, string needs) in _needs)
        {
            if (mapping.Find(needs) is null && mapping.Entries.FirstOrDefault(e => e.Key.Text == key) is { } alone)
            {
                sink.Error(alone.Key.Place, "missing-key", $"'{key}' means nothing without '{needs}'", $"expected '{needs}' beside it");
                complete = false;
            }
        }

        return complete;
    }

    private FormKey<T> Add<T>(FormKey<T> key)
    {
        _all.Add(key);
        return key;
    }
}

/// <summary>Keys of which one, or at most one, may be given.</summary>
internal sealed record KeyGroup(string[] Keys, bool OneIsNeeded);
