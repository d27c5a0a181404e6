using System.CommandLine;
using ShellForge.Cli.Comparing;
using ShellForge.Cli.Printing;
using ShellForge.Cli.Writing;
using ShellForge.Output.Files;
using ShellForge.Sweep.Comparing;

namespace ShellForge.Cli.Verbs;

/// <summary><c>compare</c>: what differs between two housings, made or still board files.</summary>
internal static class CompareVerb
{
    public static Command Create(Workbench bench)
    {
        var first = new Argument<string>("A") { Description = "A folder that make has written, or a board file" };
        var second = new Argument<string>("B") { Description = "The folder or board file to compare with it" };
        var output = new Option<string?>("--output", "-o") { Description = "Write the differences as a page", HelpName = "page.html" };
        Option<string[]> set = SharedOptions.Set();
        set.Description = "Use a value instead of the second file's, such as housing.walls=4; may be given several times";
        Option<bool> json = SharedOptions.Json();
        var command =
            new Command("compare", "Tell what differs between two housings: values, findings, sizes, parts whose bytes changed") { first,
                second, output, set, json };
        command.SetAction(parsed => (int)Run(
            bench, parsed.GetRequiredValue(first), parsed.GetRequiredValue(second), parsed.GetValue(output), parsed.GetRequiredValue(set),
            parsed.GetValue(json)));
        return command;
    }

    private static ExitCode Run(Workbench bench, string first, string second, string? output, string[] set, bool json)
    {
        ComparedSide before = ComparedSide.Read(first, [], bench);
        ComparedSide after = ComparedSide.Read(second, set, bench);
        if (before.State is null || after.State is null)
        {
            if (json)
            {
                JsonOut.Write(bench,
                    new ComparisonDocument
                    {
                        Exit = (int)ExitCode.BadInput,
                        Diagnostics = [.. before.Diagnostics, .. after.Diagnostics]
                    }.Written());
            }
            else
            {
                DiagnosticsText.Write([.. before.Diagnostics, .. after.Diagnostics], bench, errorsOnly: true);
            }

            return ExitCode.BadInput;
        }

        var comparison = HousingComparison.Of(before.State, after.State);
        if (output is not null)
        {
            string path = bench.FullPath(output);
            StagedFiles.Write(Path.GetDirectoryName(path)!,
                [new OutputFile(Path.GetFileName(path), ComparisonPage.Of(first, second, comparison))]);
        }

        if (json)
        {
            JsonOut.Write(bench, ComparisonDocument.Of(comparison).Written());
        }
        else
        {
            ChangesText.Write(bench.OutConsole(), comparison);
        }

        return ExitCode.Done;
    }
}
