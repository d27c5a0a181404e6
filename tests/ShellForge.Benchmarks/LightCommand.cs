using System.Diagnostics;
using ShellForge.Board.Description;
using ShellForge.Checks;
using ShellForge.Geometry.Booleans;
using ShellForge.Housing;
using ShellForge.Physics.Light;
using ShellForge.Planning;
using ShellForge.Testing;

namespace ShellForge.Benchmarks;

/// <summary>Maps the light of a sample again and again on one core; prints the median and the best of processor time.</summary>
internal static class LightCommand
{
    public static int Run(string sample, int repetitions)
    {
        BoardFile file = WrittenBoard.Sample(sample);
        HousingPlan plan = HousingPlanner.Plan(file);
        var housing = new HousingUnderCheck
        {
            Board = file,
            Plan = plan,
            Parts = [.. HousingBuilder.Build(plan).Select(part => new CheckedPart { Plan = part.Plan, InPrint = SolidEvaluator.Evaluate(part.InPrint) })],
        };
        LightScene scene = housing.Light!.Scene;
        List<double> processor = [];
        for (int i = 0; i < repetitions; i++)
        {
            TimeSpan start = Process.GetCurrentProcess().TotalProcessorTime;
            LightModel.Map(scene);
            processor.Add((Process.GetCurrentProcess().TotalProcessorTime - start).TotalMilliseconds);
        }

        processor.Sort();
        Console.WriteLine(
            $"{sample}: {scene.Leds.Length} LEDs, {scene.Face.OpenArea / (scene.Face.Step * scene.Face.Step):0} open cells of {scene.Face.Step} mm; "
            + $"{processor[repetitions / 2]:0} ms processor, best {processor[0]:0}");
        return 0;
    }
}
