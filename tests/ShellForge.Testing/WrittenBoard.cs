using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml;
using ShellForge.Board.Yaml.Overriding;

namespace ShellForge.Testing;

/// <summary>
/// A board file for tests, written as a maker would and read by the real reader: a base board with single lines replaced, so that a test
/// shows just what it is about.
/// </summary>
public sealed record WrittenBoard
{
    /// <summary>The shipped profiles.</summary>
    public static ProfileLibrary Shipped { get; } = ProfileLibrary.Load([]).Library;

    /// <summary>Outline as written.</summary>
    public string Outline { get; init; } = "{disc: 80}";

    /// <summary>Entries under <c>holes:</c>.</summary>
    public string[] Holes { get; init; } = ["{circle: 70, count: 4, from: 45, diameter: 2.7}"];

    /// <summary>The pixels' entry.</summary>
    public string Pixels { get; init; } = "{package: \"2020\", circle: 46, count: 16, from: 90, direction: cw}";

    /// <summary>Entries under <c>parts:</c>.</summary>
    public string[] Parts { get; init; } = [];

    /// <summary>Entries under <c>wires:</c>.</summary>
    public string[] Wires { get; init; } = [];

    /// <summary>Laminate, mm.</summary>
    public double Thickness { get; init; } = 1.6;

    /// <summary>How the edge was made.</summary>
    public string Edge { get; init; } = "clean";

    /// <summary>Insert profile.</summary>
    public string Insert { get; init; } = "m2.5x4-od4.6";

    /// <summary>Lines of wall.</summary>
    public int Walls { get; init; } = 4;

    /// <summary>Floor, mm.</summary>
    public double Floor { get; init; } = 2.0;

    /// <summary>The cable's entry.</summary>
    public string Cable { get; init; } = "none";

    /// <summary>Closure.</summary>
    public string Closure { get; init; } = "snap";

    /// <summary>Light.</summary>
    public string Light { get; init; } = "{through: front, look: blend, evenness: soft}";

    /// <summary>Diffuser.</summary>
    public string Diffuser { get; init; } = "{thickness: 0.8, distance: auto}";

    /// <summary>Mount.</summary>
    public string Mount { get; init; } = "none";

    /// <summary>Further lines under <c>housing:</c>.</summary>
    public string[] Housing { get; init; } = [];

    /// <summary>Print settings.</summary>
    public string Print { get; init; } = "{printer: fdm-0.4, shell: petg-black, diffuser: petg-white}";

    /// <summary>The file's text.</summary>
    public string Text => string.Join('\n',
    [
        "format: shellforge/1", "name: Test board", "up: 90", "board:",
        $"  outline: {Outline}", string.Create(CultureInfo.InvariantCulture, $"  thickness: {Thickness}"), $"  edge: {Edge}",
        .. List("holes", Holes), $"  pixels: {Pixels}", .. List("parts", Parts), .. List("wires", Wires),
        "housing:", $"  insert: {Insert}", "  screw: pan", string.Create(CultureInfo.InvariantCulture, $"  walls: {Walls}"),
        string.Create(CultureInfo.InvariantCulture, $"  floor: {Floor}"), $"  cable: {Cable}", $"  closure: {Closure}",
        $"  light: {Light}", $"  diffuser: {Diffuser}", "  vents: none", $"  mount: {Mount}", .. Housing.Select(line => $"  {line}"),
        "power: {supply: usb-default, brightness: 0.2, capped: true}", "use: {orientation: wall, ambient: 30}",
        $"print: {Print}", "",
    ]);

    /// <summary>The board, read.</summary>
    /// <exception cref="InvalidOperationException">The text has a mistake: all of them.</exception>
    public BoardFile Read(params string[] overrides) => Read("board.yaml", Text, overrides);

    /// <summary>A sample of the repository, read.</summary>
    public static BoardFile Sample(string name, params string[] overrides) =>
        Read("board.yaml", File.ReadAllText(Path.Combine(Repository(), "out-samples", name, "board.yaml")), overrides);

    /// <summary>A board file, read.</summary>
    public static BoardFile At(string path) => Read(path, File.ReadAllText(path), []);

    private static BoardFile Read(string name, string text, string[] overrides)
    {
        BoardReadResult read = BoardFileReader.Read(name, text, Shipped, [.. overrides.Select(SetOverride.Parse)]);
        return read.File ?? throw new InvalidOperationException(string.Join('\n', read.Diagnostics) + "\n" + text);
    }

    private static IEnumerable<string> List(string key, string[] entries) =>
        entries.Length == 0 ? [] : [$"  {key}:", .. entries.Select(entry => $"    - {entry}")];

    private static string Repository()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "ShellForge.sln")))
        {
            folder = folder.Parent;
        }

        return folder!.FullName;
    }
}
