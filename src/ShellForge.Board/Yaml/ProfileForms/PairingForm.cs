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
        FormKey<Sourced> outer = keys.Optional("outer-allowance", ProfileNumbers.Length(-1, 1),
            "Added to outer sizes so that they come out.", "none");
        FormKey<Sourced> hole = keys.Optional("hole-allowance", ProfileNumbers.Length(-0.5, 1), "Added to the diameter of upright holes.",
            "the printer's");
        FormKey<Sourced> slot = keys.Optional("slot-allowance", ProfileNumbers.Length(-0.5, 1), "Added to the width of slots.", "none");
        FormKey<Sourced> lip = keys.Optional("lip-fit", ProfileNumbers.Length(0, 2), "Gap per side between a round lip and its wall.",
            "the printer's");
        FormKey<Sourced> slotFit = keys.Optional("slot-fit", ProfileNumbers.Length(0, 2), "Gap per side between a tongue and its slot.",
            "the printer's");
        FormKey<Sourced> moving = keys.Optional("moving-fit", ProfileNumbers.Length(0, 2), "Gap per side at which parts move freely.",
            "the printer's loose-fit");
        FormKey<Sourced> accuracy = keys.Optional("accuracy", ProfileNumbers.Length(0, 2), "Spread of a printed size that is left.",
            "the printer's");
        FormKey<Sourced> shrinkage = keys.Optional("shrinkage", ProfileNumbers.Number(-0.02, 0.05), "Linear shrinkage as a fraction.",
            "the filament's");
        FormKey<Sourced> spread = keys.Optional("shrinkage-spread", ProfileNumbers.Number(0, 0.02), "How much that varies.",
            "the filament's");
        FormKey<ImmutableArray<(ScalarNode Name, Sourced Value)>> inserts = keys.Optional(
            "insert-holes", new MapKind<Sourced>("holes by insert", ProfileNumbers.Length(1, 30), MostInserts),
            "Holes as drawn, by the insert's name.", "the inserts' own");
        FormKey<ImmutableArray<(ScalarNode Name, string Value)>> readings = keys.Optional(
            "readings", new MapKind<string>("readings by coupon", new TextKind("what was answered", 600), MostReadings),
            "What was answered to each coupon.");
        return values => name => new PairingProfile
        {
            Name = name,
            Printer = values.Get(printer).Value,
            Filament = values.Get(filament).Value,
            OuterAllowance = Given(values.Get(outer)),
            HoleAllowance = Given(values.Get(hole)),
            SlotAllowance = Given(values.Get(slot)),
            LipFit = Given(values.Get(lip)),
            SlotFit = Given(values.Get(slotFit)),
            MovingFit = Given(values.Get(moving)),
            Accuracy = Given(values.Get(accuracy)),
            Shrinkage = Given(values.Get(shrinkage)),
            ShrinkageSpread = Given(values.Get(spread)),
            InsertHoles = [.. values.Get(inserts).Or([]).Select(each => (each.Name.Text, each.Value))],
            Readings = [.. values.Get(readings).Or([]).Select(each => (each.Name.Text, each.Value))],
        };
    });

    private static Sourced? Given(Parsed<Sourced> said) => said.Given ? said.Value : null;
}
