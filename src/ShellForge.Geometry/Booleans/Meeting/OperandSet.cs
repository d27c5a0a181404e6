using ShellForge.Geometry.Booleans.Exact;
using ShellForge.Geometry.Booleans.Ingest;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Meeting;

/// <summary>All operands side by side, their triangles, half-edges and vertices under running numbers.</summary>
internal sealed class OperandSet
{
    private readonly LatticePoint3[] _vertices;
    private readonly int[] _corners;

    public OperandSet(Operand[] operands)
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

        if (operands.Length == 1)
        {
            (_vertices, _corners) = (operands[0].Vertices, operands[0].Corners);
            return;
        }

        _vertices = new LatticePoint3[VertexStart[^1]];
        _corners = new int[3 * TriangleStart[^1]];
        for (int i = 0; i < operands.Length; i++)
        {
            operands[i].Vertices.CopyTo(_vertices, VertexStart[i]);
            int[] own = operands[i].Corners;
            int at = 3 * TriangleStart[i], start = VertexStart[i];
            for (int c = 0; c < own.Length; c++)
            {
                _corners[at + c] = own[c] + start;
            }
        }
    }

    public Operand[] Operands { get; }

    public int[] TriangleStart { get; }

    public int[] VertexStart { get; }

    public ushort[] OperandOf { get; }

    public int TriangleCount => TriangleStart[^1];

    public LatticePoint3 Corner(int triangle, int k) => _vertices[_corners[(3 * triangle) + k]];

    public int VertexNumber(int triangle, int k) => _corners[(3 * triangle) + k];

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
