using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;

namespace ShellForge.Cli.Verbs;

/// <summary>Options that mean the same wherever they stand.</summary>
internal static class SharedOptions
{
    public static Argument<string> BoardFile() => new("BOARD")
    {
        Description = "The board file (YAML)",
    };

    public static Option<bool> Json() => new("--json")
    {
        Description = "Print the result as JSON, for machines",
    };

    public static Option<bool> Quiet() => new("--quiet", "-q")
    {
        Description = "Print nothing but errors",
    };

    public static Option<bool> Details() => new("--details")
    {
        Description = "Tell of each finding what was measured, the limit and the place",
    };

    public static Option<bool> Strict() => new("--strict")
    {
        Description = "Count warnings as reasons not to print",
    };

    /// <summary>
    /// Reads a whole number; anything else is told with what it should be. A validator would be handed an exception for a word.
    /// </summary>
    public static Func<ArgumentResult, int?> WholeNumber(string what, int least, int most) => given =>
    {
        string written = given.Tokens[0].Value;
        if (!int.TryParse(written, NumberStyles.None, CultureInfo.InvariantCulture, out int number) || number < least || number > most)
        {
            given.AddError($"{what} is a number from {least} to {most}, not '{written}'");
        }

        return number;
    };

    public static Option<string[]> Gcode() => new("--gcode")
    {
        Description = "Read your slicer's G-code, one file per part or plate, and tell where it differs from the plan; say it after the "
            + "board file",
        HelpName = "FILE",
        AllowMultipleArgumentsPerToken = true,
        DefaultValueFactory = _ => [],
    };

    public static Option<string[]> Set() => new("--set")
    {
        Description = "Use a value instead of the file's, such as housing.walls=4; may be given several times",
        HelpName = "PATH=VALUE",
        DefaultValueFactory = _ => [],
    };
}
