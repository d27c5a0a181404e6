using ShellForge.Board.Diagnostics;
using ShellForge.Board.Files;

namespace ShellForge.Import.Files;

/// <summary>Reads hand-over files from disk, never more than the limits allow, whatever the file system says of their size.</summary>
public static class EcadFileLoader
{
    /// <summary>Code of the diagnostic for a file that can't be read at all.</summary>
    public const string ReadTrouble = "ecad-read";

    /// <summary>Reads files and the files of folders (one level deep), in the order of their names.</summary>
    /// <param name="paths">Files or folders.</param>
    /// <param name="folder">The folder that relative names start from; null for the process's own.</param>
    /// <returns>The files, and what could not be read.</returns>
    public static (IReadOnlyList<EcadFile> Files, IReadOnlyList<Diagnostic> Diagnostics) Load(IEnumerable<string> paths,
        string? folder = null)
    {
        var reading = new Reading();
        EcadLog log = reading.Log;
        foreach (string name in paths)
        {
            string path = folder is null ? Path.GetFullPath(name) : Path.GetFullPath(name, folder);
            if (!Directory.Exists(path))
            {
                reading.Add(path, name, explicitly: true);
                continue;
            }

            List<string> inside = [.. Directory.EnumerateFiles(path).Take(EcadLimits.Files + 1).Order(StringComparer.Ordinal)];
            if (inside.Count == 0)
            {
                log.Error(name, 0, "ecad-no-files", "an empty folder", "a folder of hand-over files");
            }
            else if (inside.Count > EcadLimits.Files)
            {
                log.Error(name, 0, "ecad-too-many", $"more than {EcadLimits.Files} files in one folder",
                    "the hand-over files of one board");
                continue;
            }

            foreach (string file in inside)
            {
                reading.Add(file, Path.GetFileName(file), explicitly: false);
            }
        }

        return (reading.Files, log.Closed());
    }

    /// <summary>Files that are in memory already, held to the same limits.</summary>
    /// <param name="files">The files, in order.</param>
    /// <returns>Those that are read, and what is too large or too many.</returns>
    public static (IReadOnlyList<EcadFile> Files, IReadOnlyList<Diagnostic> Diagnostics) Within(IReadOnlyList<EcadFile> files)
    {
        var log = new EcadLog();
        if (files.Count is 0 or > EcadLimits.Files)
        {
            log.Error("files", 0, files.Count == 0 ? "ecad-no-files" : "ecad-too-many", $"{files.Count} files at once",
                $"1 to {EcadLimits.Files} hand-over files of one board");
            return ([], log.Closed());
        }

        long left = EcadLimits.AllBytes;
        var taken = new List<EcadFile>();
        foreach (EcadFile file in files)
        {
            if (file.Bytes.Length > Math.Min(EcadLimits.FileBytes, left))
            {
                log.Add(TooLarge(file.Name, DiagnosticSeverity.Warning));
                continue;
            }

            left -= file.Bytes.Length;
            taken.Add(file);
        }

        return (taken, log.Closed());
    }

    private static Diagnostic TooLarge(string name, DiagnosticSeverity severity) => new(
        name, 0, 0, "ecad-too-large", severity, "too large for a hand-over file; not read",
        $"at most {EcadLimits.FileBytes / 1048576} MB for one file and {EcadLimits.AllBytes / 1048576} MB for all");

    // Each file once, up to the limit of all together.
    private sealed class Reading
    {
        private readonly HashSet<string> _seen = new(StringComparer.Ordinal);
        private long _left = EcadLimits.AllBytes;

        public List<EcadFile> Files { get; } = [];

        public EcadLog Log { get; } = new();

        public void Add(string path, string name, bool explicitly)
        {
            if (!_seen.Add(Path.GetFullPath(path)))
            {
                return;
            }

            try
            {
                using Stream stream = BoundedFile.Open(path);
                int most = (int)Math.Min(EcadLimits.FileBytes, Math.Max(_left, 0)) + 1;
                using var content = new MemoryStream((int)Math.Min(stream.Length, most));
                byte[] buffer = new byte[65536];
                int read;
                while (content.Length < most && (read = stream.Read(buffer, 0, (int)Math.Min(buffer.Length, most - content.Length))) > 0)
                {
                    content.Write(buffer, 0, read);
                }

                if (content.Length >= most)
                {
                    // A folder may hold a large copper layer beside what is wanted; a file that was asked for is another matter.
                    Log.Add(TooLarge(name, explicitly ? DiagnosticSeverity.Error : DiagnosticSeverity.Warning));
                    return;
                }

                Files.Add(new EcadFile(name, content.GetBuffer().AsMemory(0, (int)content.Length)));
                _left -= content.Length;
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
            {
                Log.Error(name, 0, ReadTrouble, $"can't be read: {e.Message}", "a file or a folder that exists");
            }
        }
    }
}
