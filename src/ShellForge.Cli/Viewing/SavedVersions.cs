namespace ShellForge.Cli.Viewing;

/// <summary>Counts the saves of a board file, and tells those who wait for the next.</summary>
internal sealed class SavedVersions
{
    private readonly List<TaskCompletionSource<long>> _waiting = [];
    private long _version = 1;

    /// <summary>The count.</summary>
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
}
