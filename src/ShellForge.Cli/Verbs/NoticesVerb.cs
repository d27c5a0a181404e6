using System.CommandLine;

namespace ShellForge.Cli.Verbs;

/// <summary><c>notices</c>: the licence, and those of the software of others that the program carries.</summary>
internal static class NoticesVerb
{
    public static Command Create(Workbench bench)
    {
        var command = new Command("notices", "Print the licence, and the notices of the software that this program carries");
        command.SetAction(_ =>
        {
            bench.Out.Write(Text("notices/LICENSE"));
            bench.Out.Write('\n');
            bench.Out.Write(Text("notices/THIRD-PARTY-NOTICES.txt"));
            return (int)ExitCode.Done;
        });
        return command;
    }

    /// <summary>A text that the program carries.</summary>
    internal static string Text(string name)
    {
        using Stream stream = typeof(NoticesVerb).Assembly.GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
