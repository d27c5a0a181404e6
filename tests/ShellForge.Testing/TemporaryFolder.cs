namespace ShellForge.Testing;

/// <summary>A folder for one test, gone afterwards.</summary>
public sealed class TemporaryFolder : IDisposable
{
    /// <summary>Makes an empty folder.</summary>
    public TemporaryFolder() => Path = Directory.CreateTempSubdirectory("shellforge-test-").FullName;

    /// <summary>Its full name.</summary>
    public string Path { get; }

    /// <summary>The full name of a file in it.</summary>
    public string File(string name) => System.IO.Path.Combine(Path, name);

    /// <summary>Writes a text file and gives its full name.</summary>
    public string Write(string name, string text)
    {
        string path = File(name);
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(path)!);
        System.IO.File.WriteAllText(path, text);
        return path;
    }

    /// <summary>Names and contents of all files in it, to compare before and after.</summary>
    public IReadOnlyDictionary<string, string> Snapshot() =>
        Directory.EnumerateFiles(Path, "*", SearchOption.AllDirectories)
            .ToDictionary(
                path => System.IO.Path.GetRelativePath(Path, path),
                path => Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(System.IO.File.ReadAllBytes(path))));

    /// <inheritdoc />
    public void Dispose() => Directory.Delete(Path, recursive: true);
}
