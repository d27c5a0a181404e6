using System.Text.Json;
using System.Text.Json.Serialization;
using ShellForge.Board.Json;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Import.Writing;

/// <summary>Writes a point as <c>[x, y]</c>.</summary>
internal sealed class PointPair : JsonConverter<Point2>
{
    public const int Decimals = 4;

    public override Point2 Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new NotSupportedException("Points are written only.");

    public override void Write(Utf8JsonWriter writer, Point2 value, JsonSerializerOptions options)
    {
        writer.WriteStartArray();
        writer.WriteNumberValue(RoundingConverter.Rounded(value.X, Decimals));
        writer.WriteNumberValue(RoundingConverter.Rounded(value.Y, Decimals));
        writer.WriteEndArray();
    }
}

/// <summary>Writes a box as <c>[left, bottom, right, top]</c>.</summary>
internal sealed class BoxCorners : JsonConverter<Box2>
{
    public override Box2 Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        throw new NotSupportedException("Boxes are written only.");

    public override void Write(Utf8JsonWriter writer, Box2 value, JsonSerializerOptions options)
    {
        writer.WriteStartArray();
        writer.WriteNumberValue(RoundingConverter.Rounded(value.Min.X, PointPair.Decimals));
        writer.WriteNumberValue(RoundingConverter.Rounded(value.Min.Y, PointPair.Decimals));
        writer.WriteNumberValue(RoundingConverter.Rounded(value.Max.X, PointPair.Decimals));
        writer.WriteNumberValue(RoundingConverter.Rounded(value.Max.Y, PointPair.Decimals));
        writer.WriteEndArray();
    }
}
