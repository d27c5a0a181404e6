using System.CommandLine;

namespace ShellForge.Cli.Verbs;

/// <summary>
/// <c>completion</c>: a script for the shell that asks the command itself what may come next. The answers come from the directive
/// <c>[suggest]</c> of the parser, so they are never out of date.
/// </summary>
internal static class CompletionVerb
{
    private const string Bash =
        """
        # Put this line into ~/.bashrc:  source <(shellforge completion bash)
        _shellforge() {
          local IFS=$'\n'
          COMPREPLY=($(compgen -W "$(shellforge "[suggest:$COMP_POINT]" "$COMP_LINE" 2>/dev/null)" -- "${COMP_WORDS[COMP_CWORD]}"))
        }
        complete -o default -F _shellforge shellforge

        """;

    private const string Zsh =
        """
        # Put this line into ~/.zshrc, after compinit:  source <(shellforge completion zsh)
        _shellforge() {
          local -a words_that_fit
          words_that_fit=("${(@f)$(shellforge "[suggest:$CURSOR]" "$BUFFER" 2>/dev/null)}")
          compadd -- $words_that_fit
          _files
        }
        compdef _shellforge shellforge

        """;

    private const string Fish =
        """
        # Put this line into ~/.config/fish/config.fish:  shellforge completion fish | source
        complete -c shellforge -a '(shellforge "[suggest:"(commandline -C)"]" (commandline -cp) 2>/dev/null)'

        """;

    private const string PowerShell =
        """
        # Put this line into your profile:  shellforge completion powershell | Out-String | Invoke-Expression
        Register-ArgumentCompleter -Native -CommandName shellforge -ScriptBlock {
          param($word, $line, $position)
          shellforge "[suggest:$position]" "$line" | ForEach-Object {
            [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_)
          }
        }

        """;

    public static Command Create(Workbench bench)
    {
        var shell = new Argument<string>("SHELL") { Description = "bash, zsh, fish or powershell" };
        OneOf.Accept(shell, "bash", "zsh", "fish", "powershell");
        var command = new Command("completion", "Print the script that makes a shell complete this command") { shell };
        command.SetAction(parsed =>
        {
            string script = parsed.GetRequiredValue(shell) switch
            {
                "bash" => Bash,
                "zsh" => Zsh,
                "fish" => Fish,
                _ => PowerShell,
            };
            bench.Out.Write(script.ReplaceLineEndings("\n"));
            return (int)ExitCode.Done;
        });
        return command;
    }
}
