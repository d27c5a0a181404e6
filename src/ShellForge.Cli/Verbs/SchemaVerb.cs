using System.Collections.Immutable;
using System.CommandLine;
using ShellForge.Board.Schema;
using ShellForge.Board.Yaml.Variation;
using ShellForge.Cli.Measuring;
using ShellForge.Cli.Profiles;
using ShellForge.Cli.Sweeping;
using ShellForge.Import.Writing;
using ShellForge.Output.Report;
using ShellForge.Sweep.Index;

namespace ShellForge.Cli.Verbs;

/// <summary><c>schema</c>: the JSON Schemas of the files that people write and of the documents that the program writes.</summary>
internal static class SchemaVerb
{
    /// <summary>All schemas by the name of what they describe.</summary>
    public static ImmutableArray<(string Name, Func<string> Schema)> All { get; } =
    [
        ("board", BoardSchema.Json),
        ("profiles", BoardSchema.ProfilesJson),
        ("plan", SweepPlanReader.SchemaJson),
        .. ReportJson.Schemas,
        ("import", ImportJson.Schema),
        ("coupon", CouponsDocument.Schema),
        ("profile-list", ProfilesDocument.Schema),
        ("sweep", SweepDocument.Schema),
        ("sweep-index", IndexJson.Schema),
    ];

    public static Command Create(Workbench bench)
    {
        var kind = new Argument<string>("KIND")
        {
            Description = "Files that you write: board, profiles, plan; documents that the program writes: report (report.json), and what --json prints: check, make, inspection, import, coupon, profile-list, sweep, sweep-index (index.json)",
            DefaultValueFactory = _ => "board",
        };
        kind.AcceptOnlyFromAmong([.. All.Select(each => each.Name)]);
        var command = new Command("schema", "Print a JSON Schema: of the board file, for editors that complete and check YAML, or of a document, for programs that read it") { kind };
        command.SetAction(parsed =>
        {
            bench.Out.Write(All.First(each => each.Name == parsed.GetValue(kind)).Schema());
            return (int)ExitCode.Done;
        });
        return command;
    }
}
