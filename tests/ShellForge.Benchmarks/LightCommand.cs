using ShellForge.Physics.Light;

namespace ShellForge.Benchmarks;

/// <summary>Maps the light of a sample again and again on one core; prints the median and the best of processor time.</summary>
internal static class LightCommand
{
    public static int Run(string sample, int repetitions)
    {
        LightScene scene = SampleHousing.Of(sample).Light!.Scene;
        (double median, double best, _) = ProcessorTime.Of(repetitions, () => LightModel.Map(scene));
        Console.WriteLine(
            $"{sample}: {scene.Leds.Length} LEDs, {scene.Face.OpenArea / (scene.Face.Step * scene.Face.Step):0} open cells of "
                + $"{scene.Face.Step} mm; "
            + $"{median:0} ms processor, best {best:0}");
        return 0;
    }
}
