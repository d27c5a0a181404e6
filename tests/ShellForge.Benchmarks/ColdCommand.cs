using System.Diagnostics;

namespace ShellForge.Benchmarks;

/// <summary>
/// Whole processes from their start to their end on the ring's three parts, ours and the peer in turn: medians in ms and their ratio.
/// Says something of the native executable only; run by the runtime it times the compiler.
/// </summary>
internal static class ColdCommand
{
    private static readonly string[] Ring = ["tub", "baffle", "cover"];

    public static int Run(string folder, int count)
    {
        if (PeerScript.Find("run.mjs") is not { } script)
        {
            return 1;
        }

        string input = Path.GetFullPath(folder);
        string target = Directory.CreateTempSubdirectory("ring").FullName;
        List<double> ours = [], peer = [];
        for (int i = 0; i < count; i++)
        {
            ours.Add(Milliseconds(() => PeerScript.Output(Environment.ProcessPath!, ["workload", input, target, .. Ring])));
            peer.Add(Milliseconds(() => PeerScript.Run(script, [input, "1", "0", .. Ring])));
        }

        Directory.Delete(target, recursive: true);
        Console.WriteLine($"cold {Median(ours):0} {Median(peer):0} {Median(ours) / Median(peer):0.000}");
        return 0;
    }

    private static double Milliseconds(Func<string> run)
    {
        Stopwatch watch = Stopwatch.StartNew();
        run();
        return watch.Elapsed.TotalMilliseconds;
    }

    private static double Median(List<double> times) => times.Order().ElementAt(times.Count / 2);
}
