using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Forms;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>Puts the whole board file together.</summary>
internal sealed class FileResolver(DiagnosticSink sink, ProfileLibrary profiles, NodePaths paths)
{
    /// <summary>The file; null when it has errors, which then have been told.</summary>
    public BoardFile? Resolve(ParsedFile said)
    {
        Angle up = said.Up.Value;
        ParsedHousing? housingSaid = said.Housing.Given ? said.Housing.Value : null;
        ResolvedBoard? resolved = said.Board.Given ? new BoardResolver(sink, profiles, paths).Resolve(said.Board.Value, housingSaid) : null;
        HousingSpec? housing = housingSaid is null ? null : new HousingResolver(resolved, up, sink, profiles, paths)
            .Resolve(housingSaid);
        CheckAmbient(said.Use.Value);
        if (sink.HasErrors || resolved?.Board is not { } board || housing is null)
        {
            return null;
        }

        BoardFile file = Measured(new BoardFile
        {
            Name = said.Name.Value.Trim(),
            Revision = said.Revision.Or("").Trim(),
            Up = up,
            Board = board,
            Housing = housing,
            Power = Power(said.Power.Value),
            Print = Print(said.Print.Value),
            Use = Use(said.Use.Value),
            Accept = said.Accept.Or([]),
            Places = paths.Places,
        });
        return new MeasuredBatch(sink).Of(file, said.Board.Value, housingSaid!);
    }

    // What was measured of the printer with each filament stands in place of what is typical; bosses and walls are of the shell's filament.
    private BoardFile Measured(BoardFile file)
    {
        FilamentProfile Filament(FilamentProfile filament) =>
            profiles.PairingOf(file.Print.Printer.Name, filament.Name)?.Of(filament) ?? filament;

        PairingProfile? shell = profiles.PairingOf(file.Print.Printer.Name, file.Print.Shell.Name);
        return file with
        {
            Print = file.Print with
            {
                Measured = shell,
                Printer = shell?.Of(file.Print.Printer) ?? file.Print.Printer,
                Shell = Filament(file.Print.Shell),
                Diffuser = Filament(file.Print.Diffuser),
                Baffle = file.Print.Baffle is { } baffle ? Filament(baffle) : null,
            },
            Housing = file.Housing with { Insert = file.Housing.Insert is { } insert ? shell?.Of(insert) ?? insert : null },
            Board = shell is null
                ? file.Board
                : file.Board.WithInserts(shell.Of).WithMouths((_, mouth) => shell.Of(mouth)),
        };
    }

    private static PowerSpec Power(ParsedPower said) => new()
    {
        Supply = said.Supply.Value.Name,
        Volts = said.Supply.Value.Volts,
        Amps = said.Supply.Value.Amps,
        Brightness = said.Brightness.Value,
        Capped = said.Capped.Value,
        Duty = said.Duty.Value,
    };

    private PrintSpec Print(ParsedPrint said) => new()
    {
        Printer = said.Printer.Value,
        Shell = said.Shell.Value,
        Diffuser = said.Diffuser.Value,
        Baffle = said.Baffle.Given ? said.Baffle.Value : null,
        Known = profiles.Filaments.All,
    };

    private static UseSpec Use(ParsedUse said) =>
        new(said.Orientation.Value, said.Ambient.Value.Coolest, said.Ambient.Value.Warmest, said.Air.Value);

    private void CheckAmbient(ParsedUse said)
    {
        if (said.Ambient.Value.Coolest > said.Ambient.Value.Warmest)
        {
            sink.Error(said.Ambient.Place, "range-backwards", "the range of the surrounding air runs backwards",
                "expected [coolest, warmest]");
        }
    }
}
