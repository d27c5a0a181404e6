using System.CommandLine;
using System.Text;
using ShellForge.Board.Schema;
using ShellForge.Board.Yaml;
using ShellForge.Cli.Writing;
using ShellForge.Output.Files;

namespace ShellForge.Cli.Verbs;

/// <summary><c>new</c>: a commented board file to start from.</summary>
internal static class NewVerb
{
    public static Command Create(Workbench bench)
    {
        var name = new Argument<string>("NAME")
        {
            Description = "Name of the housing, and of the file: \"Tide lamp\" gives tide-lamp.yaml",
        };
        var command = new Command("new", "Write a commented board file to start from") { name };
        command.SetAction(parsed => (int)Run(bench, parsed.GetRequiredValue(name).Trim()));
        return command;
    }

    private static ExitCode Run(Workbench bench, string name)
    {
        string file = FileName(name);
        if (file.Length == 0)
        {
            bench.Complain($"shellforge: '{name}' has no letter or digit to name a file by");
            return ExitCode.BadInput;
        }

        string path = bench.FullPath(file + ".yaml");
        if (File.Exists(path))
        {
            bench.Complain($"shellforge: {file}.yaml is there already and is left as it is; choose another name");
            return ExitCode.BadInput;
        }

        StagedFiles.Write(
            bench.Folder,
            [
                new OutputFile(file + ".yaml", Encoding.UTF8.GetBytes(StarterBoard.Text(name))),
                new OutputFile(EditorSchema.FileName, Encoding.UTF8.GetBytes(BoardSchema.Json())),
            ]);
        bench.Out.WriteLine($"{file}.yaml: say what your board has, then: shellforge make {file}.yaml -o {file}");
        bench.Out.WriteLine(
            $"{EditorSchema.FileName}: lets an editor with YAML support complete and check the file; delete it if you need none");
        return ExitCode.Done;
    }

    // Lower-case letters and digits, everything else one dash: a name that needs no quotes in any shell.
    private static string FileName(string name)
    {
        var file = new StringBuilder();
        foreach (char letter in name.ToLowerInvariant())
        {
            if (char.IsAsciiLetterOrDigit(letter))
            {
                file.Append(letter);
            }
            else if (file.Length > 0 && file[^1] != '-')
            {
                file.Append('-');
            }
        }

        return file.ToString().Trim('-');
    }
}
