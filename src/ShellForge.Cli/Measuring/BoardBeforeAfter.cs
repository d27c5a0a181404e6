using ShellForge.Checks.Findings;
using ShellForge.Cli.Reading;
using ShellForge.Output.Report;
using ShellForge.Pipeline;
using ShellForge.Planning.Plan;

namespace ShellForge.Cli.Measuring;

/// <summary>What measured values change on a board: its numbers and its findings before and after.</summary>
/// <param name="Name">The board file as the user named it.</param>
/// <param name="Source">What was read of it before.</param>
/// <param name="Made">The housing before; null where the file can't be used.</param>
internal sealed record BoardBeforeAfter(string Name, BoardSource Source, MadeHousing? Made)
{
    /// <summary>The board as it is planned before anything is written.</summary>
    public static BoardBeforeAfter Before(string board, Workbench bench)
    {
        BoardSource source = BoardSource.Read(board, [], bench);
        return new BoardBeforeAfter(board, source, source.File is null ? null : HousingPipeline.Make(source.File, cancel: bench.Cancel));
    }

    /// <summary>Plans it again with what is written now, and tells what changed.</summary>
    public void TellAfter(Workbench bench)
    {
        BoardSource source = BoardSource.Read(Name, [], bench);
        HousingReport before = Made!.Report;
        MadeHousing made = HousingPipeline.Make(source.File!, cancel: bench.Cancel);
        HousingReport after = made.Report;
        bench.Out.Write($"{Name}, before and after:\n");
        Dictionary<string, Decision> old = Made.Housing.Plan.Decisions.GroupBy(each => each.Path).ToDictionary(each => each.Key,
            each => each.Last());
        int changed = 0;
        foreach (Decision decision in made.Housing.Plan.Decisions)
        {
            if (old.TryGetValue(decision.Path, out Decision? was) && (was.Value != decision.Value || was.Why != decision.Why))
            {
                changed++;
                bench.Out.Write(was.Value == decision.Value
                    ? $"  {decision.Path}: {decision.Value} stays ({decision.Why})\n"
                    : $"  {decision.Path}: {was.Value} becomes {decision.Value} ({decision.Why})\n");
            }
        }

        if (changed == 0)
        {
            bench.Out.Write(
                $"  no number changes: it is printed on {source.File!.Print.Printer.Name} of {source.File!.Print.Shell.Name}; only what "
                    + $"was measured of the two together counts\n");
        }

        foreach (Finding finding in before.Findings.Where(was => !after.Findings.Any(now => Same(was, now))))
        {
            bench.Out.Write($"  gone: {finding.Rule}, {finding.Subject}: {finding.Message}\n");
        }

        foreach (Finding finding in after.Findings.Where(now => !before.Findings.Any(was => Same(was, now))))
        {
            bench.Out.Write($"  new: {finding.Rule}, {finding.Subject}: {finding.Message}\n");
        }

        bench.Out.Write($"  verdict: {ReportJson.Word(before.Verdict)}, then {ReportJson.Word(after.Verdict)}\n");
    }

    private static bool Same(Finding a, Finding b) =>
        a.Rule == b.Rule && a.Subject == b.Subject && a.Severity == b.Severity && a.Message == b.Message;
}
