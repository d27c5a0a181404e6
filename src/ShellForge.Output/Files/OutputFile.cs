namespace ShellForge.Output.Files;

/// <summary>A file that is complete in memory and can be written in one go.</summary>
/// <param name="Name">Its name within the output folder.</param>
/// <param name="Content">Its bytes.</param>
public sealed record OutputFile(string Name, byte[] Content);
