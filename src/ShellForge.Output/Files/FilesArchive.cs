using System.IO.Compression;

namespace ShellForge.Output.Files;

/// <summary>Files in one archive, to be carried away at once.</summary>
public static class FilesArchive
{
    // Archives know no earlier day; the same files give the same bytes on every other.
    private static readonly DateTimeOffset Day = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>The archive's bytes.</summary>
    /// <param name="files">What goes into it, in order.</param>
    public static byte[] Of(IEnumerable<OutputFile> files)
    {
        using var stream = new MemoryStream();
        using (var archive = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (OutputFile file in files)
            {
                ZipArchiveEntry entry = archive.CreateEntry(file.Name, CompressionLevel.Optimal);
                entry.LastWriteTime = Day;
                using Stream content = entry.Open();
                content.Write(file.Content);
            }
        }

        return stream.ToArray();
    }
}
