namespace ShellForge.Planning.Remembering;

/// <summary>How often a kind of work was asked for.</summary>
/// <param name="Done">Times it was worked out.</param>
/// <param name="Found">Times it was found worked out before.</param>
public readonly record struct WorkCount(int Done, int Found);
