using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Diagnostics;
using ShellForge.Board.Profiles;
using ShellForge.Checks.Gauges;
using ShellForge.Cli.Reading;
using ShellForge.Output.Files;
using ShellForge.Output.Page;
using ShellForge.Output.Page.Building;
using ShellForge.Pipeline;
using ShellForge.Planning.Remembering;

namespace ShellForge.Cli.Viewing;

/// <summary>
/// The housing of a board file that is being worked on. The file is read again at each save; numbers that are tried stand in place of
/// the file's. A housing is computed when it is asked for, first to look at, then with everything the rules say.
/// </summary>
internal sealed class ViewedHousing(string boardName, ImmutableArray<string> set, Workbench bench)
{
    // Going back to a number that was just tried should cost nothing.
    private const int MostKept = 6;

    private readonly Lock _turn = new();
    private readonly List<Kept> _kept = [];

    // From one save to the next most of a housing stays as it is.
    private readonly WorkMemory _memory = new();
    private readonly List<TaskCompletionSource<long>> _waiting = [];
    private long _version = 1;

    /// <summary>Counts the saves of the file.</summary>
    public long Version => Interlocked.Read(ref _version);

    /// <summary>How many wait for the next save.</summary>
    public int Waiting
    {
        get
        {
            lock (_waiting)
            {
                return _waiting.Count;
            }
        }
    }

    /// <summary>To be called after each save.</summary>
    public void FileChanged()
    {
        lock (_waiting)
        {
            long now = Interlocked.Increment(ref _version);
            foreach (TaskCompletionSource<long> waiting in _waiting)
            {
                waiting.TrySetResult(now);
            }

            _waiting.Clear();
        }
    }

    /// <summary>Waits for a save after a version.</summary>
    public async Task<long> NextVersion(long seen, CancellationToken cancel)
    {
        var next = new TaskCompletionSource<long>(TaskCreationOptions.RunContinuationsAsynchronously);
        lock (_waiting)
        {
            if (Version != seen)
            {
                return Version;
            }

            _waiting.Add(next);
        }

        await using CancellationTokenRegistration stopped = cancel.Register(() => next.TrySetCanceled(cancel));
        try
        {
            return await next.Task;
        }
        finally
        {
            // Those who leave before the next save are not kept until then.
            lock (_waiting)
            {
                _waiting.Remove(next);
            }
        }
    }

    /// <summary>The page for the file with numbers in place of its own.</summary>
    /// <param name="tried">The numbers, each as <c>path=value</c>.</param>
    /// <param name="draft">A text that stands in place of the file's; null for the file's own.</param>
    /// <param name="isChecked">Whether the rules are to be run.</param>
    /// <param name="cancel">Stops the computation.</param>
    public ViewedPage Page(ImmutableArray<string> tried, string? draft, bool isChecked, CancellationToken cancel)
    {
        // One computation at a time: it takes all cores.
        lock (_turn)
        {
            (Kept kept, long version) = Of(tried, draft, cancel);
            if (kept.Mistakes is { } mistakes)
            {
                return new ViewedPage(null, mistakes);
            }

            HousingUnderCheck drawn = Drawn(kept, cancel);
            MadeHousing? made = isChecked ? Made(kept, cancel) : null;
            var live = new PageLive(version, PageTries.Of(drawn.Plan), isChecked);
            return new ViewedPage(
                made is null ? PageBuilder.OfUnchecked(drawn, live)
                    : HousingFiles.PageOf(DrawnFiles.OfPage(made.Housing), made.Report) with { Live = live },
                []);
        }
    }

    /// <summary>The profiles that the board file can name.</summary>
    /// <exception cref="IOException">One can't be read.</exception>
    public ProfileLibrary Profiles() => UserProfiles.Load(Path.GetDirectoryName(bench.FullPath(boardName)), bench).Library;

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
            kept.Files ??= HousingFiles.Of(DrawnFiles.Of(made.Housing, OutputFormat.Usual), made.Report);
            return (kept.Files.Value, []);
        }
    }

    private HousingUnderCheck Drawn(Kept kept, CancellationToken cancel)
    {
        kept.Drawn ??= HousingPipeline.Draw(kept.Source!.File!, memory: _memory, cancel: cancel);
        Keep(kept);
        return kept.Drawn;
    }

    private MadeHousing Made(Kept kept, CancellationToken cancel)
    {
        HousingUnderCheck drawn = Drawn(kept, cancel);
        return kept.Made ??= HousingPipeline.Check(drawn, cancel: cancel);
    }

    private (Kept Kept, long Version) Of(ImmutableArray<string> tried, string? draft, CancellationToken cancel)
    {
        cancel.ThrowIfCancellationRequested();
        long version = Version;
        string key = string.Join('\n', [version.ToString(CultureInfo.InvariantCulture), .. tried, draft is null ? "" : "draft:" + draft]);
        return (_kept.FirstOrDefault(each => each.Key == key) ?? Read(key, tried, draft), version);
    }

    private Kept Read(string key, ImmutableArray<string> tried, string? draft)
    {
        try
        {
            BoardSource source = draft is null
                ? BoardSource.Read(boardName, [.. set, .. tried], bench)
                : BoardSource.Of(boardName, bench.FullPath(boardName), draft, [.. set, .. tried], bench);
            return new Kept(key) { Source = source, Mistakes = source.File is null ? Mistakes(source) : null };
        }
        catch (IOException e)
        {
            // Between two writes of an editor, or gone: told like a mistake, and looked at again at the next save.
            return new Kept(key) { Mistakes = [new PageMistake(e.Message, "")] };
        }
    }

    private static ImmutableArray<PageMistake> Mistakes(BoardSource source)
    {
        string[] lines = source.Text.Split('\n');
        return
        [
            .. source.Diagnostics.Where(diagnostic => diagnostic.IsError).Select(diagnostic => InBoardFile(diagnostic, source, lines)
                ? new PageMistake(diagnostic.ToString(), lines[diagnostic.Line - 1].TrimEnd(), diagnostic.Line, diagnostic.Column)
                : new PageMistake(diagnostic.ToString(), "")),
        ];
    }

    private static bool InBoardFile(Diagnostic diagnostic, BoardSource source, string[] lines) =>
        diagnostic.Line >= 1 && diagnostic.Line <= lines.Length
        && Path.GetFileName(diagnostic.File) == Path.GetFileName(source.Path);

    private void Keep(Kept kept)
    {
        _kept.Remove(kept);
        _kept.Add(kept);
        if (_kept.Count > MostKept)
        {
            _kept.RemoveAt(0);
        }
    }

    private sealed class Kept(string key)
    {
        public string Key { get; } = key;

        public BoardSource? Source { get; init; }

        public ImmutableArray<PageMistake>? Mistakes { get; init; }

        public HousingUnderCheck? Drawn { get; set; }

        public MadeHousing? Made { get; set; }

        public ImmutableArray<OutputFile>? Files { get; set; }
    }
}

/// <summary>A page, or what is wrong with the file.</summary>
/// <param name="Content">The page; null when there are mistakes.</param>
/// <param name="Mistakes">Mistakes.</param>
internal sealed record ViewedPage(PageContent? Content, ImmutableArray<PageMistake> Mistakes);
