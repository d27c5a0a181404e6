using System.Security.Cryptography;
using System.Text;
using ShellForge.Sweep.Folder;

namespace ShellForge.Cli.Writing;

/// <summary>
/// The turn to put files into a folder: one process at a time has it, so that two runs into one folder leave the files of one of them, not
/// some of each. It ends with the process, however that ends. The lock lies among the user's temporary files, where it litters nothing.
/// </summary>
internal sealed class FolderTurn : IDisposable
{
    // Renaming takes a moment; whoever holds the turn for longer is stuck.
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(30);

    private readonly FileStream? _held;

    private FolderTurn(FileStream? held) => _held = held;

    /// <summary>Waits for the turn.</summary>
    /// <param name="folder">Full name of the folder.</param>
    /// <exception cref="IOException">Another run keeps it.</exception>
    public static FolderTurn Of(string folder)
    {
        byte[] name = SHA256.HashData(Encoding.UTF8.GetBytes(Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder))));
        string path = Path.Combine(Path.GetTempPath(), $"shellforge-{Environment.UserName}-{Convert.ToHexStringLower(name)[..16]}.lock");
        try
        {
            return new FolderTurn(FileLock.Waited(path, Longest));
        }
        catch (Exception e) when (e is UnauthorizedAccessException || (e is IOException && !File.Exists(path)))
        {
            // Without a place for locks each file still appears whole.
            return new FolderTurn(null);
        }
        catch (IOException)
        {
            throw new IOException($"another run is writing into {folder}, and does not end: look for it, then try again");
        }
    }

    /// <inheritdoc />
    public void Dispose() => _held?.Dispose();
}
