using System.Collections.Immutable;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.ProfileForms;

/// <summary>What was measured of a printer with a filament, in a profile file.</summary>
internal static class PairingForm
{
    private const int MostInserts = 100;
    private const int MostReadings = 100;

    /// <summary>The mapping below the pairing's name.</summary>
    public static Form<Func<string, PairingProfile>> Form { get; } = new("a printer with a filament", keys =>
    {
        FormKey<string> printer = keys.Required("printer", new TextKind("the name of a printer", 80), "The printer.");
        FormKey<string> filament = keys.Required("filament", new TextKind("the name of a filament", 80), "The filament.");
        ImmutableArray<(PairingSize Size, FormKey<Sourced> Key)> sizes =
        [
            .. PairingSize.All.Select(size => (size, keys.Optional(
                size.Key, ProfileNumbers.Of(size), size.Words, size.Otherwise))),
        ];
        FormKey<ImmutableArray<(ScalarNode Name, Sourced Value)>> inserts = keys.Optional(
            "insert-holes", new MapKind<Sourced>("holes by insert",
                ProfileNumbers.Length(PairingProfile.InsertHoleRange.Least, PairingProfile.InsertHoleRange.Most), MostInserts),
            "Holes as drawn, by the insert's name.", "the inserts' own");
        FormKey<ImmutableArray<(ScalarNode Name, string Value)>> readings = keys.Optional(
            "readings", new MapKind<string>("readings by coupon", new TextKind("what was answered", 600), MostReadings),
            "What was answered to each coupon.");
        return values => name => sizes.Aggregate(
            new PairingProfile
            {
                Name = name,
                Printer = values.Get(printer).Value,
                Filament = values.Get(filament).Value,
                InsertHoles = [.. values.Get(inserts).Or([]).Select(each => (each.Name.Text, each.Value))],
                Readings = [.. values.Get(readings).Or([]).Select(each => (each.Name.Text, each.Value))],
            },
            (pairing, each) => values.Get(each.Key) is { Given: true } said ? each.Size.With(pairing, said.Value) : pairing);
    });
}
