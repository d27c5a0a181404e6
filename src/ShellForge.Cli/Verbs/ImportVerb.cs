using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Parsing;
using System.Text;
using ShellForge.Board.Diagnostics;
using ShellForge.Board.Profiles;
using ShellForge.Board.Schema;
using ShellForge.Board.Yaml;
using ShellForge.Cli.Printing;
using ShellForge.Cli.Reading;
using ShellForge.Cli.Writing;
using ShellForge.Geometry.Numerics;
using ShellForge.Import;
using ShellForge.Import.Files;
using ShellForge.Import.Writing;
using ShellForge.Output.Files;

namespace ShellForge.Cli.Verbs;

/// <summary><c>import</c>: hand-over files of a layout program become a board file and a picture of it.</summary>
internal static class ImportVerb
{
    public static Command Create(Workbench bench)
    {
        var files = new Argument<string[]>("FILES-OR-FOLDER")
        {
            Description = "IDF, Gerber, drill, placement, DXF and job files of one board, or a folder with them",
            Arity = ArgumentArity.OneOrMore,
        };
        var output = new Option<string?>("--output", "-o")
        {
            Description = "The board file to write; the picture goes beside it as .svg. Not needed with --json",
            HelpName = "board.yaml",
        };
        var name = new Option<string?>("--name")
        {
            Description = "What the housing is called; the board file's name when not given",
            HelpName = "name"
        };
        var shift = new Option<Point2?>("--shift")
        {
            Description = "Added to the placement's coordinates, mm, where its origin is another one than the outline's",
            HelpName = "x,y",
            CustomParser = ReadShift,
        };
        var unit = new Option<string?>("--drawing-unit") { Description = "Unit of DXF drawings that name none" };
        OneOf.Accept(unit, "mm", "inch", "mil");
        Option<bool> json = SharedOptions.Json();
        Option<bool> quiet = SharedOptions.Quiet();
        var command = new Command("import", "Read ECAD hand-over files into a board file, saying what came from where and what is missing")
        {
            files, output, name, shift, unit, json, quiet,
        };
        command.Validators.Add(result =>
        {
            if (result.GetResult(output) is null && result.GetResult(json) is null)
            {
                result.AddError("say where to write with -o board.yaml, or ask for --json");
            }
        });
        command.SetAction(parsed => (int)Run(bench, new Asked(
            parsed.GetRequiredValue(files), parsed.GetValue(output), parsed.GetValue(name), parsed.GetValue(shift), parsed.GetValue(unit),
            parsed.GetValue(json), parsed.GetValue(quiet))));
        return command;
    }

    private static ExitCode Run(Workbench bench, Asked asked)
    {
        string? target = asked.Output is null ? null : bench.FullPath(asked.Output);
        if (target is not null && (Path.GetFileName(target) == EditorSchema.FileName || PictureOf(target) == Path.GetFileName(target)))
        {
            throw new WrongFileException(
                $"-o {asked.Output}: import writes another file of this name; name a board file, such as board.yaml");
        }

        (IReadOnlyList<EcadFile> files, IReadOnlyList<Diagnostic> loading) = EcadFileLoader.Load(asked.Files, bench.Folder);
        ProfileLoadResult profiles = UserProfiles.Load(target is null ? null : Path.GetDirectoryName(target), bench);
        bool readable = !loading.Any(d => d.IsError);
        ImportResult result = EcadImport.Run(readable ? files : [], new ImportOptions
        {
            Name = asked.Name ?? (target is null ? "Imported board" : Path.GetFileNameWithoutExtension(target)),
            PartsShift = asked.Shift,
            DrawingUnit = asked.Unit switch { "mm" => 1, "inch" => 25.4, "mil" => 0.0254, _ => null },
            Profiles = profiles.Library,
        }, bench.Cancel);

        // With nothing read the import has only that to say.
        ImmutableArray<Diagnostic> told = [.. profiles.Diagnostics, .. loading, .. readable ? result.Diagnostics : []];
        ExitCode exit = loading.Any(d => d is { IsError: true, Code: EcadFileLoader.ReadTrouble }) ? ExitCode.FileTrouble
            : told.Any(d => d.IsError) ? ExitCode.BadInput
            : ExitCode.Done;
        IReadOnlyList<string> written = exit == ExitCode.Done && target is not null ? Write(target, result) : [];
        if (asked.Json)
        {
            JsonOut.Write(bench, ImportJson.Text(result, told));
            return exit;
        }

        DiagnosticsText.Write(told, bench, asked.Quiet);
        if (!asked.Quiet)
        {
            foreach (string file in written)
            {
                bench.Out.WriteLine($"wrote {Path.GetRelativePath(bench.Folder, file)}");
            }

            int todo = exit == ExitCode.Done ? TodoLine.FindAll(BoardFileWriter.Text(result)).Length : 0;
            if (todo > 0)
            {
                bench.Out.WriteLine($"{FindingsText.Counted(todo, "line")} still to do in it: search for TODO");
            }
        }

        return exit;
    }

    private static string PictureOf(string target) => Path.GetFileNameWithoutExtension(target) + ".svg";

    // An earlier board file or picture may hold a person's work: it stays beside the new one.
    private static List<string> Write(string target, ImportResult result)
    {
        string folder = Path.GetDirectoryName(target)!;
        string name = Path.GetFileName(target);
        byte[] text = Encoding.UTF8.GetBytes(BoardFileWriter.Text(result));
        var board = new OutputFile(name, text);
        var picture = new OutputFile(PictureOf(target), Encoding.UTF8.GetBytes(BoardPicture.Svg(result)));
        OutputFile[] files =
        [
            board,
            new OutputFile(EditorSchema.FileName, Encoding.UTF8.GetBytes(BoardSchema.Json())),
            picture,
        ];
        IReadOnlyList<OutputFile> written = OthersFiles.WithKept(
            folder, files, EcadLimits.FileBytes, mayHoldWork: file => file == board || file == picture);
        StagedFiles.Write(folder, written);
        return [.. written.Select(f => Path.Combine(folder, f.Name))];
    }

    private static Point2? ReadShift(ArgumentResult argument)
    {
        string[] sides = argument.Tokens.Count == 1 ? argument.Tokens[0].Value.Split(',') : [];
        if (sides.Length == 2 && TryNumber(sides[0], out double x) && TryNumber(sides[1], out double y))
        {
            return new Point2(x, y);
        }

        argument.AddError("--shift takes two lengths in mm, such as 100,-42.5");
        return null;
    }

    private static bool TryNumber(string text, out double value) =>
        double.TryParse(text, System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out value)
        && Math.Abs(value) <= 1e6;

    private sealed record Asked(string[] Files, string? Output, string? Name, Point2? Shift, string? Unit, bool Json, bool Quiet);
}
