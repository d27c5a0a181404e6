using System.Collections.Immutable;
using System.CommandLine;
using ShellForge.Cli.Inspecting;
using ShellForge.Cli.Printing;
using ShellForge.Output.Inspection;
using ShellForge.Output.Report;

namespace ShellForge.Cli.Verbs;

/// <summary><c>inspect</c>: whether mesh files of any origin bound solids, and how large they are.</summary>
internal static class InspectVerb
{
    public static Command Create(Workbench bench)
    {
        var files = new Argument<string[]>("FILE")
        {
            Description = "STL or 3MF files",
            Arity = ArgumentArity.OneOrMore,
        };
        Option<bool> json = SharedOptions.Json();
        Option<bool> quiet = SharedOptions.Quiet();
        var command = new Command("inspect", "Audit STL or 3MF files of any origin: closed, oriented, free of crossings; sizes") { files,
            json, quiet };
        command.SetAction(parsed => (int)Run(
            bench, parsed.GetRequiredValue(files), parsed.GetValue(json), parsed.GetValue(quiet)));
        return command;
    }

    private static ExitCode Run(Workbench bench, string[] names, bool json, bool quiet)
    {
        ImmutableArray<FileInspection> all = [.. names.Select(name => MeshFile.Inspect(name, bench))];
        ExitCode exit = all.All(file => file.IsSound) ? ExitCode.Done : ExitCode.Stopped;
        if (json)
        {
            JsonOut.Write(bench, ReportJson.OfInspection((int)exit, all));
        }
        else if (!quiet)
        {
            InspectionText.Write(bench.Out, all);
        }

        return exit;
    }
}
