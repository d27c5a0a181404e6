using System.Diagnostics;
using System.Globalization;
using ShellForge.Board.Files;
using ShellForge.Output.Files;

namespace ShellForge.Cli.Writing;

/// <summary>
/// Writes a set of files so that each appears under its name only when it is complete: all are written aside first, then renamed one
/// after the other in their order. When anything fails before the first rename, the folder is as it was. What a run left aside that was
/// killed is removed by the next one.
/// </summary>
internal static class StagedFiles
{
    /// <summary>Writes files into a folder, which is made when it is not there.</summary>
    /// <param name="folder">Full name of the folder.</param>
    /// <param name="files">The files, in the order in which they appear.</param>
    /// <param name="outdated">
    /// Finds the files of an earlier run that are removed once the new ones are there, by name; null for none.
    /// </param>
    /// <exception cref="IOException">A file can't be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written to.</exception>
    public static void Write(string folder, IReadOnlyList<OutputFile> files, Func<string, IReadOnlyList<string>>? outdated = null)
    {
        Directory.CreateDirectory(folder);
        Tidy(folder, files);
        var aside = new List<(string Aside, string Final)>();
        try
        {
            foreach (OutputFile file in files)
            {
                string final = Path.Combine(folder, file.Name);
                string path = Path.Combine(folder, Aside(file.Name, Environment.ProcessId));
                aside.Add((path, final));
                WriteAside(path, file);
                KeepRights(path, final);
            }

            using FolderTurn turn = FolderTurn.Of(folder);
            IReadOnlyList<string> earlier = outdated?.Invoke(folder) ?? [];
            foreach ((string path, string final) in aside)
            {
                File.Move(path, final, overwrite: true);
            }

            foreach (string name in earlier.Except(files.Select(file => file.Name), StringComparer.Ordinal))
            {
                File.Delete(Path.Combine(folder, name));
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
    }

    /// <summary>
    /// Writes a file in place of one that is known, and never over another: what lies there in the moment of the exchange is looked at, and
    /// put back when it is not the one.
    /// </summary>
    /// <param name="folder">Full name of the folder.</param>
    /// <param name="file">The file.</param>
    /// <param name="known">The bytes of the one that is replaced; null when there was none.</param>
    /// <returns>False where there is another one now; it stays.</returns>
    /// <exception cref="IOException">The file can't be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The folder may not be written to.</exception>
    public static bool Replace(string folder, OutputFile file, byte[]? known)
    {
        string final = Path.Combine(folder, file.Name);
        string aside = Path.Combine(folder, Aside(file.Name, Environment.ProcessId));
        try
        {
            WriteAside(aside, file);
            using FolderTurn turn = FolderTurn.Of(folder);
            if (known is null)
            {
                if (File.Exists(final))
                {
                    return false;
                }

                File.Move(aside, final, overwrite: false);
                return true;
            }

            KeepRights(aside, final);
            return Has(final, known) && Exchange(aside, final, file.Content, known);
        }
        catch (IOException) when (known is null && File.Exists(final))
        {
            // Somebody else was quicker.
            return false;
        }
        finally
        {
            File.Delete(aside);
        }
    }

    /// <summary>Puts a file in place of another, which goes back when it is not the one that is known.</summary>
    /// <param name="aside">Full name of the file that is put there.</param>
    /// <param name="final">Full name of the other one.</param>
    /// <param name="content">The bytes of the file.</param>
    /// <param name="known">The bytes that the other one should have.</param>
    /// <returns>False where the other one had other bytes.</returns>
    internal static bool Exchange(string aside, string final, byte[] content, byte[] known)
    {
        // Who has just opened the old file will have begun to write by then.
        const int settling = 20;
        string old = aside + ".old";
        File.Delete(old);
        File.Replace(aside, final, old, ignoreMetadataErrors: true);
        Thread.Sleep(settling);
        bool isTheOne = Has(old, known);
        if (!isTheOne && Has(final, content))
        {
            File.Move(old, final, overwrite: true);
        }

        // Of two others that came in between, the later one stays.
        File.Delete(old);
        return isTheOne;
    }

    private static bool Has(string path, byte[] content) =>
        BoundedFile.Read(path, content.Length) is { } found && found.AsSpan().SequenceEqual(content);

    private static void KeepRights(string path, string final)
    {
        if (!OperatingSystem.IsWindows() && File.Exists(final))
        {
            // Who may read the file it replaces may read this one.
            File.SetUnixFileMode(path, File.GetUnixFileMode(final));
        }
    }

    private static void WriteAside(string path, OutputFile file)
    {
        // A file of our own making alone: what lies there under this name could be a link to somewhere else.
        File.Delete(path);
        using var stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None);
        try
        {
            stream.Write(file.Content);
        }
        catch (ArgumentOutOfRangeException)
        {
            // What the platform makes of a limit on the length of files.
            throw new IOException($"{file.Name} has {file.Content.Length} bytes, more than a file may have there");
        }
    }

    private static string Aside(string name, int process) =>
        string.Create(CultureInfo.InvariantCulture, $".{name}.{process}.part");

    // Only names that a run gives, and only of processes that are no more.
    private static void Tidy(string folder, IReadOnlyList<OutputFile> files)
    {
        foreach (string path in Directory.GetFiles(folder, ".*.part"))
        {
            string name = Path.GetFileName(path);
            if (int.TryParse(name.Split('.')[^2], NumberStyles.None, CultureInfo.InvariantCulture, out int process)
                && files.Any(file => Aside(file.Name, process) == name) && !IsRunning(process))
            {
                File.Delete(path);
            }
        }
    }

    private static bool IsRunning(int process)
    {
        try
        {
            using var found = Process.GetProcessById(process);
            return !found.HasExited;
        }
        catch (ArgumentException)
        {
            return false;
        }
    }
}
