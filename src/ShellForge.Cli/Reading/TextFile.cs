using System.Buffers.Binary;
using System.Text;
using ShellForge.Board.Files;

namespace ShellForge.Cli.Reading;

/// <summary>Reads text files that people give, bounded.</summary>
internal static class TextFile
{
    // A board file of a thousand parts has a hundred kilobytes.
    private const int LongestMebibytes = 4;

    /// <summary>More bytes than these have no such file.</summary>
    public const int LongestBytes = LongestMebibytes << 20;

    /// <summary>The whole text.</summary>
    /// <exception cref="IOException">It can't be read, is too long, or is no UTF-8 text.</exception>
    public static string Read(string path, string shownName)
    {
        using Stream stream = Open(path, shownName);
        if (stream.Length > LongestBytes)
        {
            throw TooLong(shownName);
        }

        byte[] content = new byte[stream.Length];
        stream.ReadExactly(content);
        return Of(content, shownName);
    }

    /// <summary>The text that bytes are, when they are a file's.</summary>
    /// <exception cref="IOException">They are too many, or no UTF-8 text.</exception>
    /// <exception cref="WrongFileException">They are another kind of file.</exception>
    public static string Of(byte[] content, string shownName)
    {
        if (content.Length > LongestBytes)
        {
            throw TooLong(shownName);
        }

        if (KindOfMesh(content) is { } kind)
        {
            throw new WrongFileException($"{shownName}: this is {kind}, not a board file; 'inspect' takes it");
        }

        try
        {
            var strict = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);
            return strict.GetString(content.AsSpan().StartsWith("\uFEFF"u8) ? content.AsSpan(3) : content);
        }
        catch (DecoderFallbackException e)
        {
            throw new IOException($"{shownName}: the file is not UTF-8 text (byte {e.Index + 1})", e);
        }
    }

    private static IOException TooLong(string shownName) =>
        new($"{shownName}: the file is longer than {LongestMebibytes} MiB, which no board file is");

    // An archive, or the binary STL that its count of triangles says; null for anything else.
    private static string? KindOfMesh(ReadOnlySpan<byte> content)
    {
        const int head = 84;
        const int triangle = 50;
        return content.StartsWith("PK\u0003\u0004"u8) ? "an archive, such as a 3MF file"
            : content.Length >= head
                && content.Length - head == triangle * (long)BinaryPrimitives.ReadUInt32LittleEndian(content[80..head]) ? "an STL file"
            : null;
    }

    /// <summary>Opens a file so that a failure is told with the name that the user gave.</summary>
    /// <exception cref="IOException">It can't be opened.</exception>
    public static Stream Open(string path, string shownName)
    {
        try
        {
            return BoundedFile.Open(path);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new IOException($"{shownName}: there is no such file", e);
        }
        catch (UnauthorizedAccessException e)
        {
            throw new IOException($"{shownName}: {(Directory.Exists(path) ? "is a folder, not a file" : "may not be read")}", e);
        }
    }
}
