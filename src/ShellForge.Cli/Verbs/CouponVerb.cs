using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using System.Text;
using ShellForge.Board.Description;
using ShellForge.Board.Files;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Answers;
using ShellForge.Checks.PrintTime;
using ShellForge.Cli.Measuring;
using ShellForge.Cli.Printing;
using ShellForge.Cli.Reading;
using ShellForge.Cli.Writing;
using ShellForge.Coupons;
using ShellForge.Coupons.Files;
using ShellForge.Output.Files;
using ShellForge.Output.Words;
using ShellForge.Planning;

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
            Description =
                $"What to try: {string.Join(", ", CouponKinds.All.Select(kind => kind.Name))}, or {FitSlicePrint.Name} of a board; "
                    + "a board file alone picks what its housing depends on; nothing lists them",
            Arity = ArgumentArity.ZeroOrMore,
        };
        var printer = new Option<string?>("--printer")
        {
            Description = $"The printer, by default the board's or {UsualPrinter}",
            HelpName = "NAME"
        };
        var filament = new Option<string?>("--filament")
        {
            Description = $"The filament, by default the board's or {UsualFilament}",
            HelpName = "NAME"
        };
        var insert = new Option<string?>("--insert") { Description = "The insert in your drawer, by its body", HelpName = "NAME" };
        var plug = new Option<string?>("--plug")
        {
            Description = "The connector that your plug goes into, by its package",
            HelpName = "NAME"
        };
        var around =
            new Option<double?>("--around")
            {
                Description = "The value that the steps lie around, where an earlier coupon pointed there",
                HelpName = "MM"
            };
        var board =
            new Option<string?>("--board")
            {
                Description =
                "A board file: its printer, filament, insert and plug are used, and a fit slice is cut from its housing",
                HelpName = "BOARD"
            };
        var folder = new Option<string>("--output", "-o")
        {
            Description = "Folder to write into",
            HelpName = "DIR",
            DefaultValueFactory = _ => "coupon"
        };
        Option<bool> json = SharedOptions.Json();
        Option<bool> quiet = SharedOptions.Quiet();
        var command = new Command("coupon", "Make small test prints that tell what your printer does with a filament")
        {
            kinds, board, printer, filament, insert, plug, around, folder, json, quiet,
        };
        command.SetAction(parsed => (int)Run(bench, new Asked(
            parsed.GetValue(kinds) ?? [], parsed.GetValue(board), parsed.GetValue(printer), parsed.GetValue(filament),
            parsed.GetValue(insert), parsed.GetValue(plug),
            parsed.GetValue(around), parsed.GetRequiredValue(folder), parsed.GetValue(json), parsed.GetValue(quiet))));
        return command;
    }

    private static ExitCode Run(Workbench bench, Asked asked)
    {
        if (asked.Board is null && Array.FindIndex(asked.Kinds, IsFile) is >= 0 and int place)
        {
            asked = asked with { Board = asked.Kinds[place], Kinds = [.. asked.Kinds.Where((_, i) => i != place)] };
        }

        if (asked.Kinds.Length == 0 && asked.Board is null)
        {
            foreach (CouponKind kind in CouponKinds.All)
            {
                bench.Out.Write($"{kind.Name.PadRight(16)}{kind.Tells}\n");
            }

            bench.Out.Write($"{FitSlicePrint.Name.PadRight(16)}{FitSlicePrint.Tells}\n");
            return ExitCode.Done;
        }

        BoardSource? source = asked.Board is null ? null : BoardSource.Read(asked.Board, [], bench);
        if (source is { File: null })
        {
            return BadBoardReport.Print(source, bench, null);
        }

        ProfileLoadResult loaded = UserProfiles.Load(source is null ? bench.Folder : Path.GetDirectoryName(source.Path), bench);
        DiagnosticsText.Write(loaded.Diagnostics, bench, errorsOnly: false);
        if (loaded.Diagnostics.Any(diagnostic => diagnostic.IsError))
        {
            return ExitCode.BadInput;
        }

        var faults = new List<string>();
        CouponWish? wish = Wish(asked, source?.File, loaded.Library, faults);
        CouponKind[] kinds =
            [.. asked.Kinds.Distinct().Where(name => name != FitSlicePrint.Name).Select(name => Kind(name, faults)).OfType<CouponKind>()];
        if (asked.Kinds.Contains(FitSlicePrint.Name) && (source is null || kinds.Length > 0))
        {
            faults.Add(source is null ? $"{FitSlicePrint.Name} is cut from a housing: name its board file, --board BOARD"
                : $"{FitSlicePrint.Name} is a print of its own: ask for it alone");
        }

        ImmutableArray<(CouponKind Kind, CouponWish Wish)> wanted = wish is null ? []
            : asked.Kinds.Length > 0 ? [.. kinds.Select(kind => (kind, wish))]
            : Picked(bench, source!.File!, asked, wish, loaded.Library);
        faults.AddRange(wanted
            .Select(each => each.Kind.Lacks(each.Wish) is { } lack ? $"{each.Kind.Name}: {lack}" : null).OfType<string>());

        if (asked.Around is not null && wanted.Length > 1)
        {
            faults.Add("--around holds for one kind of coupon; name that one alone");
        }

        if (faults.Count > 0)
        {
            foreach (string fault in faults)
            {
                bench.Complain($"shellforge: {fault}");
            }

            return ExitCode.BadInput;
        }

        if (wanted.IsEmpty)
        {
            return FitSlicePrint.Make(bench, source!.File!, asked.Folder, asked.Quiet);
        }

        ImmutableArray<MadeCoupon> made =
            [.. wanted.Select(each => CouponMaker.Make(each.Kind.Draw(each.Wish), bench.Cancel))];
        string path = bench.FullPath(asked.Folder);
        ImmutableArray<OutputFile> files = CouponFiles.Of(made);
        bool isOurs = BoundedFile.Read(Path.Combine(path, CouponFiles.AnswersFile), TextFile.LongestBytes) is { } there
            && Encoding.UTF8.GetString(there).Contains(FormatName.OfAnyVersion(AnswerFileReader.Format), StringComparison.Ordinal);
        OthersFiles.Refuse(path, files, isOurs);
        StagedFiles.Write(
            path, OthersFiles.WithKept(path, files, TextFile.LongestBytes, mayHoldWork: file => file.Name == CouponFiles.AnswersFile));
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
                    $"{coupon.Coupon.Name}: {coupon.Coupon.Kind.Tells}; {PrintEstimate.Duration(coupon.Estimate.Minutes)}, "
                        + $"{coupon.Estimate.Grams:0.0} g"
                        + $"{(coupon.IsLong ? $"; longer than half an hour on {coupon.Coupon.Wish.Printer.Name}" : "")}\n"));
            }

            if (made.Length > 1)
            {
                (double minutes, double grams) = CouponMaker.Together(made);
                int plates = files.Count(file => file.Name.EndsWith(".3mf", StringComparison.Ordinal));
                bench.Out.Write(string.Create(
                    CultureInfo.InvariantCulture,
                    $"{(plates == 1 ? "in one print" : $"on {plates} plates")}: {PrintEstimate.Duration(minutes)}, "
                        + $"{grams:0.0} g\n"));
            }

            bench.Out.Write(
                $"{asked.Folder}: {files.Length} files; coupon.txt says what to do. Then: shellforge calibrate "
                    + $"{ShellWord.OfPath(Path.Combine(asked.Folder, CouponFiles.AnswersFile))}\n");
        }
    }

    // What this housing depends on, told with the reason.
    private static ImmutableArray<(CouponKind Kind, CouponWish Wish)> Picked(
        Workbench bench, BoardFile board, Asked asked, CouponWish wish, ProfileLibrary library)
    {
        ImmutableArray<BoardCoupon> picked = BoardCoupons.Of(
            HousingPlanner.Plan(board), asked.Insert is null ? wish with { Insert = null } : wish, library);
        if (!asked.Quiet && !asked.Json)
        {
            foreach (BoardCoupon coupon in picked)
            {
                string left = coupon.Kind.Lacks(coupon.Wish) is { } lack ? $"; left out, {lack}" : "";
                bench.Out.Write($"{coupon.Wish.NameOf(coupon.Kind)}: {coupon.Why}{left}\n");
            }
        }

        return [.. picked.Where(coupon => coupon.Kind.Lacks(coupon.Wish) is null).Select(coupon => (coupon.Kind, coupon.Wish))];
    }

    private static CouponWish? Wish(Asked asked, BoardFile? board, ProfileLibrary library, List<string> faults)
    {
        PrinterProfile? printer = Named(library.Printers, asked.Printer ?? board?.Print.Printer.Name ?? UsualPrinter, "a printer", library,
            faults);
        FilamentProfile? filament = Named(library.Filaments, asked.Filament ?? board?.Print.Shell.Name ?? UsualFilament, "a filament",
            library, faults);
        string? insertName = asked.Insert ?? board?.Housing.Insert?.Name;
        InsertProfile? insert = insertName is null ? null : Named(library.Inserts, insertName, "an insert", library, faults);
        string? plugName = asked.Plug ?? board?.Board.Parts.FirstOrDefault(part => part.Mouth is not null)?.Package?.Name;
        PackageProfile? plug = plugName is null ? null : Named(library.Packages, plugName, "a package", library, faults);
        return printer is null || filament is null
            ? null
            : new CouponWish(printer, CouponWish.Measured(library, printer, filament))
            {
                Insert = insert,
                Plug = plug,
                Around = asked.Around
            };
    }

    // No kind of coupon has a dot in its name.
    private static bool IsFile(string name) => Path.HasExtension(name);

    private static T? Named<T>(ProfileShelf<T> shelf, string name, string what, ProfileLibrary library, List<string> faults)
        where T : class
    {
        T? found = shelf.Find(name);
        if (found is null)
        {
            string nearest = shelf.Nearest(name) is { } near ? $"; did you mean '{near}'?" : "; 'shellforge profiles' lists them";
            faults.Add(library.KindOf(name) is { } other ? $"'{name}' is {other}, not {what}"
                : $"there is no profile '{name}' of {what}{nearest}");
        }

        return found;
    }

    private static CouponKind? Kind(string name, List<string> faults)
    {
        CouponKind? kind = CouponKinds.Find(name);
        if (kind is null)
        {
            faults.Add(IsFile(name)
                ? $"'{name}' is a second board file; a coupon is made for one board"
                : $"there is no coupon '{name}'; expected {string.Join(", ", CouponKinds.All.Select(each => each.Name))} or "
                    + $"{FitSlicePrint.Name}");
        }

        return kind;
    }

    private sealed record Asked(
        string[] Kinds, string? Board, string? Printer, string? Filament, string? Insert, string? Plug, double? Around, string Folder,
        bool Json,
        bool Quiet);
}
