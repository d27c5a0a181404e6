using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Formats.Glb;

/// <summary>A body of a picture in space.</summary>
/// <param name="Name">Name of the part.</param>
/// <param name="Mesh">Its mesh, as assembled, mm.</param>
/// <param name="Colour">Colour as <c>#rrggbb</c>.</param>
/// <param name="Opacity">0 (clear) to 1 (opaque).</param>
public sealed record SceneBody(string Name, Mesh Mesh, string Colour, double Opacity);

/// <summary>
/// Binary glTF 2.0: one node a body under a root that turns z-up millimetres into the y-up metres of the format. No normals are
/// written, which by the specification (section 3.7.2.1) asks viewers for flat shading: what planar faces need.
/// </summary>
public static class GlbWriter
{
    private const uint Magic = 0x46546C67;
    private const uint JsonChunk = 0x4E4F534A;
    private const uint BinaryChunk = 0x004E4942;
    private const int ArrayBuffer = 34962;
    private const int ElementArrayBuffer = 34963;
    private const int Float32 = 5126;
    private const int UnsignedInt32 = 5125;
    private const int HeadLength = 12;
    private const int ChunkHeadLength = 8;

    /// <summary>Writes a scene.</summary>
    /// <param name="stream">Where to; stays open.</param>
    /// <param name="title">Name of the scene.</param>
    /// <param name="bodies">Its bodies; those without a triangle are left out.</param>
    public static void Write(Stream stream, string title, ImmutableArray<SceneBody> bodies)
    {
        SceneBody[] drawn = [.. bodies.Where(body => body.Mesh.TriangleCount > 0)];
        byte[] json = Padded(Json(title, drawn), (byte)' ');
        byte[] binary = Binary(drawn);

        Span<byte> head = stackalloc byte[HeadLength];
        BinaryPrimitives.WriteUInt32LittleEndian(head, Magic);
        BinaryPrimitives.WriteUInt32LittleEndian(head[4..], 2);
        BinaryPrimitives.WriteInt32LittleEndian(head[8..], HeadLength + (2 * ChunkHeadLength) + json.Length + binary.Length);
        stream.Write(head);
        WriteChunk(stream, JsonChunk, json);
        WriteChunk(stream, BinaryChunk, binary);
    }

    private static void WriteChunk(Stream stream, uint kind, byte[] content)
    {
        Span<byte> head = stackalloc byte[ChunkHeadLength];
        BinaryPrimitives.WriteInt32LittleEndian(head, content.Length);
        BinaryPrimitives.WriteUInt32LittleEndian(head[4..], kind);
        stream.Write(head);
        stream.Write(content);
    }

    // Every number takes four bytes, so all views are aligned as they follow each other: per body its positions, then its indices.
    private static byte[] Binary(SceneBody[] bodies)
    {
        byte[] binary = new byte[bodies.Sum(body => PositionBytes(body) + IndexBytes(body))];
        Span<byte> at = binary;
        foreach (SceneBody body in bodies)
        {
            foreach (LatticePoint3 vertex in body.Mesh.Vertices)
            {
                Point3 p = vertex.ToMillimetres();
                BinaryPrimitives.WriteSingleLittleEndian(at, (float)p.X);
                BinaryPrimitives.WriteSingleLittleEndian(at[4..], (float)p.Y);
                BinaryPrimitives.WriteSingleLittleEndian(at[8..], (float)p.Z);
                at = at[12..];
            }

            foreach (int vertex in body.Mesh.Triangles)
            {
                BinaryPrimitives.WriteInt32LittleEndian(at, vertex);
                at = at[4..];
            }
        }

        return binary;
    }

    private static int PositionBytes(SceneBody body) => 12 * body.Mesh.Vertices.Length;

    private static int IndexBytes(SceneBody body) => 4 * body.Mesh.Triangles.Length;

    private static byte[] Json(string title, SceneBody[] bodies)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartObject();
            json.WriteStartObject("asset");
            json.WriteString("version", "2.0");
            json.WriteString("generator", "ShellForge");
            json.WriteEndObject();
            json.WriteNumber("scene", 0);
            json.WriteStartArray("scenes");
            json.WriteStartObject();
            json.WriteString("name", title);
            WriteNumbers(json, "nodes", [0]);
            json.WriteEndObject();
            json.WriteEndArray();
            WriteNodes(json, title, bodies);
            WriteMeshes(json, bodies);
            WriteMaterials(json, bodies);
            WriteAccessors(json, bodies);
            WriteViews(json, bodies);
            json.WriteStartArray("buffers");
            json.WriteStartObject();
            json.WriteNumber("byteLength", bodies.Sum(body => PositionBytes(body) + IndexBytes(body)));
            json.WriteEndObject();
            json.WriteEndArray();
            json.WriteEndObject();
        }

        return stream.ToArray();
    }

    private static void WriteNodes(Utf8JsonWriter json, string title, SceneBody[] bodies)
    {
        json.WriteStartArray("nodes");
        json.WriteStartObject();
        json.WriteString("name", title);

        // Column by column: x stays, y goes to -z, z to y, each a thousandth.
        WriteNumbers(json, "matrix", [0.001, 0, 0, 0, 0, 0, -0.001, 0, 0, 0.001, 0, 0, 0, 0, 0, 1]);
        WriteNumbers(json, "children", [.. Enumerable.Range(1, bodies.Length).Select(i => (double)i)]);
        json.WriteEndObject();
        for (int i = 0; i < bodies.Length; i++)
        {
            json.WriteStartObject();
            json.WriteString("name", bodies[i].Name);
            json.WriteNumber("mesh", i);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteMeshes(Utf8JsonWriter json, SceneBody[] bodies)
    {
        json.WriteStartArray("meshes");
        for (int i = 0; i < bodies.Length; i++)
        {
            json.WriteStartObject();
            json.WriteString("name", bodies[i].Name);
            json.WriteStartArray("primitives");
            json.WriteStartObject();
            json.WriteStartObject("attributes");
            json.WriteNumber("POSITION", 2 * i);
            json.WriteEndObject();
            json.WriteNumber("indices", (2 * i) + 1);
            json.WriteNumber("material", i);
            json.WriteEndObject();
            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteMaterials(Utf8JsonWriter json, SceneBody[] bodies)
    {
        json.WriteStartArray("materials");
        foreach (SceneBody body in bodies)
        {
            json.WriteStartObject();
            json.WriteString("name", body.Name);
            json.WriteStartObject("pbrMetallicRoughness");
            WriteNumbers(
                json, "baseColorFactor",
                [Channel(body.Colour, 1), Channel(body.Colour, 3), Channel(body.Colour, 5), body.Opacity]);
            json.WriteNumber("metallicFactor", 0);
            json.WriteNumber("roughnessFactor", 0.8);
            json.WriteEndObject();
            json.WriteString("alphaMode", body.Opacity < 1 ? "BLEND" : "OPAQUE");
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteAccessors(Utf8JsonWriter json, SceneBody[] bodies)
    {
        json.WriteStartArray("accessors");
        for (int i = 0; i < bodies.Length; i++)
        {
            Box3 bounds = Box3.Empty;
            foreach (LatticePoint3 vertex in bodies[i].Mesh.Vertices)
            {
                bounds = bounds.Including(vertex.ToMillimetres());
            }

            json.WriteStartObject();
            json.WriteNumber("bufferView", 2 * i);
            json.WriteNumber("componentType", Float32);
            json.WriteNumber("count", bodies[i].Mesh.Vertices.Length);
            json.WriteString("type", "VEC3");
            WriteNumbers(json, "min", [bounds.Min.X, bounds.Min.Y, bounds.Min.Z]);
            WriteNumbers(json, "max", [bounds.Max.X, bounds.Max.Y, bounds.Max.Z]);
            json.WriteEndObject();
            json.WriteStartObject();
            json.WriteNumber("bufferView", (2 * i) + 1);
            json.WriteNumber("componentType", UnsignedInt32);
            json.WriteNumber("count", bodies[i].Mesh.Triangles.Length);
            json.WriteString("type", "SCALAR");
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteViews(Utf8JsonWriter json, SceneBody[] bodies)
    {
        json.WriteStartArray("bufferViews");
        int offset = 0;
        foreach (SceneBody body in bodies)
        {
            offset = WriteView(json, offset, PositionBytes(body), ArrayBuffer);
            offset = WriteView(json, offset, IndexBytes(body), ElementArrayBuffer);
        }

        json.WriteEndArray();
    }

    private static int WriteView(Utf8JsonWriter json, int offset, int length, int target)
    {
        json.WriteStartObject();
        json.WriteNumber("buffer", 0);
        json.WriteNumber("byteOffset", offset);
        json.WriteNumber("byteLength", length);
        json.WriteNumber("target", target);
        json.WriteEndObject();
        return offset + length;
    }

    private static void WriteNumbers(Utf8JsonWriter json, string name, ReadOnlySpan<double> numbers)
    {
        json.WriteStartArray(name);
        foreach (double number in numbers)
        {
            json.WriteNumberValue(number);
        }

        json.WriteEndArray();
    }

    private static byte[] Padded(byte[] content, byte filler)
    {
        byte[] padded = new byte[(content.Length + 3) / 4 * 4];
        padded.AsSpan().Fill(filler);
        content.CopyTo(padded, 0);
        return padded;
    }

    // Screen colours are sRGB, factors in glTF are linear. The square is near enough to the curve for a flat colour and is the
    // same on every platform, which a power is not.
    private static double Channel(string colour, int at)
    {
        double value = int.Parse(colour.AsSpan(at, 2), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture) / 255.0;
        return Math.Round(value * value, 6);
    }
}
