using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using ShellForge.Cli.Printing;
using ShellForge.Cli.Reading;
using ShellForge.Cli.Verbs;

namespace ShellForge.Cli;

/// <summary>The command and all its verbs.</summary>
internal static class ShellForgeCommand
{
    private const string Description =
        """
        Turns the description of a round LED board into a housing that can be printed, assembled and trusted the first time.

        Exit status: 0 done, 1 a finding says do not print, 2 bad input or usage, 3 could not read or write.
        """;

    /// <summary>Runs a command line.</summary>
    /// <returns>The exit status.</returns>
    public static int Run(IReadOnlyList<string> args, Workbench bench)
    {
        try
        {
            ParseResult parsed;
            try
            {
                // A file whose name begins with @ is a file like any other, and no list of more arguments.
                parsed = Root(bench).Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
            }
            catch (InvalidOperationException e)
            {
                // A validator that asks for a value which can't be read gets this from the parser: the command line is wrong, not the
                // program.
                bench.Complain($"shellforge: {e.Message}");
                return (int)ExitCode.BadInput;
            }

            if (parsed.Action is ParseErrorAction)
            {
                return (int)Refuse(parsed, bench);
            }

            var surroundings = new InvocationConfiguration
            {
                Output = bench.Out,
                Error = bench.Err,
                EnableDefaultExceptionHandler = false,
                ProcessTerminationTimeout = null,
            };
            return parsed.Invoke(surroundings);
        }
        catch (OperationCanceledException) when (bench.Cancel.IsCancellationRequested)
        {
            bench.Complain("shellforge: stopped; nothing more was written");
            return (int)ExitCode.Interrupted;
        }
        catch (WrongFileException e)
        {
            bench.Complain($"shellforge: {e.Message}");
            return (int)ExitCode.BadInput;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            bench.Complain($"shellforge: {e.Message}");
            return (int)ExitCode.FileTrouble;
        }
#pragma warning disable CA1031 // The one catch-all: a defect must reach its maker, not the user as a stack trace.
        catch (Exception e)
#pragma warning restore CA1031
        {
            ProgramDefectReport.Tell(e, args, bench);
            return (int)ExitCode.ProgramDefect;
        }
    }

    /// <summary>The command with its verbs, one line each.</summary>
    public static RootCommand Root(Workbench bench)
    {
        var root = new RootCommand(Description)
        {
            NewVerb.Create(bench),
            ImportVerb.Create(bench),
            MakeVerb.Create(bench),
            CheckVerb.Create(bench),
            SweepVerb.Create(bench),
            CompareVerb.Create(bench),
            ViewVerb.Create(bench),
            CouponVerb.Create(bench),
            CalibrateVerb.Create(bench),
            InspectVerb.Create(bench),
            ProfilesVerb.Create(bench),
            RulesVerb.Create(bench),
            SchemaVerb.Create(bench),
            CompletionVerb.Create(bench),
            HelpVerb.Create(bench),
            ManualVerb.Create(bench),
            NoticesVerb.Create(bench),
        };
        UseOwnHelp(root, bench);
        return root;
    }

    private static ExitCode Refuse(ParseResult parsed, Workbench bench)
    {
        foreach (string mistake in UsageMistakes.Of(parsed))
        {
            bench.Complain($"shellforge: {mistake}");
        }

        Command command = parsed.CommandResult.Command;
        if (command is RootCommand && parsed.UnmatchedTokens.Count == 0)
        {
            HelpText.WriteVerbs(command, bench.Err, bench.TextWidth);
        }

        bench.Complain($"'shellforge {(command is RootCommand ? "VERB" : command.Name)} --help' tells more.");
        return ExitCode.BadInput;
    }

    // Help has the two names that people try.
    private static void UseOwnHelp(RootCommand root, Workbench bench)
    {
        foreach (HelpOption usual in root.Options.OfType<HelpOption>().ToArray())
        {
            root.Options.Remove(usual);
        }

        root.Options.Add(new HelpOption("--help", "-h") { Action = new HelpText(bench) });
    }
}
