using System.CommandLine;
using System.Globalization;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Cli.Printing;
using ShellForge.Cli.Profiles;
using ShellForge.Cli.Reading;
using ShellForge.Output.Words;

namespace ShellForge.Cli.Verbs;

/// <summary><c>profiles</c>: which there are, and every number of one with its source.</summary>
internal static class ProfilesVerb
{
    public static Command Create(Workbench bench)
    {
        var name = new Argument<string?>("NAME")
        {
            Description = "A profile to show, a kind to list, or a part of a name to look for; nothing lists all",
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
        ProfileSheet[] chosen = Chosen(all, name);
        if (chosen.Length == 0)
        {
            string nearest = NearestName.In(name!, all.Select(sheet => sheet.Name)) is { } near
                ? $"did you mean {near}?"
                : $"kinds are {string.Join(", ", all.Select(sheet => sheet.Kind).Distinct())}";
            bench.Complain($"shellforge: no profile has '{name}' in its name; {nearest}");
            return ExitCode.BadInput;
        }

        if (json)
        {
            JsonOut.Write(bench, ProfilesDocument.Bytes(chosen));
        }
        else if (name is not null && string.Equals(chosen[0].Name, name, StringComparison.OrdinalIgnoreCase))
        {
            foreach (ProfileSheet sheet in chosen)
            {
                Show(bench.Out, sheet);
            }
        }
        else
        {
            List(bench, chosen);
        }

        return ExitCode.Done;
    }

    // A profile by its name, a whole kind, or all whose names hold the word.
    private static ProfileSheet[] Chosen(ProfileSheet[] all, string? name)
    {
        if (name is null)
        {
            return all;
        }

        ProfileSheet[] exact = [.. all.Where(sheet => Is(sheet.Name) || Is(sheet.Kind) || Is(sheet.Kind.TrimEnd('s')))];
        return exact.Length > 0 ? exact : [.. all.Where(sheet => sheet.Name.Contains(name, StringComparison.OrdinalIgnoreCase))];

        bool Is(string word) => string.Equals(word, name, StringComparison.OrdinalIgnoreCase);
    }

    private static void List(Workbench bench, ProfileSheet[] sheets)
    {
        // The values that tell profiles of one kind apart stand first in their sheets.
        const int telling = 4;
        foreach (IGrouping<string, ProfileSheet> kind in sheets.GroupBy(sheet => sheet.Kind))
        {
            bench.Out.Write($"{kind.Key}\n");
            int column = 4 + kind.Max(sheet => sheet.Name.Length);
            foreach (ProfileSheet sheet in kind)
            {
                string values = string.Join(", ", sheet.Lines.Take(telling).Select(line => $"{line.What} {line.Value}"));
                WrappedText.Write(bench.Out, values, bench.TextWidth, $"  {sheet.Name}".PadRight(column), column);
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
