using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Forms;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>Puts the whole board file together.</summary>
internal sealed class FileResolver(DiagnosticSink sink, ProfileLibrary profiles, NodePaths paths)
{
    private const string DefaultSupply = "usb-default";
    private const string DefaultPrinter = "fdm-0.4";
    private const string DefaultShell = "petg-black";
    private const string DefaultDiffuser = "petg-white";
    private const string DefaultAir = "still-air";

    // Comfortable to look at, and within a USB port for most rings. Source: typical.
    private const double DefaultBrightness = 0.2;

    // Source: sealed-box model, ambient 20 to 40.
    private const double DefaultAmbientCelsius = 30;

    /// <summary>The file; null when it has errors, which then have been told.</summary>
    public BoardFile? Resolve(ParsedFile said)
    {
        Angle up = said.Up.Or(Angle.FromDegrees(90));
        ParsedHousing? housingSaid = said.Housing.Given ? said.Housing.Value : null;
        ResolvedBoard? resolved = said.Board.Given ? new BoardResolver(sink, profiles, paths).Resolve(said.Board.Value, housingSaid) : null;
        HousingSpec? housing = housingSaid is null ? null : new HousingResolver(resolved, up, sink, profiles).Resolve(housingSaid);
        PowerSpec? power = Power(said);
        PrintSpec? print = Print(said);
        UseSpec? use = Use(said);
        if (sink.HasErrors || resolved?.Board is not { } board || housing is null || power is null || print is null || use is null)
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
            Power = power,
            Print = print,
            Use = use,
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

    private PowerSpec? Power(ParsedFile said)
    {
        ParsedPower? power = said.Power.Given ? said.Power.Value : null;
        ParsedSupply supply;
        if (power is { Supply.Given: true })
        {
            supply = power.Supply.Value;
        }
        else if (Default(profiles.Supplies, DefaultSupply, said) is { } usual)
        {
            supply = new ParsedSupply(usual.Name, usual.Volts, usual.Amps);
        }
        else
        {
            return null;
        }

        return new PowerSpec
        {
            Supply = supply.Name,
            Volts = supply.Volts,
            Amps = supply.Amps,
            Brightness = power?.Brightness.Or(DefaultBrightness) ?? DefaultBrightness,
            Capped = power?.Capped.Or(false) ?? false,
            Duty = power?.Duty.Or(1) ?? 1,
        };
    }

    private PrintSpec? Print(ParsedFile said)
    {
        ParsedPrint? print = said.Print.Given ? said.Print.Value : null;
        PrinterProfile? printer = print is { Printer.Given: true } ? print.Printer.Value : Default(profiles.Printers, DefaultPrinter, said);
        FilamentProfile? shell = print is { Shell.Given: true } ? print.Shell.Value : Default(profiles.Filaments, DefaultShell, said);
        FilamentProfile? diffuser = print is { Diffuser.Given: true } ? print.Diffuser.Value
            : Default(profiles.Filaments, DefaultDiffuser, said);
        return printer is null || shell is null || diffuser is null
            ? null
            : new PrintSpec
            {
                Printer = printer,
                Shell = shell,
                Diffuser = diffuser,
                Baffle = print is { Baffle.Given: true } ? print.Baffle.Value : null,
            };
    }

    private UseSpec? Use(ParsedFile said)
    {
        ParsedUse? use = said.Use.Given ? said.Use.Value : null;
        ParsedAmbient usual = new ParsedAmbient(DefaultAmbientCelsius, DefaultAmbientCelsius);
        ParsedAmbient ambient = use?.Ambient.Or(usual) ?? usual;
        if (ambient.Coolest > ambient.Warmest)
        {
            sink.Error(use!.Ambient.Place, "range-backwards", "the range of the surrounding air runs backwards",
                "expected [coolest, warmest]");
        }

        return (use is { Air.Given: true } ? use.Air.Value : Default(profiles.Heat, DefaultAir, said)) is { } air
            ? new UseSpec(use?.Orientation.Or(UseOrientation.Wall) ?? UseOrientation.Wall, ambient.Coolest, ambient.Warmest, air)
            : null;
    }

    // A user's file may have spoilt one of the shipped profiles.
    private T? Default<T>(ProfileShelf<T> shelf, string name, ParsedFile said)
        where T : class
    {
        T? found = shelf.Find(name);
        if (found is null)
        {
            sink.Error(said.Node.Place, "unknown-profile", $"the default profile '{name}' could not be read",
                "expected a name to be said instead");
        }

        return found;
    }
}
