using System.Reflection;
using System.Text;

namespace ShellForge.Cli;

/// <summary>Tells of a defect of the program: what to send, and where the details lie. Never a stack trace on the terminal.</summary>
internal static class ProgramDefectReport
{
    public static void Tell(Exception defect, IReadOnlyList<string> args, Workbench bench)
    {
        string version = Assembly.GetExecutingAssembly().GetName().Version?.ToString(3) ?? "unknown";
        string details = $"shellforge {version}\n{string.Join(' ', args.Prepend("shellforge"))}\n\n{defect}\n";
        string? saved = Saved(details);
        bench.Complain($"shellforge: a defect of the program, not of your file: {defect.GetType().Name}: {FirstLine(defect.Message)}");
        bench.Complain("Nothing was written into the output folder. Please send to the project:");
        bench.Complain($"  - the command: {string.Join(' ', args.Prepend("shellforge"))}");
        bench.Complain("  - the board file, with your own profiles if it uses any");
        bench.Complain(saved is null ? $"  - the version: {version}" : $"  - this file with the details: {saved}");
    }

    private static string? Saved(string details)
    {
        try
        {
            string path = Path.Combine(
                Path.GetTempPath(), $"shellforge-defect-{Environment.ProcessId}-{Path.GetRandomFileName()[..6]}.txt");
            using var stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None);
            stream.Write(Encoding.UTF8.GetBytes(details));
            return path;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The report of a defect must not fail for want of a place to put it.
            return null;
        }
    }

    private static string FirstLine(string message)
    {
        int end = message.AsSpan().IndexOfAny('\r', '\n');
        return end < 0 ? message : message[..end];
    }
}
