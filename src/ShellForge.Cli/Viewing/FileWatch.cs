using System.Globalization;
using System.Text;

namespace ShellForge.Cli.Viewing;

/// <summary>
/// Tells when a board file, or a profile beside it, has been saved. The system's notices wake it; since not every file system sends
/// them, it also looks by itself. It waits until the files have been still for a moment: editors write in several goes.
/// </summary>
internal sealed class FileWatch : IDisposable
{
    private static readonly TimeSpan LookAnyway = TimeSpan.FromMilliseconds(700);
    private static readonly TimeSpan Still = TimeSpan.FromMilliseconds(40);

    private readonly string _file;
    private readonly string _profiles;
    private readonly SemaphoreSlim _woken = new(0);
    private readonly List<FileSystemWatcher> _watchers = [];

    /// <summary>Starts watching.</summary>
    /// <param name="file">Full name of the board file.</param>
    public FileWatch(string file)
    {
        _file = file;
        string folder = Path.GetDirectoryName(file)!;
        _profiles = Path.Combine(folder, "profiles");
        foreach (string watched in new[] { folder, _profiles })
        {
            if (Directory.Exists(watched))
            {
                Watch(watched);
            }
        }
    }

    /// <summary>Runs until cancelled; calls back after each save.</summary>
    public async Task Run(Action changed, CancellationToken cancel)
    {
        string seen = Stamp();
        try
        {
            while (true)
            {
                await _woken.WaitAsync(LookAnyway, cancel);
                string now = Stamp();
                while (now != seen)
                {
                    await Task.Delay(Still, cancel);
                    string later = Stamp();
                    if (later == now)
                    {
                        seen = now;
                        changed();
                    }

                    now = later;
                }
            }
        }
        catch (OperationCanceledException)
        {
            // Asked to stop.
        }
    }

    /// <inheritdoc />
    public void Dispose()
    {
        foreach (FileSystemWatcher watcher in _watchers)
        {
            watcher.Dispose();
        }

        _woken.Dispose();
    }

    private void Watch(string folder)
    {
        try
        {
            var watcher = new FileSystemWatcher(folder)
            {
                NotifyFilter = NotifyFilters.FileName | NotifyFilters.LastWrite | NotifyFilters.Size,
            };
            watcher.Changed += Wake;
            watcher.Created += Wake;
            watcher.Renamed += Wake;
            watcher.Deleted += Wake;
            watcher.EnableRaisingEvents = true;
            _watchers.Add(watcher);
        }
        catch (Exception e) when (e is IOException or ArgumentException)
        {
            // No notices to be had from this system (its count of them may be used up): looking by itself has to do.
        }
    }

    private void Wake(object sender, FileSystemEventArgs e)
    {
        try
        {
            if (_woken.CurrentCount == 0)
            {
                _woken.Release();
            }
        }
        catch (ObjectDisposedException)
        {
            // A notice that was under way when the watch ended.
        }
    }

    // Time and length of everything that can change the housing.
    private string Stamp()
    {
        var stamp = new StringBuilder();
        foreach (string path in ProfileFiles().Order(StringComparer.Ordinal).Prepend(_file))
        {
            stamp.Append(path).Append(StampOf(path)).Append(';');
        }

        return stamp.ToString();
    }

    private string[] ProfileFiles()
    {
        try
        {
            return Directory.Exists(_profiles) ? Directory.GetFiles(_profiles, "*.yaml") : [];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Gone since, or not to be looked into: none.
            return [];
        }
    }

    // Of a link, what it leads to.
    private static string StampOf(string path)
    {
        try
        {
            FileSystemInfo info = File.ResolveLinkTarget(path, returnFinalTarget: true) ?? new FileInfo(path);
            return info is FileInfo { Exists: true } file
                ? string.Create(CultureInfo.InvariantCulture, $"{file.LastWriteTimeUtc.Ticks}:{file.Length}") : "none";
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return "none";
        }
    }
}
