using ShellForge.Physics.Heat;
using ShellForge.Planning.Remembering;

namespace ShellForge.Planning.Marks;

/// <summary>Temperatures that are worked out once for all housings that are heated and cooled alike.</summary>
/// <param name="memory">Knows what was worked out before.</param>
public sealed class RememberedHeat(WorkMemory memory)
{
    // A result with its warm-up, about.
    private const long BytesOfResult = 2000;

    /// <summary>Temperatures of a housing: <see cref="HeatModel.Of"/>.</summary>
    public HeatResult Of(HeatInput input, HeatCoefficients coefficients) =>
        memory.Of(new Temperatures(Content.Of(input), coefficients), () => HeatModel.Of(input, coefficients), _ => BytesOfResult);

    /// <summary>Mean temperature of the inner air: <see cref="HeatModel.AirCelsius"/>.</summary>
    public double AirCelsius(HeatInput input, HeatCoefficients coefficients) =>
        memory.Of(new InnerAir(Content.Of(input), coefficients), () => HeatModel.AirCelsius(input, coefficients), _ => 0);

    /// <summary>
    /// The largest brightness that plastic and LEDs bear: <see cref="HeatModel.LargestBrightness"/>. What the housing is run at is none
    /// of its business.
    /// </summary>
    public double LargestBrightness(HeatInput input, HeatCoefficients coefficients, double plasticCelsius, double ledCelsius)
    {
        HeatInput dark = input with { Brightness = 0 };
        return memory.Of(
            new Bearable(Content.Of(dark), coefficients, plasticCelsius, ledCelsius),
            () => HeatModel.LargestBrightness(dark, coefficients, plasticCelsius, ledCelsius), _ => 0);
    }

    private sealed record Temperatures(Content Input, HeatCoefficients Coefficients);

    private sealed record InnerAir(Content Input, HeatCoefficients Coefficients);

    private sealed record Bearable(Content Input, HeatCoefficients Coefficients, double PlasticCelsius, double LedCelsius);

    // What goes into the model, equal to another when all of it is.
    private sealed record Content(HeatInput Bare, Listed<SectionRing> Rings)
    {
        public static Content Of(HeatInput input) => new(input with { Rings = [] }, new(input.Rings));
    }
}
