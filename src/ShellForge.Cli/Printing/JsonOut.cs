using System.Text;

namespace ShellForge.Cli.Printing;

/// <summary>Writes one JSON document as the whole result of a command.</summary>
internal static class JsonOut
{
    public static void Write(Workbench bench, byte[] document) => Write(bench, Encoding.UTF8.GetString(document));

    public static void Write(Workbench bench, string document) => bench.Out.Write(SafeText.OfJson(document));
}
