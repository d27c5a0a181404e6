using ShellForge.Geometry.Booleans.Arranging;
using ShellForge.Geometry.Booleans.Meeting;

namespace ShellForge.Geometry.Booleans.Classifying;

/// <summary>Triangles that nothing meets, gathered over common edges: one patch has one winding in front and one behind.</summary>
internal sealed class Patches
{
    private readonly int[] _patchOf;

    private Patches(int[] patchOf) => _patchOf = patchOf;

    /// <summary>For each patch its first triangle.</summary>
    public List<int> FirstTriangle { get; } = [];

    public int Count => FirstTriangle.Count;

    /// <summary>The patch of a triangle, or -1 when the triangle is in a sheet.</summary>
    public int Of(int triangle) => _patchOf[triangle];

    public static Patches From(OperandSet scene, Sheets sheets)
    {
        int[] patchOf = new int[scene.TriangleCount];
        Array.Fill(patchOf, -1);
        Patches patches = new(patchOf);
        int[] queue = new int[scene.TriangleCount];
        for (int operand = 0; operand < scene.Operands.Length; operand++)
        {
            int start = scene.TriangleStart[operand];
            int[] partner = scene.Operands[operand].Partner;
            for (int triangle = start; triangle < scene.TriangleStart[operand + 1]; triangle++)
            {
                if (patchOf[triangle] >= 0 || sheets.Of(triangle) >= 0)
                {
                    continue;
                }

                int patch = patches.Count;
                patches.FirstTriangle.Add(triangle);
                patchOf[triangle] = patch;
                int end = 0;
                queue[end++] = triangle;
                for (int i = 0; i < end; i++)
                {
                    int local = 3 * (queue[i] - start);
                    for (int k = 0; k < 3; k++)
                    {
                        int neighbour = start + (partner[local + k] / 3);
                        if (partner[local + k] >= 0 && patchOf[neighbour] < 0 && sheets.Of(neighbour) < 0)
                        {
                            patchOf[neighbour] = patch;
                            queue[end++] = neighbour;
                        }
                    }
                }
            }
        }

        return patches;
    }
}
