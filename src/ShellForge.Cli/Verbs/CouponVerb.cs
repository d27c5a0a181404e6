using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using ShellForge.Board.Profiles;
using ShellForge.Checks.PrintTime;
using ShellForge.Cli.Measuring;
using ShellForge.Cli.Reading;
using ShellForge.Cli.Telling;
using ShellForge.Cli.Writing;
using ShellForge.Coupons;
using ShellForge.Coupons.Files;
using ShellForge.Output.Files;

namespace ShellForge.Cli.Verbs;

/// <summary><c>coupon</c>: small prints that tell what the printer does.</summary>
internal static class CouponVerb
{
    private const string UsualPrinter = "fdm-0.4";
    private const string UsualFilament = "petg-black";

    public static Command Create(Workbench bench)
    {
        var kinds = new Argument<string[]>("KIND")
        {
            Description = $"What to try: {string.Join(", ", CouponKinds.All.Select(kind => kind.Name))}; nothing lists them",
            Arity = ArgumentArity.ZeroOrMore,
        };
        var printer = new Option<string>("--printer") { Description = "The printer", HelpName = "NAME", DefaultValueFactory = _ => UsualPrinter };
        var filament = new Option<string>("--filament") { Description = "The filament", HelpName = "NAME", DefaultValueFactory = _ => UsualFilament };
        var insert = new Option<string?>("--insert") { Description = "The insert in your drawer, by its body", HelpName = "NAME" };
        var around = new Option<double?>("--around") { Description = "The value that the steps lie around, where an earlier coupon pointed there", HelpName = "MM" };
        var folder = new Option<string>("--output", "-o") { Description = "Folder to write into", HelpName = "DIR", DefaultValueFactory = _ => "coupon" };
        Option<bool> json = SharedOptions.Json();
        Option<bool> quiet = SharedOptions.Quiet();
        var command = new Command("coupon", "Make small test prints that tell what your printer does with a filament")
        {
            kinds, printer, filament, insert, around, folder, json, quiet,
        };
        command.SetAction(parsed => (int)Run(bench, new Asked(
            parsed.GetValue(kinds) ?? [], parsed.GetRequiredValue(printer), parsed.GetRequiredValue(filament), parsed.GetValue(insert),
            parsed.GetValue(around), parsed.GetRequiredValue(folder), parsed.GetValue(json), parsed.GetValue(quiet))));
        return command;
    }

    private static ExitCode Run(Workbench bench, Asked asked)
    {
        if (asked.Kinds.Length == 0)
        {
            foreach (CouponKind kind in CouponKinds.All)
            {
                bench.Out.Write($"{kind.Name.PadRight(16)}{kind.Tells}\n");
            }

            return ExitCode.Done;
        }

        ProfileLoadResult loaded = UserProfiles.Load(bench.Folder, bench);
        DiagnosticsText.Write(loaded.Diagnostics, bench, errorsOnly: false);
        if (loaded.Diagnostics.Any(diagnostic => diagnostic.IsError))
        {
            return ExitCode.BadInput;
        }

        var faults = new List<string>();
        CouponWish? wish = Wish(asked, loaded.Library, faults);
        CouponKind[] kinds = [.. asked.Kinds.Distinct().Select(name => Kind(name, faults)).OfType<CouponKind>()];
        if (wish is not null)
        {
            faults.AddRange(kinds.Select(kind => kind.Lacks(wish) is { } lack ? $"{kind.Name}: {lack}" : null).OfType<string>());
        }

        if (asked.Around is not null && kinds.Length > 1)
        {
            faults.Add("--around holds for one kind of coupon; name that one alone");
        }

        if (faults.Count > 0)
        {
            foreach (string fault in faults)
            {
                bench.Err.WriteLine($"shellforge: {fault}");
            }

            return ExitCode.BadInput;
        }

        ImmutableArray<MadeCoupon> made = [.. kinds.Select(kind => CouponMaker.Make(kind.Draw(wish!), bench.Cancel))];
        string path = bench.FullPath(asked.Folder);
        ImmutableArray<OutputFile> files = CouponFiles.Of(made);
        StagedFiles.Write(path, files, []);
        Tell(bench, asked, made, path, files);
        return ExitCode.Done;
    }

    private static void Tell(Workbench bench, Asked asked, ImmutableArray<MadeCoupon> made, string folder, ImmutableArray<OutputFile> files)
    {
        if (asked.Json)
        {
            JsonOut.Write(bench, CouponsDocument.Bytes(folder, made, files));
        }
        else if (!asked.Quiet)
        {
            foreach (MadeCoupon coupon in made)
            {
                bench.Out.Write(string.Create(
                    CultureInfo.InvariantCulture,
                    $"{coupon.Coupon.Kind.Name}: {coupon.Coupon.Kind.Tells}; {PrintEstimate.Duration(coupon.Estimate.Minutes)}, {coupon.Estimate.Grams:0.0} g\n"));
            }

            bench.Out.Write($"{asked.Folder}: {files.Length} files; coupon.txt says what to do. Then: shellforge calibrate {Path.Combine(asked.Folder, "answers.yaml")}\n");
        }
    }

    private static CouponWish? Wish(Asked asked, ProfileLibrary library, List<string> faults)
    {
        PrinterProfile? printer = Named(library.Printers, asked.Printer, "a printer", library, faults);
        FilamentProfile? filament = Named(library.Filaments, asked.Filament, "a filament", library, faults);
        InsertProfile? insert = asked.Insert is null ? null : Named(library.Inserts, asked.Insert, "an insert", library, faults);
        return printer is null || filament is null ? null : new CouponWish(printer, library.PairingOf(printer.Name, filament.Name)?.Of(filament) ?? filament) { Insert = insert, Around = asked.Around };
    }

    private static T? Named<T>(ProfileShelf<T> shelf, string name, string what, ProfileLibrary library, List<string> faults)
        where T : class
    {
        T? found = shelf.Find(name);
        if (found is null)
        {
            string nearest = shelf.Nearest(name) is { } near ? $"; did you mean '{near}'?" : "; 'shellforge profiles' lists them";
            faults.Add(library.KindOf(name) is { } other ? $"'{name}' is {other}, not {what}" : $"there is no profile '{name}' of {what}{nearest}");
        }

        return found;
    }

    private static CouponKind? Kind(string name, List<string> faults)
    {
        CouponKind? kind = CouponKinds.Find(name);
        if (kind is null)
        {
            faults.Add($"there is no coupon '{name}'; expected {string.Join(", ", CouponKinds.All.Select(each => each.Name))}");
        }

        return kind;
    }

    private sealed record Asked(
        string[] Kinds, string Printer, string Filament, string? Insert, double? Around, string Folder, bool Json, bool Quiet);
}
