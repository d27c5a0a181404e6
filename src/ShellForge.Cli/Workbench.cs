using ShellForge.Cli.Printing;
using Spectre.Console;

namespace ShellForge.Cli;

/// <summary>
/// What a verb may touch of the world around it: two writers, a folder that names are relative to, a folder with the user's own
/// profiles. Tests give their own.
/// </summary>
internal sealed class Workbench
{
    private readonly TextWriter _shownOut = TextWriter.Null;
    private readonly TextWriter _shownErr = TextWriter.Null;

    // Wide enough for a finding's message in a table; terminals give their own width.
    private const int WidthOfFiles = 120;

    /// <summary>Results. Texts of others can't steer a terminal through it.</summary>
    public required TextWriter Out
    {
        get;
        init => (_shownOut, field) = (value, SafeText.Before(value));
    }

    /// <summary>Diagnostics and progress, guarded in the same way.</summary>
    public required TextWriter Err
    {
        get;
        init => (_shownErr, field) = (value, SafeText.Before(value));
    }

    /// <summary>Answers of whoever sits at the terminal; null where nobody can be asked.</summary>
    public TextReader? In { get; init; }

    /// <summary>The day, for the date of a measurement.</summary>
    public DateOnly Today { get; init; }

    /// <summary>The folder that relative names start from.</summary>
    public required string Folder { get; init; }

    /// <summary>The user's configuration folder; null when there is none.</summary>
    public string? ConfigFolder { get; init; }

    /// <summary>Whether results may be coloured.</summary>
    public bool ColourOut { get; init; }

    /// <summary>Whether progress may be drawn on <see cref="Err"/>.</summary>
    public bool ShowsProgress { get; init; }

    /// <summary>Columns of the terminal; 0 when there is none.</summary>
    public int TerminalWidth { get; init; }

    /// <summary>
    /// Columns of running text: the terminal's, at most as many as are pleasant to read; always the same in files and pipes.
    /// </summary>
    public int TextWidth
    {
        get
        {
            const int widest = 110;
            const int inFiles = 100;
            return TerminalWidth > 0 ? Math.Min(TerminalWidth, widest) : inFiles;
        }
    }

    /// <summary>Variables of the environment by name; null where there is none.</summary>
    public Func<string, string?> Variable { get; init; } = _ => null;

    /// <summary>Stops long work.</summary>
    public CancellationToken Cancel { get; init; }

    /// <summary>Writes lines to <see cref="Err"/>.</summary>
    public void Complain(string lines) => Err.WriteLine(lines);

    /// <summary>The workbench of the running process.</summary>
    public static Workbench OfProcess(CancellationToken cancel)
    {
        bool colourWished = string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"))
            && Environment.GetEnvironmentVariable("TERM") != "dumb";
        string? config = Environment.GetFolderPath(Environment.SpecialFolder.ApplicationData);
        return new Workbench
        {
            Out = Console.Out,
            Err = Console.Error,
            In = Console.In,
            Today = DateOnly.FromDateTime(TimeProvider.System.GetLocalNow().DateTime),
            Folder = Environment.CurrentDirectory,
            ConfigFolder = string.IsNullOrEmpty(config) ? null : Path.Combine(config, "shellforge"),
            ColourOut = colourWished && !Console.IsOutputRedirected,
            ShowsProgress = colourWished && !Console.IsErrorRedirected,
            TerminalWidth = Console.IsOutputRedirected ? 0 : Console.WindowWidth,
            Variable = Environment.GetEnvironmentVariable,
            Cancel = cancel,
        };
    }

    /// <summary>The full name of a file that the user named.</summary>
    public string FullPath(string name) => Path.GetFullPath(name, Folder);

    /// <summary>A console for tables and colour on <see cref="Out"/>.</summary>
    public IAnsiConsole OutConsole() => ConsoleOn(_shownOut, ColourOut);

    /// <summary>A console for progress on <see cref="Err"/>.</summary>
    public IAnsiConsole ErrConsole() => ConsoleOn(_shownErr, ShowsProgress);

    private IAnsiConsole ConsoleOn(TextWriter writer, bool colour)
    {
        IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new AnsiConsoleOutput(writer),
            Ansi = colour ? AnsiSupport.Yes : AnsiSupport.No,
            ColorSystem = colour ? ColorSystemSupport.Standard : ColorSystemSupport.NoColors,
            Interactive = colour ? InteractionSupport.Yes : InteractionSupport.No,
        });
        SafeText.Guard(console);
        console.Profile.Width = TerminalWidth > 0 ? TerminalWidth : WidthOfFiles;
        console.Profile.Capabilities.Unicode = true;
        return console;
    }
}
