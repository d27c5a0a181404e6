namespace ShellForge.Cli.Reading;

/// <summary>A file can be read, and is of another kind than the one that is asked for.</summary>
/// <param name="message">Which file, what it is, and what takes it.</param>
internal sealed class WrongFileException(string message) : IOException(message);
