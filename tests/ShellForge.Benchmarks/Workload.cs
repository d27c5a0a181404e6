using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;
using ShellForge.Geometry.Booleans;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Benchmarks;

/// <summary>The benchmark's input as written by gen.mjs: meshes in workload.bin, parts as steps over them in workload.txt.</summary>
internal sealed class Workload : IDisposable
{
    private readonly Dictionary<int, (long Vertices, int VertexCount, long Triangles, int TriangleCount)> _place = [];
    private readonly SafeFileHandle _data;

    private Workload(SafeFileHandle data) => _data = data;

    public List<(string Name, List<(char Operation, int[] Meshes)> Steps)> Parts { get; } = [];

    public static Workload Read(string folder)
    {
        Workload workload = new(File.OpenHandle(Path.Combine(folder, "workload.bin")));
        foreach (string line in File.ReadLines(Path.Combine(folder, "workload.txt")))
        {
            string[] words = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            if (words.Length == 0)
            {
                continue;
            }

            if (words[0] == "mesh")
            {
                workload._place.Add(Int(words[1]), (Int(words[4]), Int(words[2]), Int(words[5]), Int(words[3])));
            }
            else if (words[0] == "part")
            {
                workload.Parts.Add((words[1], []));
            }
            else
            {
                workload.Parts[^1].Steps.Add((words[0][0], [.. words.Skip(2).Select(Int)]));
            }
        }

        return workload;
    }

    /// <summary>The steps as one solid over operands that were loaded, checked and prepared before.</summary>
    public Solid PreparedTree(List<(char Operation, int[] Meshes)> steps)
    {
        Dictionary<int, Solid> loaded = [];
        return Tree(steps, id =>
        {
            if (!loaded.TryGetValue(id, out Solid? solid))
            {
                solid = SolidEvaluator.Evaluate(Mesh(id)).Require().AsOperand();
                loaded.Add(id, solid);
            }

            return solid;
        });
    }

    /// <summary>A mesh as the source of a solid.</summary>
    public Solid Mesh(int id)
    {
        (long vertexOffset, int vertexCount, long triangleOffset, int triangleCount) = _place[id];
        return new SourceSolid(Read<Point3>(vertexOffset, vertexCount), Read<int>(triangleOffset, triangleCount * 3), []);
    }

    public void Dispose() => _data.Dispose();

    /// <summary>The tree of a part over its meshes.</summary>
    public static Solid Tree(List<(char Operation, int[] Meshes)> steps, Func<int, Solid> mesh)
    {
        Solid tree = Solid.Empty;
        foreach ((char operation, int[] meshes) in steps)
        {
            ImmutableArray<Solid> operands = [.. meshes.Select(mesh)];
            tree = operation switch
            {
                '=' => operands[0],
                '+' => tree.And(operands),
                _ => tree.Less(operands),
            };
        }

        return tree;
    }

    // Only what a part asks for is read: most of the file is meshes of other parts.
    private ImmutableArray<T> Read<T>(long offset, int count)
        where T : unmanaged
    {
        T[] items = new T[count];
        Span<byte> rest = MemoryMarshal.AsBytes(items.AsSpan());
        while (rest.Length > 0)
        {
            int read = RandomAccess.Read(_data, rest, offset);
            if (read == 0)
            {
                throw new EndOfStreamException($"workload.bin ends before byte {offset + rest.Length}");
            }

            rest = rest[read..];
            offset += read;
        }

        return ImmutableCollectionsMarshal.AsImmutableArray(items);
    }

    private static int Int(string word) => int.Parse(word, CultureInfo.InvariantCulture);
}
