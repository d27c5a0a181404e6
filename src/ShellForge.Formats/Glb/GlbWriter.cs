using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;
using System.Runtime.InteropServices;
using SharpGLTF.Memory;
using SharpGLTF.Schema2;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Glb;

/// <summary>A body of a picture in space.</summary>
/// <param name="Name">Name of the part.</param>
/// <param name="Mesh">Its mesh, as assembled, mm.</param>
/// <param name="Colour">Colour as <c>#rrggbb</c>.</param>
/// <param name="Opacity">0 (clear) to 1 (opaque).</param>
public sealed record SceneBody(string Name, Geometry.Solids.Mesh Mesh, string Colour, double Opacity);

/// <summary>
/// Binary glTF 2.0: one node a body under a root that turns z-up millimetres into the y-up metres of the format. No normals are
/// written, which by the specification asks viewers for flat shading: what planar faces need.
/// </summary>
public static class GlbWriter
{
    /// <summary>Writes a scene.</summary>
    /// <param name="stream">Where to; stays open.</param>
    /// <param name="title">Name of the scene.</param>
    /// <param name="bodies">Its bodies; those without a triangle are left out.</param>
    public static void Write(Stream stream, string title, ImmutableArray<SceneBody> bodies)
    {
        ModelRoot model = ModelRoot.CreateModel();
        Scene scene = model.UseScene(title);
        Node root = scene.CreateNode(title);
        root.LocalTransform = Matrix4x4.CreateScale(0.001f) * new Matrix4x4(1, 0, 0, 0, 0, 0, -1, 0, 0, 1, 0, 0, 0, 0, 0, 1);
        foreach (SceneBody body in bodies.Where(body => body.Mesh.TriangleCount > 0))
        {
            root.CreateNode(body.Name).Mesh = Drawn(model, body);
        }

        model.DefaultScene = scene;
        model.WriteGLB(stream);
    }

    private static Mesh Drawn(ModelRoot model, SceneBody body)
    {
        Mesh mesh = model.CreateMesh(body.Name);
        MeshPrimitive primitive = mesh.CreatePrimitive();
        primitive.DrawPrimitiveType = PrimitiveType.TRIANGLES;
        primitive.SetVertexAccessor("POSITION", Positions(model, body.Mesh));
        primitive.SetIndexAccessor(Indices(model, body.Mesh));
        primitive.Material = Coloured(model, body);
        return mesh;
    }

    private static Accessor Positions(ModelRoot model, Geometry.Solids.Mesh mesh)
    {
        float[] numbers = new float[3 * mesh.Vertices.Length];
        for (int v = 0; v < mesh.Vertices.Length; v++)
        {
            Point3 p = mesh.Vertices[v].ToMillimetres();
            numbers[3 * v] = (float)p.X;
            numbers[(3 * v) + 1] = (float)p.Y;
            numbers[(3 * v) + 2] = (float)p.Z;
        }

        BufferView view = model.UseBufferView(Bytes(numbers), target: BufferMode.ARRAY_BUFFER);
        Accessor accessor = model.CreateAccessor();
        accessor.SetVertexData(view, 0, mesh.Vertices.Length, AttributeFormat.Float3);
        accessor.UpdateBounds();
        return accessor;
    }

    private static Accessor Indices(ModelRoot model, Geometry.Solids.Mesh mesh)
    {
        int[] numbers = [.. mesh.Triangles];
        BufferView view = model.UseBufferView(Bytes(numbers), target: BufferMode.ELEMENT_ARRAY_BUFFER);
        Accessor accessor = model.CreateAccessor();
        accessor.SetIndexData(view, 0, numbers.Length, IndexEncodingType.UNSIGNED_INT);
        return accessor;
    }

    // glTF is little-endian, as is every platform that .NET runs on today.
    private static byte[] Bytes<T>(T[] numbers)
        where T : struct => MemoryMarshal.AsBytes(numbers.AsSpan()).ToArray();

    private static Material Coloured(ModelRoot model, SceneBody body)
    {
        Material material = model.CreateMaterial(body.Name);
        material.InitializePBRMetallicRoughness();
        MaterialChannel colour = material.FindChannel("BaseColor")
            ?? throw new InvalidOperationException("The material has no base colour.");
        colour.Color = new Vector4(Channel(body.Colour, 1), Channel(body.Colour, 3), Channel(body.Colour, 5), (float)body.Opacity);
        MaterialChannel surface = material.FindChannel("MetallicRoughness")
            ?? throw new InvalidOperationException("The material has no roughness.");
        surface.SetFactor("MetallicFactor", 0);
        surface.SetFactor("RoughnessFactor", 0.8f);
        material.Alpha = body.Opacity < 1 ? AlphaMode.BLEND : AlphaMode.OPAQUE;
        return material;
    }

    // Screen colours are sRGB, factors in glTF are linear. The square is near enough to the curve for a flat colour and is the
    // same on every platform, which a power is not.
    private static float Channel(string colour, int at)
    {
        double value = int.Parse(colour.AsSpan(at, 2), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture) / 255.0;
        return (float)(value * value);
    }
}
