using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Diagnostics;
using ShellForge.Board.Profiles;

namespace ShellForge.Bench;

/// <summary>The board file that is worked on.</summary>
public interface IBenchBoard
{
    /// <summary>Its name, as diagnostics give it.</summary>
    string Name { get; }

    /// <summary>Counts its saves.</summary>
    long Version { get; }

    /// <summary>Whether it is only begun: there is no file yet.</summary>
    bool IsBegun { get; }

    /// <summary>Reads it.</summary>
    /// <param name="draft">A text that stands in place of the file's; null for the file's own.</param>
    /// <param name="tried">Numbers in place of the file's, each as <c>path=value</c>.</param>
    /// <exception cref="IOException">It can't be read.</exception>
    BenchReading Read(string? draft, ImmutableArray<string> tried);

    /// <summary>The profiles that it can name.</summary>
    /// <exception cref="IOException">One can't be read.</exception>
    ProfileLibrary Profiles();
}

/// <summary>A board file as it was read.</summary>
/// <param name="Text">Its text.</param>
/// <param name="File">The board; null when there was an error.</param>
/// <param name="Diagnostics">What there is to say about it and about the profiles.</param>
public sealed record BenchReading(string Text, BoardFile? File, ImmutableArray<Diagnostic> Diagnostics);
