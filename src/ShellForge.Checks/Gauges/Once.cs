namespace ShellForge.Checks.Gauges;

/// <summary>A value that is worked out by whoever asks first, while others wait for it.</summary>
internal sealed class Once<T>
{
    private readonly Lock gate = new();
    private bool known;
    private T value = default!;

    /// <summary>The value.</summary>
    public T Get(Func<T> work)
    {
        lock (gate)
        {
            if (!known)
            {
                (value, known) = (work(), true);
            }

            return value;
        }
    }
}
