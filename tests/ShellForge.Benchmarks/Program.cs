using System.Globalization;
using ShellForge.Benchmarks;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
switch (args)
{
    case ["workload", string folder, string target, .. string[] names]:
        return WorkloadCommand.Run(folder, target, names);
    default:
        Console.Error.WriteLine("usage: workload DIR OUT [PART...]");
        return 2;
}
