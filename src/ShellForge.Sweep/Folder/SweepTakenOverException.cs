namespace ShellForge.Sweep.Folder;

/// <summary>Another plan was started in the sweep's folder meanwhile: this one stops, so that it doesn't overwrite what is newer.</summary>
public sealed class SweepTakenOverException : IOException
{
    /// <summary>The usual words.</summary>
    public SweepTakenOverException()
        : base("another plan has been started in this folder, so this sweep stops; give each plan a folder of its own")
    {
    }

    /// <summary>Other words.</summary>
    public SweepTakenOverException(string message)
        : base(message)
    {
    }

    /// <summary>Other words with a cause.</summary>
    public SweepTakenOverException(string message, Exception inner)
        : base(message, inner)
    {
    }
}
