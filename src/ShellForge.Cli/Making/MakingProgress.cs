using ShellForge.Pipeline;
using Spectre.Console;

namespace ShellForge.Cli.Making;

/// <summary>Shows on a terminal what is being done; elsewhere nothing.</summary>
internal static class MakingProgress
{
    /// <summary>Runs work that tells its steps.</summary>
    public static T Run<T>(Workbench bench, bool quiet, Func<Action<PipelineStage>?, T> work)
    {
        if (quiet || !bench.ShowsProgress)
        {
            return work(null);
        }

        return bench.ErrConsole().Status()
            .Spinner(Spinner.Known.Line)
            .Start("Reading", status => work(step => status.Status(Words(step))));
    }

    private static string Words(PipelineStage step) => step switch
    {
        PipelineStage.Plan => "Deciding every dimension",
        PipelineStage.Parts => "Computing the parts",
        _ => "Checking",
    };
}
