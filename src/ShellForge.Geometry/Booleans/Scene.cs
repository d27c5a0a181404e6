using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans;

/// <summary>All operands side by side, their triangles, half-edges and vertices under running numbers.</summary>
internal sealed class Scene
{
    private readonly Operand[] _operandOfBlock;

    public Scene(Operand[] operands)
    {
        Operands = operands;
        TriangleStart = new int[operands.Length + 1];
        VertexStart = new int[operands.Length + 1];
        for (int i = 0; i < operands.Length; i++)
        {
            TriangleStart[i + 1] = TriangleStart[i] + operands[i].TriangleCount;
            VertexStart[i + 1] = VertexStart[i] + operands[i].Vertices.Length;
        }

        OperandOf = new ushort[TriangleStart[^1]];
        for (int i = 0; i < operands.Length; i++)
        {
            OperandOf.AsSpan(TriangleStart[i], operands[i].TriangleCount).Fill((ushort)i);
        }

        _operandOfBlock = operands;
    }

    public Operand[] Operands { get; }

    public int[] TriangleStart { get; }

    public int[] VertexStart { get; }

    public ushort[] OperandOf { get; }

    public int TriangleCount => TriangleStart[^1];

    public LatticePoint3 Corner(int triangle, int k)
    {
        int operand = OperandOf[triangle];
        return _operandOfBlock[operand].Corner(triangle - TriangleStart[operand], k);
    }

    public int VertexNumber(int triangle, int k)
    {
        int operand = OperandOf[triangle];
        return VertexStart[operand] + Operands[operand].Corners[(3 * (triangle - TriangleStart[operand])) + k];
    }

    public LatticePoint3 Vertex(int number)
    {
        int operand = Array.BinarySearch(VertexStart, number);
        operand = operand < 0 ? ~operand - 1 : operand;
        while (VertexStart[operand + 1] == VertexStart[operand])
        {
            operand++;
        }

        return Operands[operand].Vertices[number - VertexStart[operand]];
    }

    public Plane PlaneOf(int triangle) => new(Corner(triangle, 0), Corner(triangle, 1), Corner(triangle, 2));

    public int Tag(int triangle)
    {
        int operand = OperandOf[triangle];
        return Operands[operand].Tags[triangle - TriangleStart[operand]];
    }

    public bool IsReal(int halfEdge)
    {
        int operand = OperandOf[halfEdge / 3];
        return Operands[operand].IsReal[halfEdge - (3 * TriangleStart[operand])];
    }

    /// <summary>The half-edge on the other side, or -1.</summary>
    public int Partner(int halfEdge)
    {
        int operand = OperandOf[halfEdge / 3];
        int start = 3 * TriangleStart[operand];
        int partner = Operands[operand].Partner[halfEdge - start];
        return partner < 0 ? -1 : partner + start;
    }

    /// <summary>One number for both half-edges of an edge.</summary>
    public int EdgeOf(int halfEdge)
    {
        int partner = Partner(halfEdge);
        return partner >= 0 && partner < halfEdge ? partner : halfEdge;
    }
}
