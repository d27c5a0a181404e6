using System.Globalization;
using System.Text.Json;
using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

/// <summary>
/// Boards that have a known fault of the field, each with a twin that just does not: the finding appears in the first, at the right place
/// and with the right value, and not in the second. What is expected stands beside the boards as <c>NAME.expect</c>, with how the value follows
/// from the board where a hand can work it out.
/// </summary>
public class FaultBoardsTests
{
    public static TheoryData<string> Faults =>
        [.. Directory.GetFiles(Repository.At("tests", "boards", "faults"), "*.expect").Order(StringComparer.Ordinal).Select(path => Path.GetFileNameWithoutExtension(path)!)];

    [Theory]
    [MemberData(nameof(Faults))]
    public void The_fault_is_found_where_it_is_and_not_in_its_twin(string name)
    {
        Expected expected = Expected.Read(Repository.At("tests", "boards", "faults", name + ".expect"));
        JsonElement[] found = Findings(name);
        Assert.True(found.Any(expected.Fits), $"{name}: {expected}, found\n{Told(found)}");

        JsonElement[] twin = Findings(name + "-twin");
        Assert.False(twin.Any(expected.IsStillThere), $"{name}-twin: found {expected.Rule}\n{Told(twin)}");
    }

    private static JsonElement[] Findings(string board)
    {
        (int exit, string told) = CommandRun.Run(Repository.At("tests", "boards", "faults"), "check", board + ".yaml", "--json");
        Assert.True(exit is 0 or 1, $"{board}: {told}");
        return [.. JsonDocument.Parse(told).RootElement.GetProperty("findings").EnumerateArray()];
    }

    private static string Told(JsonElement[] findings) => string.Join('\n', findings.Select(finding => finding.GetRawText().ReplaceLineEndings(" ")));

    private sealed record Expected(string Rule, string Severity, string Subject, double Least, double Most, double[] At, double Within, bool TwinMayNote)
    {
        public static Expected Read(string path)
        {
            Dictionary<string, string> lines = File.ReadAllLines(path).Where(line => line.Contains(':', StringComparison.Ordinal))
                .ToDictionary(line => line[..line.IndexOf(':', StringComparison.Ordinal)], line => line[(line.IndexOf(':', StringComparison.Ordinal) + 1)..].Trim());
            string[] measured = lines["measured"].Split("..");
            string[] at = lines["at"].Split("within");
            return new Expected(
                lines["rule"], lines["severity"], lines["subject"], Number(measured[0]), Number(measured[1]),
                [.. at[0].Trim().Trim('[', ']').Split(',').Select(Number)], Number(at[1]),
                lines.GetValueOrDefault("twin") == "note");
        }

        public bool IsOfIt(JsonElement finding) =>
            finding.GetProperty("rule").GetString() == Rule && finding.GetProperty("subject").GetString()!.StartsWith(Subject, StringComparison.Ordinal);

        public bool IsStillThere(JsonElement finding) => IsOfIt(finding) && !(TwinMayNote && finding.GetProperty("severity").GetString() == "note");

        public bool Fits(JsonElement finding)
        {
            if (!IsOfIt(finding) || finding.GetProperty("severity").GetString() != Severity || finding.GetProperty("at").ValueKind == JsonValueKind.Null)
            {
                return false;
            }

            double measured = finding.GetProperty("measured").GetDouble();
            double[] at = [.. finding.GetProperty("at").EnumerateArray().Select(value => value.GetDouble())];
            double away = Math.Sqrt(at.Zip(At).Sum(pair => (pair.First - pair.Second) * (pair.First - pair.Second)));
            return measured >= Least && measured <= Most && away <= Within;
        }

        private static double Number(string text) => double.Parse(text.Trim(), CultureInfo.InvariantCulture);
    }
}
