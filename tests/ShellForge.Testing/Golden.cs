namespace ShellForge.Testing;

/// <summary>
/// Texts that were looked at and accepted, under <c>tests/golden</c>. To accept new ones, run the tests with
/// <c>SHELLFORGE_ACCEPT=1</c> and look at the difference before committing.
/// </summary>
public static class Golden
{
    /// <summary>Whether this run accepts what it gets.</summary>
    public static bool Accepting => Environment.GetEnvironmentVariable("SHELLFORGE_ACCEPT") == "1";

    /// <summary>The accepted text; in an accepting run the actual one is written first.</summary>
    public static string Text(string name, string actual)
    {
        string path = Repository.At("tests", "golden", name);
        if (Accepting)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, actual);
        }

        return File.Exists(path) ? File.ReadAllText(path).ReplaceLineEndings("\n") : $"(no golden {name})";
    }
}
