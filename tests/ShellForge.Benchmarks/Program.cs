using System.Globalization;
using ShellForge.Benchmarks;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
switch (args)
{
    case ["workload", string folder, string target, .. string[] names]:
        return WorkloadCommand.Run(folder, target, names);
    case ["peer", string folder, .. string[] names]:
        return PeerCommand.Run(folder, names);
    case ["fuzz", string seed, string count, string target]:
        return FuzzCommand.Run(int.Parse(seed, CultureInfo.InvariantCulture), int.Parse(count, CultureInfo.InvariantCulture), target);
    default:
        Console.Error.WriteLine("usage: peer DIR [PART...] | workload DIR OUT [PART...] | fuzz SEED COUNT DIR");
        return 2;
}
