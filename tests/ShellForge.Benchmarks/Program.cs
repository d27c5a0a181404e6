using System.Globalization;
using ShellForge.Benchmarks;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
switch (args)
{
    case ["workload", string folder, string target, .. string[] names]:
        return WorkloadCommand.Run(folder, target, names);
    case ["peer", string folder, .. string[] names]:
        return PeerCommand.Run(folder, names);
    case ["cold", string folder, string count]:
        return ColdCommand.Run(folder, int.Parse(count, CultureInfo.InvariantCulture));
    case ["repeat", string folder, string count, .. string[] names]:
        return RepeatCommand.Run(folder, int.Parse(count, CultureInfo.InvariantCulture), names);
    case ["light", string sample, string count]:
        return LightCommand.Run(sample, int.Parse(count, CultureInfo.InvariantCulture));
    case ["writing", string sample, string count]:
        return WritingCommand.Run(sample, int.Parse(count, CultureInfo.InvariantCulture), null);
    case ["writing", string sample, string count, string stage]:
        return WritingCommand.Run(sample, int.Parse(count, CultureInfo.InvariantCulture), stage);
    case ["print-time", .. string[] boards]:
        return PrintTimeCommand.Run(boards);
    case ["fuzz", string seed, string count, string target, .. string[] scale]:
        return FuzzCommand.Run(
            int.Parse(seed, CultureInfo.InvariantCulture),
            int.Parse(count, CultureInfo.InvariantCulture),
            target,
            scale.Length == 0 ? 1 : double.Parse(scale[0], CultureInfo.InvariantCulture));
    case ["boards-again", string stage, .. string[] files]:
        return BoardsCommand.Again(stage, files);
    case ["boards", string stage, string first, string count, string target]:
        return BoardsCommand.Run(stage, int.Parse(first, CultureInfo.InvariantCulture), int.Parse(count, CultureInfo.InvariantCulture),
            target);
    case ["gallery", string folder, string target]:
        return GalleryCommand.Run(folder, target);
    case ["differential", string seed, string count, string target]:
        return DifferentialCommand.Run(int.Parse(seed, CultureInfo.InvariantCulture), int.Parse(count, CultureInfo.InvariantCulture),
            target);
    default:
        Console.Error.WriteLine(
            "usage: peer DIR [PART...] | cold DIR COUNT | workload DIR OUT [PART...] | repeat DIR COUNT [PART...] | light SAMPLE COUNT "
            + "| writing SAMPLE COUNT [STAGE] | print-time [--no-slicer] BOARD.yaml... | fuzz SEED COUNT DIR [SCALE] | differential SEED "
            + "COUNT DIR "
            + "| boards draw|plan|make|check SEED COUNT DIR | boards-again plan|make|check FILE... | gallery DIR OUT");
        return 2;
}
