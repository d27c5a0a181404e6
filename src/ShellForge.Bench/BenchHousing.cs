using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Diagnostics;
using ShellForge.Checks.Gauges;
using ShellForge.Output.Files;
using ShellForge.Output.Page;
using ShellForge.Output.Page.Building;
using ShellForge.Pipeline;
using ShellForge.Planning.Remembering;

namespace ShellForge.Bench;

/// <summary>
/// The housing of a board file that is being worked on; numbers that are tried stand in place of the file's. It is computed when it is
/// asked for, first to look at, then with everything the rules say.
/// </summary>
/// <param name="board">The board file.</param>
/// <param name="mostKept">Going back to a number that was just tried should cost nothing: how many housings are kept.</param>
/// <param name="progress">Told each stage as it begins.</param>
public sealed class BenchHousing(IBenchBoard board, int mostKept, Action<BenchStage>? progress = null)
{
    private readonly Lock _turn = new();
    private readonly List<Kept> _kept = [];

    // From one save to the next most of a housing stays as it is.
    private readonly WorkMemory _memory = new();

    /// <summary>The page for the file with numbers in place of its own.</summary>
    /// <param name="tried">The numbers, each as <c>path=value</c>.</param>
    /// <param name="draft">A text that stands in place of the file's; null for the file's own.</param>
    /// <param name="isChecked">Whether the rules are to be run.</param>
    /// <param name="cancel">Stops the computation.</param>
    public BenchPage Page(ImmutableArray<string> tried, string? draft, bool isChecked, CancellationToken cancel)
    {
        // One computation at a time: it takes all cores.
        lock (_turn)
        {
            (Kept kept, long version) = Of(tried, draft, cancel);
            if (kept.Mistakes is { } mistakes)
            {
                return new BenchPage(null, mistakes);
            }

            HousingUnderCheck drawn = Drawn(kept, cancel);
            MadeHousing? made = isChecked ? Made(kept, cancel) : null;
            var live = new PageLive(version, PageTries.Of(drawn.Plan), isChecked);
            progress?.Invoke(made is null ? BenchStage.Show : BenchStage.Page);
            return new BenchPage(
                made is null ? PageBuilder.OfUnchecked(drawn, live)
                    : HousingFiles.PageOf(DrawnFiles.OfPage(made.Housing), made.Report) with { Live = live },
                []);
        }
    }

    /// <summary>What is wrong with the file; nothing is computed.</summary>
    /// <param name="tried">Numbers in place of the file's, each as <c>path=value</c>.</param>
    /// <param name="draft">A text that stands in place of the file's; null for the file's own.</param>
    public ImmutableArray<PageMistake> Mistakes(ImmutableArray<string> tried, string? draft) => Read("", tried, draft).Mistakes ?? [];

    /// <summary>The files of the housing as <c>make</c> writes them.</summary>
    /// <param name="tried">Numbers in place of the file's, each as <c>path=value</c>.</param>
    /// <param name="draft">A text that stands in place of the file's; null for the file's own.</param>
    /// <param name="cancel">Stops the computation.</param>
    public (ImmutableArray<OutputFile> Files, ImmutableArray<PageMistake> Mistakes) Files(
        ImmutableArray<string> tried, string? draft, CancellationToken cancel)
    {
        lock (_turn)
        {
            (Kept kept, _) = Of(tried, draft, cancel);
            if (kept.Mistakes is { } mistakes)
            {
                return ([], mistakes);
            }

            MadeHousing made = Made(kept, cancel);
            if (kept.Files is null)
            {
                progress?.Invoke(BenchStage.Files);
                kept.Files = MadeFiles.Of(made, DrawnFiles.Of(made.Housing, OutputFormat.Usual), kept.Reading!.Text);
            }

            return (kept.Files.Value, []);
        }
    }

    private HousingUnderCheck Drawn(Kept kept, CancellationToken cancel)
    {
        kept.Drawn ??= HousingPipeline.Draw(
            kept.Reading!.File!, stage => progress?.Invoke(stage == PipelineStage.Plan ? BenchStage.Plan : BenchStage.Parts), _memory,
            cancel);
        Keep(kept);
        return kept.Drawn;
    }

    private MadeHousing Made(Kept kept, CancellationToken cancel)
    {
        HousingUnderCheck drawn = Drawn(kept, cancel);
        if (kept.Made is null)
        {
            progress?.Invoke(BenchStage.Checks);
            kept.Made = HousingPipeline.Check(drawn, cancel: cancel);
        }

        return kept.Made;
    }

    private (Kept Kept, long Version) Of(ImmutableArray<string> tried, string? draft, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        long version = board.Version;
        string key = string.Join('\n', [version.ToString(CultureInfo.InvariantCulture), .. tried, draft is null ? "" : "draft:" + draft]);
        return (_kept.FirstOrDefault(each => each.Key == key) ?? Read(key, tried, draft), version);
    }

    private Kept Read(string key, ImmutableArray<string> tried, string? draft)
    {
        try
        {
            BenchReading reading = board.Read(draft, tried);
            return new Kept(key) { Reading = reading, Mistakes = reading.File is null ? Mistakes(reading) : null };
        }
        catch (IOException e)
        {
            // Between two writes of an editor, or gone: told like a mistake, and looked at again at the next save.
            return new Kept(key) { Mistakes = [new PageMistake(e.Message, "")] };
        }
    }

    private ImmutableArray<PageMistake> Mistakes(BenchReading reading)
    {
        string[] lines = reading.Text.Split('\n');
        return
        [
            .. reading.Diagnostics.Where(diagnostic => diagnostic.IsError).Select(diagnostic => InBoardFile(diagnostic, lines)
                ? new PageMistake(diagnostic.ToString(), lines[diagnostic.Line - 1].TrimEnd(), diagnostic.Line, diagnostic.Column)
                : new PageMistake(diagnostic.ToString(), "")),
        ];
    }

    private bool InBoardFile(Diagnostic diagnostic, string[] lines) =>
        diagnostic.Line >= 1 && diagnostic.Line <= lines.Length && Path.GetFileName(diagnostic.File) == Path.GetFileName(board.Name);

    private void Keep(Kept kept)
    {
        _kept.Remove(kept);
        _kept.Add(kept);
        if (_kept.Count > mostKept)
        {
            _kept.RemoveAt(0);
        }
    }

    private sealed class Kept(string key)
    {
        public string Key { get; } = key;

        public BenchReading? Reading { get; init; }

        public ImmutableArray<PageMistake>? Mistakes { get; init; }

        public HousingUnderCheck? Drawn { get; set; }

        public MadeHousing? Made { get; set; }

        public ImmutableArray<OutputFile>? Files { get; set; }
    }
}

/// <summary>A page, or what is wrong with the file.</summary>
/// <param name="Content">The page; null when there are mistakes.</param>
/// <param name="Mistakes">Mistakes.</param>
public sealed record BenchPage(PageContent? Content, ImmutableArray<PageMistake> Mistakes);
