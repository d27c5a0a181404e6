using ShellForge.Import.Drill;
using ShellForge.Import.Dxf;
using ShellForge.Import.Files;
using ShellForge.Import.Gerber;
using ShellForge.Import.Idf;
using ShellForge.Import.Placement;

namespace ShellForge.Import.Merging;

/// <summary>All files of an import, recognised and read one by one.</summary>
internal sealed class ReadFiles
{
    public List<RecognisedFile> All { get; } = [];

    public List<IdfBoardFacts> Boards { get; } = [];

    public List<IdfLibraryFacts> Libraries { get; } = [];

    public List<GerberFacts> Gerbers { get; } = [];

    /// <summary>Gerber files whose attributes say that they are drill layers.</summary>
    public List<GerberFacts> DrillLayers { get; } = [];

    public List<DrillProgram> Drills { get; } = [];

    public List<PlacementFacts> Placements { get; } = [];

    public List<DxfFacts> Drawings { get; } = [];

    public List<JobFacts> Jobs { get; } = [];

    public bool HasNothing =>
        Boards.Count + Gerbers.Count + DrillLayers.Count + Drills.Count + Placements.Count + Drawings.Count + Libraries.Count
            + Jobs.Count == 0;

    public string FirstUseful =>
        All.First(f => f.Kind is not (FileKind.Unknown or FileKind.Accompanying or FileKind.DxfBinary or FileKind.IdfPanel)).File.Name;

    public static ReadFiles Of(IReadOnlyList<EcadFile> files, ImportOptions options, EcadLog log, CancellationToken ct)
    {
        var read = new ReadFiles();
        if (!WithinLimits(files, log))
        {
            return read;
        }

        foreach (EcadFile file in files)
        {
            ct.ThrowIfCancellationRequested();
            RecognisedFile recognised = FileRecognition.Of(file);
            read.Take(recognised, log, ct);

            // The text is needed no longer; only its kind is.
            read.All.Add(recognised with { Text = null });
        }

        read.SetAside(log);
        if (read.Boards.Count > 1)
        {
            log.Error(
                read.Boards[1].File, 1, "ecad-two-boards", $"a second IDF board beside {read.Boards[0].File}",
                "import the files of one board");
        }

        return read;
    }

    private static bool WithinLimits(IReadOnlyList<EcadFile> files, EcadLog log)
    {
        long sum = files.Sum(f => (long)f.Bytes.Length);
        if (files.Count == 0)
        {
            log.Error("", 0, "ecad-no-files", "no files to import", "files or a folder of hand-over files");
        }
        else if (files.Count > EcadLimits.Files)
        {
            log.Error(files[0].Name, 0, "ecad-too-many", $"{files.Count} files", $"at most {EcadLimits.Files}: the files of one board");
        }
        else if (files.FirstOrDefault(f => f.Bytes.Length > EcadLimits.FileBytes) is { } large)
        {
            log.Error(large.Name, 0, "ecad-too-large", $"{large.Bytes.Length / 1048576} MB",
                $"at most {EcadLimits.FileBytes / 1048576} MB for one file");
        }
        else if (sum > EcadLimits.AllBytes)
        {
            log.Error(files[0].Name, 0, "ecad-too-large", $"{sum / 1048576} MB in all", $"at most {EcadLimits.AllBytes / 1048576} MB");
        }

        return !log.HasErrors;
    }

    private void Take(RecognisedFile recognised, EcadLog log, CancellationToken ct)
    {
        SourceText? text = recognised.Text;
        switch (recognised.Kind)
        {
            case FileKind.IdfBoard when IdfReader.Board(text!, log, ct) is { } board:
                Boards.Add(board);
                break;
            case FileKind.IdfLibrary:
                Libraries.Add(IdfReader.Library(text!, log, ct));
                break;
            case FileKind.Gerber:
                GerberFacts gerber = GerberReader.Read(text!, log, ct);
                bool isDrill = gerber.FileFunction.StartsWith("Plated", StringComparison.OrdinalIgnoreCase)
                    || gerber.FileFunction.StartsWith("NonPlated", StringComparison.OrdinalIgnoreCase);
                (isDrill ? DrillLayers : Gerbers).Add(gerber);
                break;
            case FileKind.Drill:
                Drills.Add(DrillParser.Parse(text!, log, ct));
                break;
            case FileKind.Placement:
                Placements.Add(PlacementReader.Read(text!, log, ct));
                break;
            case FileKind.Dxf:
                Drawings.Add(DxfReader.Read(text!, log, ct));
                break;
            case FileKind.JobFile:
                Jobs.Add(JobFileReader.Read(text!, log));
                break;
            default:
                break;
        }
    }

    // Files that can't be used: an error when nothing else is there, a word otherwise.
    private void SetAside(EcadLog log)
    {
        bool hasBoard = Boards.Count + Gerbers.Count + Drawings.Count > 0;
        foreach (RecognisedFile f in All)
        {
            string name = f.File.Name;
            switch (f.Kind)
            {
                case FileKind.IdfPanel when Boards.Count > 0:
                    log.Warn(name, 1, "ecad-panel", "an IDF panel of several boards; set aside, the board file is used");
                    break;
                case FileKind.IdfPanel:
                    log.Error(name, 1, "ecad-panel", "an IDF panel: it places several boards", "export the single board (BOARD_FILE)");
                    break;
                case FileKind.DxfBinary when hasBoard || !HasNothing:
                    log.Warn(name, 0, "dxf-binary", "binary DXF is not read; set aside", "save it as DXF text (ASCII)");
                    break;
                case FileKind.DxfBinary:
                    log.Error(name, 0, "dxf-binary", "binary DXF is not read", "save it as DXF text (ASCII)");
                    break;
                case FileKind.Unknown when f.IsTooLong:
                    log.Error(name, 0, "ecad-too-many", f.Words, "import the files that are wanted, not the whole folder");
                    break;
                case FileKind.Unknown or FileKind.Accompanying when !HasNothing:
                    log.Note(name, 0, "ecad-ignored", $"set aside: {f.Words}");
                    break;
                case FileKind.Unknown or FileKind.Accompanying when All.Count <= 8:
                    log.Error(
                        name, 0, "ecad-unknown-file", $"no hand-over file: {f.Words}",
                        "IDF board and library, Gerber profile, drill file, placement list, DXF text, Gerber job file");
                    break;
                default:
                    break;
            }
        }

        if (HasNothing && !log.HasErrors)
        {
            log.Error(
                All[0].File.Name, 0, "ecad-unknown-file", $"none of the {All.Count} files is a hand-over file of a board",
                "IDF board and library, Gerber profile, drill file, placement list, DXF text, Gerber job file");
        }
    }
}
