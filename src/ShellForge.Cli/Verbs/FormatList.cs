using System.CommandLine.Parsing;
using ShellForge.Output.Files;

namespace ShellForge.Cli.Verbs;

/// <summary>Reads <c>stl,3mf,glb,csv</c>.</summary>
internal static class FormatList
{
    public static FileFormats Parse(ArgumentResult given)
    {
        FileFormats formats = FileFormats.None;
        foreach (string word in given.Tokens.SelectMany(token => token.Value.Split(',', StringSplitOptions.TrimEntries)))
        {
            switch (word)
            {
                case "stl":
                    formats |= FileFormats.Stl;
                    break;
                case "3mf":
                    formats |= FileFormats.ThreeMf;
                    break;
                case "glb":
                    formats |= FileFormats.Glb;
                    break;
                case "csv":
                    formats |= FileFormats.Csv;
                    break;
                default:
                    given.AddError($"'{word}' is no format; expected stl, 3mf, glb or csv, separated by commas");
                    return FileFormats.None;
            }
        }

        return formats;
    }
}
