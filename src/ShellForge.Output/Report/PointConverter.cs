using System.Text.Json;
using System.Text.Json.Serialization;
using ShellForge.Board.Json;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Output.Report;

/// <summary>Writes a point as <c>[x, y, z]</c>.</summary>
/// <param name="decimals">Digits after the point.</param>
internal abstract class PointConverter(int decimals) : JsonConverter<Point3>
{
    public override Point3 Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new NotSupportedException("Points are written only.");

    public override void Write(Utf8JsonWriter writer, Point3 value, JsonSerializerOptions options)
    {
        writer.WriteStartArray();
        writer.WriteNumberValue(RoundingConverter.Rounded(value.X, decimals));
        writer.WriteNumberValue(RoundingConverter.Rounded(value.Y, decimals));
        writer.WriteNumberValue(RoundingConverter.Rounded(value.Z, decimals));
        writer.WriteEndArray();
    }
}

/// <summary>Points to the micrometre, as reports need them.</summary>
internal sealed class MicrometrePoints() : PointConverter(3);

/// <summary>Points to the nanometre: an inspected file may be finer than what we write.</summary>
internal sealed class NanometrePoints() : PointConverter(6);
