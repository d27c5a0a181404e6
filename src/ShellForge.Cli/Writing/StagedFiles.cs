using ShellForge.Output.Files;

namespace ShellForge.Cli.Writing;

/// <summary>
/// Writes a set of files so that each appears under its name only when it is complete: all are written aside first, then renamed one
/// after the other in their order. When anything fails before the first rename, the folder is as it was.
/// </summary>
internal static class StagedFiles
{
    /// <summary>Writes files into a folder, which is made when it is not there.</summary>
    /// <param name="folder">Full name of the folder.</param>
    /// <param name="files">The files, in the order in which they appear.</param>
    /// <param name="outdated">Names of files of an earlier run that are removed once the new ones are there.</param>
    /// <exception cref="IOException">A file can't be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written to.</exception>
    public static void Write(string folder, IReadOnlyList<OutputFile> files, IEnumerable<string> outdated)
    {
        Directory.CreateDirectory(folder);
        var aside = new List<(string Aside, string Final)>();
        try
        {
            foreach (OutputFile file in files)
            {
                string final = Path.Combine(folder, file.Name);
                string path = Path.Combine(folder, $".{file.Name}.{Environment.ProcessId}.part");
                aside.Add((path, final));
                using var stream = new FileStream(path, FileMode.Create, FileAccess.Write, FileShare.None);
                stream.Write(file.Content);
            }

            foreach ((string path, string final) in aside)
            {
                File.Move(path, final, overwrite: true);
            }
        }
        finally
        {
            // What was renamed is no longer there.
            foreach ((string path, _) in aside)
            {
                File.Delete(path);
            }
        }

        foreach (string name in outdated.Except(files.Select(file => file.Name), StringComparer.Ordinal))
        {
            File.Delete(Path.Combine(folder, name));
        }
    }
}
