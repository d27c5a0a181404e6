using System.CommandLine;
using System.Globalization;
using ShellForge.Board.Profiles;
using ShellForge.Cli.Profiles;
using ShellForge.Cli.Reading;
using ShellForge.Cli.Telling;

namespace ShellForge.Cli.Verbs;

/// <summary><c>profiles</c>: which there are, and every number of one with its source.</summary>
internal static class ProfilesVerb
{
    public static Command Create(Workbench bench)
    {
        var name = new Argument<string?>("NAME")
        {
            Description = "A profile to show, or a kind to list; nothing lists all",
            Arity = ArgumentArity.ZeroOrOne,
        };
        Option<bool> json = SharedOptions.Json();
        var command = new Command("profiles", "List the profiles, or show every number of one with its source") { name, json };
        command.SetAction(parsed => (int)Run(bench, parsed.GetValue(name), parsed.GetValue(json)));
        return command;
    }

    private static ExitCode Run(Workbench bench, string? name, bool json)
    {
        // As if a board file lay in the working folder: its profiles are the user's own.
        ProfileLoadResult loaded = UserProfiles.Load(bench.Folder, bench);
        DiagnosticsText.Write(loaded.Diagnostics, bench, errorsOnly: false);
        if (loaded.Diagnostics.Any(diagnostic => diagnostic.IsError))
        {
            return ExitCode.BadInput;
        }

        ProfileSheet[] all = [.. ProfileSheets.Of(loaded.Library)];
        ProfileSheet[] chosen = name is null ? all : [.. all.Where(sheet => sheet.Name == name || sheet.Kind == name)];
        if (chosen.Length == 0)
        {
            bench.Err.WriteLine($"shellforge: there is no profile or kind '{name}'; kinds are {string.Join(", ", all.Select(sheet => sheet.Kind).Distinct())}");
            return ExitCode.BadInput;
        }

        if (json)
        {
            JsonOut.Write(bench, ProfilesDocument.Bytes(chosen));
        }
        else if (name is not null && chosen[0].Name == name)
        {
            foreach (ProfileSheet sheet in chosen)
            {
                Show(bench.Out, sheet);
            }
        }
        else
        {
            List(bench.Out, chosen);
        }

        return ExitCode.Done;
    }

    private static void List(TextWriter writer, ProfileSheet[] sheets)
    {
        foreach (IGrouping<string, ProfileSheet> kind in sheets.GroupBy(sheet => sheet.Kind))
        {
            writer.Write($"{kind.Key}\n");
            foreach (ProfileSheet sheet in kind)
            {
                writer.Write($"  {sheet.Name}\n");
            }
        }
    }

    private static void Show(TextWriter writer, ProfileSheet sheet)
    {
        writer.Write($"{sheet.Name} ({sheet.Kind})\n");
        int width = sheet.Lines.Max(line => line.What.Length);
        foreach (ProfileLine line in sheet.Lines)
        {
            string source = line.Source.Length == 0 ? "" : $"  [{line.Source}]";
            writer.Write(string.Create(CultureInfo.InvariantCulture, $"  {line.What.PadRight(width)}  {line.Value}{source}\n"));
        }
    }
}
