using ShellForge.Checks.Gauges;
using ShellForge.Pipeline;
using ShellForge.Testing;

namespace ShellForge.Benchmarks;

/// <summary>A shipped sample, planned and made into solids.</summary>
internal static class SampleHousing
{
    public static HousingUnderCheck Of(string sample) => HousingPipeline.Draw(WrittenBoard.Sample(sample));

    public static HousingUnderCheck OfFile(string path) => HousingPipeline.Draw(WrittenBoard.At(path));
}
