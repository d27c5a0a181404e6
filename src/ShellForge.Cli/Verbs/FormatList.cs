using System.CommandLine.Parsing;
using ShellForge.Output.Files;

namespace ShellForge.Cli.Verbs;

/// <summary>Reads <c>stl,3mf,glb</c>.</summary>
internal static class FormatList
{
    public static MeshFormats Parse(ArgumentResult given)
    {
        MeshFormats formats = MeshFormats.None;
        foreach (string word in given.Tokens.SelectMany(token => token.Value.Split(',', StringSplitOptions.TrimEntries)))
        {
            switch (word)
            {
                case "stl":
                    formats |= MeshFormats.Stl;
                    break;
                case "3mf":
                    formats |= MeshFormats.ThreeMf;
                    break;
                case "glb":
                    formats |= MeshFormats.Glb;
                    break;
                default:
                    given.AddError($"'{word}' is no mesh format; expected stl, 3mf or glb, separated by commas");
                    return MeshFormats.None;
            }
        }

        return formats;
    }
}
