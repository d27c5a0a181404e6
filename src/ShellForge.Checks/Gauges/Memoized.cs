namespace ShellForge.Checks.Gauges;

/// <summary>A value that is worked out by whoever asks first, while others wait for it.</summary>
internal sealed class Memoized<T>
{
    private readonly Lock _gate = new();
    private bool _known;
    private T _value = default!;

    /// <summary>The value.</summary>
    public T Get(Func<T> work)
    {
        lock (_gate)
        {
            if (!_known)
            {
                (_value, _known) = (work(), true);
            }

            return _value;
        }
    }
}
