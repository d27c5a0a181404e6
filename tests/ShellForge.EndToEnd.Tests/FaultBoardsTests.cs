using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Checks;
using ShellForge.Checks.Findings;
using ShellForge.Cli;
using ShellForge.Cli.Reading;
using ShellForge.Geometry.Numerics;
using ShellForge.Pipeline;
using ShellForge.Testing;

namespace ShellForge.EndToEnd.Tests;

/// <summary>
/// Boards that have a known fault of the field, each with a twin that just does not: the finding appears in the first, at the right place
/// and with the right value, and not in the second. What is expected stands beside the boards as <c>NAME.expect</c>, with how the value
/// follows from the board where a hand can work it out.
/// </summary>
public class FaultBoardsTests
{
    public static TheoryData<string> Faults =>
        [.. Directory.GetFiles(Repository.At("tests", "boards", "faults"), "*.expect").Order(StringComparer.Ordinal)
            .Select(path => Path.GetFileNameWithoutExtension(path)!)];

    [Theory]
    [MemberData(nameof(Faults))]
    public void The_fault_is_found_where_it_is_and_not_in_its_twin(string name)
    {
        Expected expected = Expected.Read(Repository.At("tests", "boards", "faults", name + ".expect"));
        Finding[] found = Findings(name, expected.Rule);
        Assert.True(found.Any(expected.Fits), $"{name}: {expected}, found\n{Told(found)}");

        Finding[] twin = Findings(name + "-twin", expected.Rule);
        Assert.False(twin.Any(expected.IsStillThere), $"{name}-twin: found {expected.Rule}\n{Told(twin)}");
        Assert.Empty(found.Concat(twin).SelectMany(finding => MessageStyle.Faults(finding.Message, finding.Remedy)));
    }

    // What a rule finds hangs on no other rule: the one that is asked for, and what the plan refused, or all where the plan alone tells it.
    private static Finding[] Findings(string board, string rule)
    {
        using var told = new StringWriter();
        BoardSource source = BoardSource.Read(
            board + ".yaml", [], new Workbench { Out = told, Err = told, Folder = Repository.At("tests", "boards", "faults") });
        Assert.True(source.File is not null, $"{board}: {string.Join('\n', source.Diagnostics)}");
        ImmutableArray<IRule> rules = [.. RuleList.All.Where(each => each.Name == rule || each is PlanRefused)];
        return [.. CheckRun.Run(HousingPipeline.Draw(source.File), rules.Length > 1 ? rules : RuleList.All)];
    }

    private static string Told(Finding[] findings) => string.Join('\n', findings.Select(finding => finding.ToString()));

    private sealed record Expected(string Rule, Severity Severity, string Subject, double Least, double Most, Point3 At, double Within,
        bool TwinMayNote, string Says)
    {
        // Files hold floats.
        private const double Slack = 1e-4;

        public static Expected Read(string path)
        {
            Dictionary<string, string> lines = File.ReadAllLines(path).Where(line => line.Contains(':', StringComparison.Ordinal))
                .ToDictionary(line => line[..line.IndexOf(':', StringComparison.Ordinal)],
                    line => line[(line.IndexOf(':', StringComparison.Ordinal) + 1)..].Trim());

            // Some have nothing to measure.
            string[] measured = lines["measured"] == "none" ? ["NaN", "NaN"] : lines["measured"].Split("..");
            string[] at = lines["at"].Split("within");
            double[] place = [.. at[0].Trim().Trim('[', ']').Split(',').Select(Number)];
            return new Expected(
                lines["rule"], Enum.Parse<Severity>(lines["severity"], ignoreCase: true), lines["subject"], Number(measured[0]),
                Number(measured[1]),
                new Point3(place[0], place[1], place[2]), Number(at[1]),
                lines.GetValueOrDefault("twin") == "note", lines.GetValueOrDefault("says", ""));
        }

        public bool IsOfIt(Finding finding) => finding.Rule == Rule && finding.Subject.StartsWith(Subject, StringComparison.Ordinal);

        public bool IsStillThere(Finding finding) => IsOfIt(finding) && !(TwinMayNote && finding.Severity == Severity.Note);

        public bool Fits(Finding finding) =>
            IsOfIt(finding) && finding.Severity == Severity && finding.At is { } at
            && (double.IsNaN(Least) ? finding.Measured is null
                : finding.Measured >= Least - Slack && finding.Measured <= Most + Slack) && Point3.Distance(at, At) <= Within
            && $"{finding.Message}; {finding.Remedy}".Contains(Says, StringComparison.Ordinal);

        private static double Number(string text) => double.Parse(text.Trim(), CultureInfo.InvariantCulture);
    }
}
