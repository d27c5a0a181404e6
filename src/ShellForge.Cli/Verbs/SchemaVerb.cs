using System.Collections.Immutable;
using System.CommandLine;
using ShellForge.Board.Schema;
using ShellForge.Board.Yaml.Variation;
using ShellForge.Cli.Comparing;
using ShellForge.Cli.Measuring;
using ShellForge.Cli.Profiles;
using ShellForge.Cli.Sweeping;
using ShellForge.Import.Writing;
using ShellForge.Output.Prints;
using ShellForge.Output.Report;
using ShellForge.Sweep.Index;

namespace ShellForge.Cli.Verbs;

/// <summary><c>schema</c>: the JSON Schemas of the files that people write and of the documents that the program writes.</summary>
internal static class SchemaVerb
{
    /// <summary>Schemas of what people write.</summary>
    public static ImmutableArray<(string Name, Func<string> Schema)> Written { get; } =
    [
        ("board", BoardSchema.Json),
        ("profiles", BoardSchema.ProfilesJson),
        ("plan", SweepPlanReader.SchemaJson),
    ];

    /// <summary>Schemas of what the program writes.</summary>
    public static ImmutableArray<(string Name, Func<string> Schema)> Documents { get; } =
    [
        .. ReportJson.Schemas,
        ("print", PrintFiles.Schema),
        ("import", ImportJson.Schema),
        ("coupon", CouponsDocument.Schema),
        ("profile-list", ProfilesDocument.Schema),
        ("sweep", SweepDocument.Schema),
        ("sweep-index", IndexJson.Schema),
        ("comparison", ComparisonDocument.Schema),
    ];

    /// <summary>All schemas by the name of what they describe.</summary>
    public static ImmutableArray<(string Name, Func<string> Schema)> All { get; } = [.. Written, .. Documents];

    public static Command Create(Workbench bench)
    {
        var kind = new Argument<string>("KIND")
        {
            Description = $"A file that you write ({Names(Written)}), or a document that the program writes ({Names(Documents)})",
            HelpName = "KIND",
            DefaultValueFactory = _ => "board",
        };
        OneOf.Accept(kind, [.. All.Select(each => each.Name)]);
        var command =
            new Command("schema",
                "Print a JSON Schema: of the board file, for editors that complete and check YAML, or of a document, for programs that "
                    + "read it") { kind };
        command.SetAction(parsed =>
        {
            bench.Out.Write(All.First(each => each.Name == parsed.GetValue(kind)).Schema());
            return (int)ExitCode.Done;
        });
        return command;
    }

    private static string Names(IEnumerable<(string Name, Func<string> Schema)> schemas) =>
        string.Join(", ", schemas.Select(each => each.Name));
}
