namespace ShellForge.Output.Files;

/// <summary>A file that is complete in memory and can be written in one go.</summary>
/// <param name="Name">Its name within the output folder.</param>
/// <param name="Content">Its bytes.</param>
public sealed record OutputFile(string Name, byte[] Content)
{
    /// <summary>A file from what writes it.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="write">Writes its bytes.</param>
    public static OutputFile Written(string name, Action<Stream> write)
    {
        using var stream = new MemoryStream();
        write(stream);
        return new OutputFile(name, stream.ToArray());
    }
}
