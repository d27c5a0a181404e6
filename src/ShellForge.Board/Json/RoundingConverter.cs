using System.Text.Json;
using System.Text.Json.Serialization;

namespace ShellForge.Board.Json;

/// <summary>
/// Writes numbers with no more digits than they mean; halves go up, as they do in texts. JSON has no infinities: what is not finite
/// becomes null. A negative zero becomes zero.
/// </summary>
/// <param name="decimals">Digits after the point, 0 to 15.</param>
public abstract class RoundingConverter(int decimals) : JsonConverter<double>
{
    /// <inheritdoc />
    public override double Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.GetDouble();

    /// <inheritdoc />
    public override void Write(Utf8JsonWriter writer, double value, JsonSerializerOptions options)
    {
        if (double.IsFinite(value))
        {
            writer.WriteNumberValue(Written(value));
        }
        else
        {
            writer.WriteNullValue();
        }
    }

    /// <summary>A finite number as it is written.</summary>
    protected virtual double Written(double value) => Rounded(value, decimals);

    /// <summary>A number with so many digits after the point.</summary>
    /// <param name="value">The number.</param>
    /// <param name="decimals">Digits after the point.</param>
    public static double Rounded(double value, int decimals) => Math.Round(value, decimals, MidpointRounding.AwayFromZero) + 0;

    /// <summary>What may not be exceeded, in whole steps: never more than the number is, as far as binary numbers tell.</summary>
    /// <param name="value">The number.</param>
    /// <param name="steps">Steps of which one is made, 1000 for thousandths.</param>
    public static double NotAbove(double value, int steps)
    {
        // Below these digits a difference is that of binary numbers.
        const int bits = 6;
        return Math.Floor(Math.Round(steps * value, bits)) / steps;
    }
}

/// <summary>Whole numbers.</summary>
public sealed class Whole() : RoundingConverter(0);

/// <summary>One digit after the point: more of a temperature would promise what no coefficient holds.</summary>
public sealed class Tenths() : RoundingConverter(1);

/// <summary>Two digits after the point.</summary>
public sealed class Hundredths() : RoundingConverter(2);

/// <summary>Three digits after the point: micrometres of a length.</summary>
public sealed class Thousandths() : RoundingConverter(3);

/// <summary>Three digits after the point of what may not be exceeded: never more than the number is.</summary>
public sealed class MostThousandths() : RoundingConverter(3)
{
    private const int Thousand = 1000;

    /// <inheritdoc />
    protected override double Written(double value) => NotAbove(value, Thousand);
}

/// <summary>Four digits after the point: as many as hand-over files give.</summary>
public sealed class TenThousandths() : RoundingConverter(4);

/// <summary>Six digits after the point: nanometres of a length.</summary>
public sealed class Millionths() : RoundingConverter(6);
