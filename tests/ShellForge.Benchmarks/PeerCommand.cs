using System.Diagnostics;
using System.Text.Json;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Solids;

namespace ShellForge.Benchmarks;

/// <summary>
/// Ours and the peer (manifold-3d, WASM in Node) in turn on each part: warm medians of the booleans alone, on operands that both
/// have loaded before. Prints PART ours_ms peer_ms ratio triangles volume_error, the error against exact arithmetic.
/// </summary>
internal static class PeerCommand
{
    // From arbitrary-precision arithmetic on the same meshes; diff1M from doubles.
    private static readonly Dictionary<string, double> ExactVolume = new()
    {
        ["tub"] = 23122.2056352586,
        ["baffle"] = 12272.3511324939,
        ["cover"] = 22364.9248403253,
        ["spheres8"] = 23557.9866826185,
        ["diff10k"] = 2343.04563665924,
        ["diff100k"] = 2345.59372322717,
        ["diff1M"] = 2345.8558953,
    };

    public static int Run(string folder, string[] names)
    {
        string? script = PeerScript.Find("run.mjs");
        using Workload workload = Workload.Read(folder);
        double ringOurs = 0, ringPeer = 0, peerPeak = 0;
        foreach ((string name, List<(char, int[])> steps) in workload.Parts)
        {
            if (names.Length > 0 && !names.Contains(name))
            {
                continue;
            }

            int repetitions = name.StartsWith("diff1", StringComparison.Ordinal) && name != "diff10k" ? 3 : 15;
            (double ours, SolidMesh solid) = Measure(workload, steps, repetitions);
            (double peer, double megabytes) = script is null ? (double.NaN, double.NaN) : Peer(script, folder, name, repetitions);
            peerPeak = Math.Max(peerPeak, megabytes);
            double error = ExactVolume.TryGetValue(name, out double exact) ? (BinaryStl.Volume(solid.Mesh) - exact) / exact : double.NaN;
            Console.WriteLine($"{name} {ours:0.00} {peer:0.00} {ours / peer:0.000} {solid.TriangleCount} {error:0.0e+0}");
            if (name is "tub" or "baffle" or "cover")
            {
                ringOurs += ours;
                ringPeer += peer;
            }
        }

        Console.WriteLine($"peak {Process.GetCurrentProcess().PeakWorkingSet64 / 1048576} MB, peer {peerPeak:0} MB");
        Console.WriteLine($"ring {ringOurs / ringPeer:0.000}");
        return 0;
    }

    // Both are run at least three times, and so long, before they are timed: compilers of both make hot code better in the meantime.
    private const double WarmSeconds = 2;

    private static (double Milliseconds, SolidMesh Solid) Measure(Workload workload, List<(char, int[])> steps, int repetitions)
    {
        Solid tree = workload.PreparedTree(steps);
        List<double> times = [];
        SolidMesh result = SolidMesh.Empty;
        Stopwatch warming = Stopwatch.StartNew();
        for (int i = 0; times.Count < repetitions; i++)
        {
            bool isWarm = i >= 3 && warming.Elapsed.TotalSeconds >= WarmSeconds;
            Stopwatch watch = Stopwatch.StartNew();
            result = SolidEvaluator.Evaluate(tree).Require();
            if (isWarm)
            {
                times.Add(watch.Elapsed.TotalMilliseconds);
            }
        }

        times.Sort();
        return (times[times.Count / 2], result);
    }

    private static (double Milliseconds, double Megabytes) Peer(string script, string folder, string name, int repetitions)
    {
        string line = PeerScript.Run(script, Path.GetFullPath(folder), $"{repetitions}", $"{WarmSeconds}", name);
        using JsonDocument json = JsonDocument.Parse(line);
        return (json.RootElement.GetProperty("ms").GetDouble(), json.RootElement.GetProperty("peakMb").GetDouble());
    }
}
