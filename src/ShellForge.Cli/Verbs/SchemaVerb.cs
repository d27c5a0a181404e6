using System.CommandLine;
using ShellForge.Board.Schema;

namespace ShellForge.Cli.Verbs;

/// <summary><c>schema</c>: the JSON Schema of board and profile files, for editors.</summary>
internal static class SchemaVerb
{
    public static Command Create(Workbench bench)
    {
        var kind = new Argument<string>("KIND")
        {
            Description = "Which file: board or profiles",
            DefaultValueFactory = _ => "board",
        };
        kind.AcceptOnlyFromAmong("board", "profiles");
        var command = new Command("schema", "Print the JSON Schema of the board file, for editors that complete and check YAML") { kind };
        command.SetAction(parsed =>
        {
            bench.Out.Write(parsed.GetValue(kind) == "profiles" ? BoardSchema.ProfilesJson() : BoardSchema.Json());
            return (int)ExitCode.Done;
        });
        return command;
    }
}
