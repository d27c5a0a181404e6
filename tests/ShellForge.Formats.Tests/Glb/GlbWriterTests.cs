using System.Buffers.Binary;
using System.Text.Json;
using ShellForge.Formats.Glb;

namespace ShellForge.Formats.Tests.Glb;

public class GlbWriterTests
{
    private static byte[] Written()
    {
        using var stream = new MemoryStream();
        GlbWriter.Write(
            stream, "Harbour light",
            [
                new SceneBody("tub", Bodies.Tetrahedron(10), "#202020", 1),
                new SceneBody("diffuser", Bodies.Tetrahedron(20), "#ffffff", 0.5),
                new SceneBody("nothing", Geometry.Solids.Mesh.Empty, "#ffffff", 1),
            ]);
        return stream.ToArray();
    }

    private static JsonElement Json(byte[] glb)
    {
        int length = BinaryPrimitives.ReadInt32LittleEndian(glb.AsSpan(12));
        return JsonDocument.Parse(glb.AsMemory(20, length)).RootElement;
    }

    [Fact]
    public void The_container_and_its_chunks_have_the_lengths_they_name()
    {
        byte[] glb = Written();

        Assert.Equal("glTF"u8.ToArray(), glb[..4]);
        Assert.Equal(2, BinaryPrimitives.ReadInt32LittleEndian(glb.AsSpan(4)));
        Assert.Equal(glb.Length, BinaryPrimitives.ReadInt32LittleEndian(glb.AsSpan(8)));
    }

    [Fact]
    public void Every_body_that_has_triangles_is_a_named_node_under_one_root()
    {
        JsonElement json = Json(Written());

        string[] names = [.. json.GetProperty("nodes").EnumerateArray().Select(node => node.GetProperty("name").GetString()!)];
        Assert.Equal(["Harbour light", "tub", "diffuser"], names);
        Assert.Equal("BLEND", json.GetProperty("materials")[1].GetProperty("alphaMode").GetString());
    }

    [Fact]
    public void Positions_carry_the_bounds_of_the_mesh()
    {
        JsonElement json = Json(Written());
        JsonElement position = json.GetProperty("accessors").EnumerateArray().First(a => a.GetProperty("type").GetString() == "VEC3");

        Assert.All(position.GetProperty("max").EnumerateArray(), value => Assert.Equal(10, value.GetDouble()));
        Assert.All(position.GetProperty("min").EnumerateArray(), value => Assert.Equal(0, value.GetDouble()));
    }

    [Fact]
    public void The_root_takes_z_up_millimetres_to_y_up_metres()
    {
        JsonElement root = Json(Written()).GetProperty("nodes")[0];

        double[] m = root.TryGetProperty("matrix", out JsonElement matrix)
            ? [.. matrix.EnumerateArray().Select(v => v.GetDouble())]
            : throw new InvalidOperationException(root.ToString());

        // Column-major: the image of z is the third column.
        Assert.Equal([0, 0.001, 0], m[8..11].Select(v => Math.Round(v, 9)));
        Assert.Equal([0, 0, -0.001], m[4..7].Select(v => Math.Round(v, 9)));
        Assert.Equal([0.001, 0, 0], m[..3].Select(v => Math.Round(v, 9)));
    }

    [Fact]
    public void A_foreign_reader_with_strict_validation_sees_the_same_bodies()
    {
        var model = SharpGLTF.Schema2.ModelRoot.ReadGLB(
            new MemoryStream(Written()), new SharpGLTF.Schema2.ReadSettings { Validation = SharpGLTF.Validation.ValidationMode.Strict });

        Assert.Equal(["tub", "diffuser"], model.LogicalMeshes.Select(mesh => mesh.Name));
        SharpGLTF.Schema2.MeshPrimitive tub = model.LogicalMeshes[0].Primitives[0];
        Assert.Equal(4, tub.GetTriangleIndices().Count());
        Assert.Contains(new System.Numerics.Vector3(0, 0, 10), tub.GetVertexAccessor("POSITION").AsVector3Array());
    }

    [Fact]
    public void The_same_input_gives_the_same_bytes() => Assert.Equal(Written(), Written());
}
