using System.Diagnostics;
using ShellForge.EndToEnd.Tests.Sweeps;
using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests.Faults;

/// <summary>The command in a folder of its own, with two boards of which one has a part less and another insert.</summary>
internal sealed class FaultyMachine : IDisposable
{
    private const string Board = """
        format: shellforge/1
        name: Buoy
        board:
          outline: {disc: 40}
          thickness: 1.6
          holes: [{circle: 33, count: 2, diameter: 2.2}]
          pixels: {package: "5050", circle: 20, count: 4, from: 90}
        housing:
          insert: m2x3-od3.6
          cable: {round: 3.5, angle: 270}
          light: {look: pixels}
        power: {supply: usb-c-1.5A, brightness: 0.2, capped: true}
        """;

    private readonly TemporaryFolder _folder = new();
    private readonly string _bin;

    public FaultyMachine()
    {
        _bin = ShellForgeProcess.Install(_folder.Path);
        _folder.Write("one.yaml", Board);
        _folder.Write("other.yaml", Board.Replace("look: pixels", "look: blend", StringComparison.Ordinal)
            .Replace("m2x3-od3.6", "m2x4-od3.6", StringComparison.Ordinal));
    }

    /// <summary>Where it works.</summary>
    public string Folder => _folder.Path;

    public void Dispose() => _folder.Dispose();

    /// <summary>Full name of something in the folder.</summary>
    public string At(string name) => _folder.File(name);

    /// <summary>Starts the command.</summary>
    public Process Start(params string[] args) => ShellForgeProcess.Start(_bin, Folder, Path.Combine(_bin, "shellforge"), args);

    /// <summary>Runs the command to its end.</summary>
    public ForeignRun Run(params string[] args) =>
        ShellForgeProcess.Run(_bin, Folder, Path.Combine(_bin, "shellforge"), args);

    /// <summary>Runs a line of the shell to its end.</summary>
    public ForeignRun Shell(string line) => ShellForgeProcess.Run(_bin, Folder, "/bin/bash", "-c", line);

    /// <summary>Makes a board and reads what was written.</summary>
    public Dictionary<string, byte[]> Made(string board, string folder)
    {
        (int exit, string told) = Run("make", board, "-q", "-o", folder);
        Assert.True(exit == 0, told);
        return Files(folder);
    }

    /// <summary>The files of a folder that people see, by name.</summary>
    public Dictionary<string, byte[]> Files(string folder) => Directory.GetFiles(At(folder))
        .Where(path => !Path.GetFileName(path).StartsWith('.'))
        .ToDictionary(path => Path.GetFileName(path), File.ReadAllBytes, StringComparer.Ordinal);

    /// <summary>Whether a folder holds exactly these files.</summary>
    public static bool Same(Dictionary<string, byte[]> left, Dictionary<string, byte[]> right) =>
        left.Count == right.Count
        && left.All(one => right.TryGetValue(one.Key, out byte[]? other) && one.Value.AsSpan().SequenceEqual(other));
}
