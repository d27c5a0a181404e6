using System.Globalization;

namespace ShellForge.Testing;

/// <summary>
/// How long readers are tried with spoiled files beyond their usual number: not at all, unless the environment variable
/// SHELLFORGE_FUZZ_MINUTES says for how many minutes.
/// </summary>
public static class FuzzTime
{
    /// <summary>The time that somebody asked for; null where nobody did.</summary>
    public static TimeSpan? Asked { get; } = Environment.GetEnvironmentVariable("SHELLFORGE_FUZZ_MINUTES") is { } minutes
        ? TimeSpan.FromMinutes(double.Parse(minutes, CultureInfo.InvariantCulture)) : null;
}
