
namespace ShellForge.Import.Files;

/// <summary>A file as handed over: its name, for messages and for the few facts that stand nowhere else, and its bytes.</summary>
/// <param name="Name">Name shown to the user, with the folder as far as it helps to tell files apart.</param>
/// <param name="Bytes">The content.</param>
public sealed record EcadFile(string Name, ReadOnlyMemory<byte> Bytes);
