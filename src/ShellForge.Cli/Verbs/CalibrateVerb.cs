using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Answers;
using ShellForge.Cli.Measuring;
using ShellForge.Cli.Printing;
using ShellForge.Cli.Reading;
using ShellForge.Cli.Writing;
using ShellForge.Coupons;
using ShellForge.Coupons.Answers;
using ShellForge.Coupons.Calibrating;
using ShellForge.Output.Files;
using ShellForge.Output.Words;

namespace ShellForge.Cli.Verbs;

/// <summary><c>calibrate</c>: what coupons say of the printer goes into the user's profiles.</summary>
internal static class CalibrateVerb
{
    public static Command Create(Workbench bench)
    {
        var answers =
            new Argument<string>("ANSWERS") { Description = "The file of answers that 'coupon' wrote; what is still empty in it is asked" };
        var folder = new Option<string?>("--output", "-o")
        {
            Description =
                "Folder of profiles to write into; by default 'profiles' beside the board file, else in your configuration folder",
            HelpName = "DIR",
        };
        var board = new Option<string?>("--board") { Description = "A board file to show before and after", HelpName = "BOARD" };
        Option<bool> quiet = SharedOptions.Quiet();
        var command = new Command("calibrate", "Put what coupons say of your printer into your own profiles") { answers, folder, board,
            quiet };
        command.SetAction(parsed => (int)Run(
            bench, parsed.GetRequiredValue(answers), parsed.GetValue(folder), parsed.GetValue(board), parsed.GetValue(quiet)));
        return command;
    }

    private static ExitCode Run(Workbench bench, string name, string? folder, string? board, bool quiet)
    {
        string? boardFolder = board is null ? bench.Folder : Path.GetDirectoryName(bench.FullPath(board));
        ProfileLoadResult loaded = UserProfiles.Load(boardFolder, bench);
        AnswerReadResult read = AnswerFileReader.Read(name, TextFile.Read(bench.FullPath(name), name), loaded.Library);
        DiagnosticsText.Write([.. loaded.Diagnostics, .. read.Diagnostics], bench, errorsOnly: false);
        if (read.File is not { } file || loaded.Diagnostics.Any(diagnostic => diagnostic.IsError))
        {
            return ExitCode.BadInput;
        }

        (ImmutableArray<OpenQuestion> open, ImmutableArray<CalibrationFault> faults) = Calibration.Questions(file);
        if (faults.Length > 0)
        {
            return Refuse(bench, faults);
        }

        if (AnswersAsked.All(bench, open, quiet) is not { } asked)
        {
            return Refuse(bench, open.Select(question => new CalibrationFault(
                question.Place, $"{question.Kind.Name}, {question.Question.Key} has no answer; expected {question.Question.Expected}")));
        }

        Calibration calibration = Calibration.Of(file, asked.Answers, loaded.Library, asked.LeftOut);
        if (calibration.Faults.Length > 0)
        {
            return Refuse(bench, calibration.Faults);
        }

        BoardBeforeAfter? beside = board is null ? null : BoardBeforeAfter.Before(board, bench);
        if (beside is { Source.File: null })
        {
            return BadBoardReport.Print(beside.Source, bench, null);
        }

        ImmutableArray<OutputFile> files = MeasuredProfiles.Files(calibration, file.Printer.Name, loaded.Library, bench.Today);
        string into = folder is not null ? bench.FullPath(folder)
            : board is not null ? Path.Combine(boardFolder!, UserProfiles.FolderName)
            : Path.Combine(bench.ConfigFolder ?? bench.Folder, UserProfiles.FolderName);
        if (files.Length > 0)
        {
            // Profiles that were added by hand stay beside what is measured.
            StagedFiles.Write(into, OthersFiles.WithKept(into, files, TextFile.LongestBytes));
        }

        if (!quiet)
        {
            Tell(bench, calibration, into, files);
            TellWhetherUsed(bench, calibration, file, UserProfiles.Load(boardFolder, bench).Library);
            beside?.TellAfter(bench);
        }

        return ExitCode.Done;
    }

    private static ExitCode Refuse(Workbench bench, IEnumerable<CalibrationFault> faults)
    {
        foreach (CalibrationFault fault in faults)
        {
            bench.Complain(
                string.Create(CultureInfo.InvariantCulture,
                    $"{fault.Place.File}:{fault.Place.Line}:{fault.Place.Column}: {fault.Message}"));
        }

        bench.Complain("shellforge: nothing is written");
        return ExitCode.BadInput;
    }

    private static void Tell(Workbench bench, Calibration calibration, string into, ImmutableArray<OutputFile> files)
    {
        foreach (CouponFound found in calibration.Found)
        {
            foreach (MeasuredValue value in found.Values)
            {
                bench.Out.Write(
                    string.Create(CultureInfo.InvariantCulture, $"{found.Kind.Name}: {value.Words} {value.Value:0.#####} {value.Unit}")
                        .TrimEnd() + "\n");
            }
        }

        foreach (string note in calibration.Notes)
        {
            bench.Out.Write(note + "\n");
        }

        foreach (NextCoupon next in calibration.Next)
        {
            bench.Out.Write($"{next.After.Name}: no step fits. Print the next one: {CommandOf(next)}\n");
        }

        foreach (OutputFile file in files)
        {
            bench.Out.Write($"written: {Path.Combine(into, file.Name)}\n");
        }
    }

    private static string CommandOf(NextCoupon next)
    {
        CouponWish wish = next.Wish;
        string insert = next.Kind.NeedsInsert && wish.Insert is { } own ? $" --insert {ShellWord.Of(own.Name)}" : "";
        string plug = next.Kind.NeedsPlug && wish.Plug is { } into ? $" --plug {ShellWord.Of(into.Name)}" : "";
        string around = wish.Around is { } value ? string.Create(CultureInfo.InvariantCulture, $" --around {value:0.###}") : "";
        return $"shellforge coupon {next.Kind.Name} --printer {ShellWord.Of(wish.Printer.Name)} "
            + $"--filament {ShellWord.Of(wish.Filament.Name)}{insert}{plug}{around}";
    }

    // Another file of the user's may give a profile of the same name, and come first.
    private static void TellWhetherUsed(Workbench bench, Calibration calibration, AnswerFile answers, ProfileLibrary library)
    {
        foreach (CouponFound found in calibration.Found)
        {
            string filament = found.Wish.Filament.Name;
            PairingProfile? pairing = library.PairingOf(answers.Printer.Name, filament);
            string source = MeasuredProfiles.Source(bench.Today, found.Kind);
            bool used = found.Values.All(value => value.Shelf == MeasuredShelf.Filament
                ? library.Filaments.Find(filament)?.TransmissionLength.Source == source
                : pairing?.Readings.Any(
                    reading => reading.Coupon == found.Record && reading.Raw.EndsWith(found.Raw, StringComparison.Ordinal)) == true);
            if (!used)
            {
                bench.Complain(
                    $"shellforge: what {found.Kind.Name} says is written but not used: another profile file of yours names the same, or "
                        + $"this folder is none that is read ('profiles' beside the board file, or in your configuration folder)");
            }
        }
    }
}
