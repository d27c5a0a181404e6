using System.Collections.Immutable;
using ShellForge.Board.Diagnostics;
using ShellForge.Board.Yaml.ProfileForms;

namespace ShellForge.Board.Profiles;

/// <summary>All profiles that a board file can name: the ones shipped with the tool, and the user's in their place.</summary>
public sealed class ProfileLibrary
{
    /// <summary>Heat-set inserts.</summary>
    public required ProfileShelf<InsertProfile> Inserts { get; init; }

    /// <summary>Screws.</summary>
    public required ProfileShelf<ScrewProfile> Screws { get; init; }

    /// <summary>Packages of parts.</summary>
    public required ProfileShelf<PackageProfile> Packages { get; init; }

    /// <summary>LED packages.</summary>
    public required ProfileShelf<LedProfile> Leds { get; init; }

    /// <summary>Filaments.</summary>
    public required ProfileShelf<FilamentProfile> Filaments { get; init; }

    /// <summary>Printers.</summary>
    public required ProfileShelf<PrinterProfile> Printers { get; init; }

    /// <summary>What was measured of printers with filaments; none is shipped.</summary>
    public required ProfileShelf<PairingProfile> Pairings { get; init; }

    /// <summary>Supplies.</summary>
    public required ProfileShelf<SupplyProfile> Supplies { get; init; }

    /// <summary>Coefficients of heat.</summary>
    public required ProfileShelf<HeatProfile> Heat { get; init; }

    /// <summary>Cells and pouches.</summary>
    public required ProfileShelf<BatteryProfile> Batteries { get; init; }

    /// <summary>What was measured of a printer with a filament; null where nothing was.</summary>
    public PairingProfile? PairingOf(string printer, string filament) =>
        Pairings.All.FirstOrDefault(pairing => pairing.Printer == printer && pairing.Filament == filament);

    /// <summary>Puts the shipped profiles and the user's on one shelf each.</summary>
    /// <param name="userFilesInPriorityOrder">The user's files, name and text, the one that wins first.</param>
    /// <returns>The profiles that could be read, and what is wrong with the files.</returns>
    public static ProfileLoadResult Load(IEnumerable<(string FileName, string Text)> userFilesInPriorityOrder) =>
        ProfileLoader.Load([.. userFilesInPriorityOrder]);

    /// <summary>The word for each kind of profile, with the names that stand on its shelf.</summary>
    public ImmutableArray<(string Kind, ImmutableArray<string> Names)> Kinds =>
    [
        ("an insert", Inserts.Names),
        ("a screw", Screws.Names),
        ("a package", Packages.Names),
        ("an LED package", Leds.Names),
        ("a filament", Filaments.Names),
        ("a printer", Printers.Names),
        ("a printer with a filament", Pairings.Names),
        ("a supply", Supplies.Names),
        ("a set of coefficients of heat", Heat.Names),
        ("a battery", Batteries.Names),
    ];

    /// <summary>The word for the kind of a profile, whatever shelf it stands on; null when there is none of the name.</summary>
    public string? KindOf(string name) => Kinds.FirstOrDefault(each => each.Names.Contains(name)).Kind;
}

/// <summary>The profiles, and what is wrong with the files they were read from.</summary>
public sealed record ProfileLoadResult(ProfileLibrary Library, ImmutableArray<Diagnostic> Diagnostics);
