using ShellForge.Cli.Comparing;
using ShellForge.Cli.Reading;
using ShellForge.Sweep.Comparing;

namespace ShellForge.Cli.Measuring;

/// <summary>What measured values change on a board: the housing before and after, compared as two housings are.</summary>
/// <param name="Name">The board file as the user named it.</param>
/// <param name="Source">What was read of it before.</param>
/// <param name="State">The housing before; null where the file can't be used.</param>
internal sealed record BoardBeforeAfter(string Name, BoardSource Source, HousingState? State)
{
    /// <summary>The board as it is planned before anything is written.</summary>
    public static BoardBeforeAfter Before(string board, Workbench bench)
    {
        BoardSource source = BoardSource.Read(board, [], bench);
        return new BoardBeforeAfter(board, source, ComparedSide.Of(source, bench.Cancel).State);
    }

    /// <summary>Plans it again with what is written now, and tells what changed.</summary>
    public void TellAfter(Workbench bench)
    {
        HousingState after = ComparedSide.Read(Name, [], bench).State
            ?? throw new InvalidOperationException($"{Name} was read before the profiles were written, and not after");
        var comparison = HousingComparison.Of(State!, after);
        bench.Out.Write($"{Name}, before and after:\n");
        if (comparison.IsEmpty)
        {
            bench.Out.Write(
                $"Nothing differs: it is printed on {Source.File!.Print.Printer.Name} of {Source.File!.Print.Shell.Name}, and only what "
                    + "was measured of the two together counts.\n");
            return;
        }

        ChangesText.Write(bench.OutConsole(), comparison);
    }
}
