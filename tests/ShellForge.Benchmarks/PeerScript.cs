using System.Diagnostics;

namespace ShellForge.Benchmarks;

/// <summary>The peer's scripts in Node, with their packages installed (npm ci).</summary>
internal static class PeerScript
{
    /// <summary>
    /// The script in the folder "peer" above the program's own; null, and a word about it, when its packages are not there.
    /// </summary>
    public static string? Find(string name)
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            string script = Path.Combine(folder.FullName, "peer", name);
            if (File.Exists(script) && Directory.Exists(Path.Combine(folder.FullName, "peer", "node_modules")))
            {
                return script;
            }
        }

        Console.Error.WriteLine("The peer is not installed: run npm ci in tests/ShellForge.Benchmarks/peer.");
        return null;
    }

    /// <summary>What it prints.</summary>
    public static string Run(string script, params string[] arguments) =>
        Output("node", ["--max-old-space-size=8000", script, .. arguments]);

    /// <summary>What a program prints from its start to its end.</summary>
    public static string Output(string program, params string[] arguments)
    {
        using Process process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true })!;
        string text = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return text;
    }
}
