using System.Globalization;
using System.Text.Json;
using ShellForge.Output.Words;

namespace ShellForge.Cli.Sweeping;

/// <summary>
/// The few lines that run a sweep's shares on an engine that is already there, to be looked at and changed for the site. One task of the
/// engine's array is one share; what a lost task leaves is made by whoever runs it again.
/// </summary>
internal static class SiteScript
{
    /// <summary>The engines, by the word that names them.</summary>
    public static IReadOnlyDictionary<string, Func<SiteWish, string>> All { get; } =
        new SortedDictionary<string, Func<SiteWish, string>>(StringComparer.Ordinal)
        {
            ["slurm"] = Slurm,
            ["kubernetes"] = Kubernetes,
            ["parallel"] = Parallel,
        };

    /// <summary>
    /// Why a script for these names can't be written, in a sentence; null where it can. A line of a script ends where a name has a line
    /// end, and the engine puts numbers where a name has braces.
    /// </summary>
    public static string? Refuses(SiteWish wish) =>
        new[] { wish.Plan, wish.Folder }.FirstOrDefault(name => name.Any(c => char.IsControl(c) || c is '{' or '}')) is { } bad
            ? $"'{bad}' can't stand in a script: rename it, without braces and line ends"
            : null;

    private static string Merge(string folder) => $"shellforge sweep --merge {ShellWord.OfPath(folder)}";

    // YAML takes a string of JSON for what it says.
    private static string Json(string name) => $"\"{JsonEncodedText.Encode(name)}\"";

    private static string Slurm(SiteWish wish) => string.Create(CultureInfo.InvariantCulture, $$"""
        #!/bin/sh
        # Send it:  id=$(sbatch --parsable this-file) && sbatch --dependency=afterany:$id --wrap {{ShellWord.Of(Merge(wish.Folder))}}
        # Plan, boards and folder lie where every node sees them. Sites limit the size of arrays: fewer shares are slower, not wrong.
        #SBATCH --job-name=sweep
        #SBATCH --array=0-{{wish.Shares - 1}}
        #SBATCH --cpus-per-task=2
        #SBATCH --mem=2G
        #SBATCH --requeue
        export DOTNET_PROCESSOR_COUNT=$SLURM_CPUS_PER_TASK
        exec shellforge sweep {{ShellWord.OfPath(wish.Plan)}} -o {{ShellWord.OfPath(wish.Folder)}} --quiet
        """);

    private static string Kubernetes(SiteWish wish) => string.Create(CultureInfo.InvariantCulture, $$"""
        # Send it:  kubectl apply -f this-file && kubectl wait --for=condition=complete --timeout=24h job/sweep
        # Then join what is there, in a container with the same volume:  {{Merge("/sweep/" + wish.Folder)}}
        # The volume "sweep-files" holds plan and boards, and many nodes may write to it (ReadWriteMany).
        # The image has the native executable and nothing else:
        #   FROM debian:12-slim
        #   COPY shellforge /usr/local/bin/shellforge
        #   ENTRYPOINT ["shellforge"]
        apiVersion: batch/v1
        kind: Job
        metadata:
          name: sweep
        spec:
          completionMode: Indexed
          completions: {{wish.Shares}}
          parallelism: {{Math.Min(wish.Shares, 16)}}
          backoffLimitPerIndex: 3
          template:
            spec:
              restartPolicy: Never
              containers:
                - name: share
                  image: shellforge
                  workingDir: /sweep
                  args: [sweep, {{Json(wish.Plan)}}, -o, {{Json(wish.Folder)}}, --quiet]
                  env:
                    - {name: SHELLFORGE_SHARES, value: "{{wish.Shares}}"}
                    - {name: DOTNET_PROCESSOR_COUNT, value: "2"}
                  resources:
                    requests: {cpu: "2", memory: 2Gi}
                  volumeMounts:
                    - {name: files, mountPath: /sweep}
              volumes:
                - name: files
                  persistentVolumeClaim: {claimName: sweep-files}
        """);

    private static string Parallel(SiteWish wish) => string.Create(CultureInfo.InvariantCulture, $$"""
        #!/bin/sh
        # On several machines that see the same folder: add  --sshlogin 2/one,2/other --workdir . --env SHELLFORGE_SHARES  after "parallel".
        export SHELLFORGE_SHARES={{wish.Shares}}
        seq 0 {{wish.Shares - 1}} | parallel --jobs 2 --retries 3 --quote \
          shellforge sweep {{ShellWord.OfPath(wish.Plan)}} -o {{ShellWord.OfPath(wish.Folder)}} --shard {}/{{wish.Shares}} --jobs 1 --quiet
        {{Merge(wish.Folder)}}
        """);
}

/// <summary>What a script is for.</summary>
/// <param name="Plan">The plan's file.</param>
/// <param name="Folder">The sweep's folder.</param>
/// <param name="Shares">How many shares.</param>
internal sealed record SiteWish(string Plan, string Folder, int Shares);
