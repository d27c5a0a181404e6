using System.Collections.Immutable;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Profiles;

/// <summary>
/// Profiles of one kind by name, shipped names first, then the user's; a user's own stand in place of ours of the same name.
/// </summary>
/// <typeparam name="T">The kind.</typeparam>
public sealed class ProfileShelf<T>
    where T : class
{
    private readonly ImmutableDictionary<string, T> _byName;

    internal ProfileShelf(IEnumerable<(string Name, T Profile)> profiles)
    {
        (string Name, T Profile)[] all = [.. profiles];
        Names = [.. all.Select(p => p.Name)];
        _byName = all.ToImmutableDictionary(p => p.Name, p => p.Profile, StringComparer.Ordinal);
        All = [.. Names.Select(name => _byName[name])];
    }

    /// <summary>All names, shipped ones first, else in file order.</summary>
    public ImmutableArray<string> Names { get; }

    /// <summary>All profiles, in the order of their names.</summary>
    public ImmutableArray<T> All { get; }

    /// <summary>The profile of a name, or null.</summary>
    public T? Find(string name) => _byName.GetValueOrDefault(name);

    /// <summary>The name that a mistyped one was probably meant to be, or null.</summary>
    public string? Nearest(string name) => NearestName.In(name, Names);
}
