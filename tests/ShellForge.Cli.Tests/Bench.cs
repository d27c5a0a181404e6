using System.Text.Json;
using ShellForge.Testing;

namespace ShellForge.Cli.Tests;

/// <summary>Runs the command in process on a folder of its own.</summary>
internal sealed class Bench : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private Dictionary<string, string> _variables = [];

    public string Out { get; private set; } = "";

    public string Err { get; private set; } = "";

    /// <summary>What is typed at the terminal.</summary>
    public string Typed { get; set; } = "";

    /// <summary>Whether results are shown in colour.</summary>
    public bool Coloured { get; set; }

    public TemporaryFolder Folder => _folder;

    /// <summary>A small board that makes a housing quickly.</summary>
    public const string SmallBoard =
        """
        format: shellforge/1
        name: Buoy
        board:
          outline: {disc: 40}
          thickness: 1.6
          holes:
            - {circle: 33, count: 2, from: 0, diameter: 2.2}
          pixels: {package: "5050", circle: 20, count: 4, from: 90, direction: cw}
        housing:
          insert: m2x3-od3.6
          cable: {round: 3.5, angle: 270, relief: tie}
          closure: snap
          light: {through: front, look: pixels, evenness: soft}
        power: {supply: usb-c-1.5A, brightness: 0.2, capped: true}
        print: {printer: fdm-0.4, shell: petg-black, diffuser: petg-white}
        """;

    /// <summary>A plan of one variant of it.</summary>
    public const string SlimPlan = "format: shellforge-plan/1\nboard: [board.yaml]\nvary:\n  housing.walls: [3]\n";

    public int Run(params string[] args) => RunUnder(CancellationToken.None, args);

    /// <summary>Runs it with variables of the environment, as name=value with blanks between.</summary>
    public int RunWith(string variables, params string[] args)
    {
        _variables = variables.Split(' ').Select(pair => pair.Split('=')).ToDictionary(pair => pair[0], pair => pair[1]);
        int exit = Run(args);
        _variables = [];
        return exit;
    }

    public int RunUnder(CancellationToken cancel, params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var errors = new StringWriter { NewLine = "\n" };
        int exit = ShellForgeCommand.Run(args, new Workbench
        {
            Out = output,
            Err = errors,
            In = new StringReader(Typed),
            Today = new DateOnly(2026, 11, 30),
            Folder = _folder.Path,
            ConfigFolder = _folder.File("config"),
            ColourOut = Coloured,
            Variable = name => _variables.GetValueOrDefault(name),
            Cancel = cancel,
        });
        Out = output.ToString();
        Err = errors.ToString();
        return exit;
    }

    /// <summary>What was printed, as JSON.</summary>
    public JsonElement Json() => JsonDocument.Parse(Out).RootElement;

    public void Dispose() => _folder.Dispose();
}
