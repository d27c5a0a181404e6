using ShellForge.Geometry.Booleans.Ingest;
using ShellForge.Geometry.Booleans.Tables;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Booleans.Settling;

/// <summary>
/// Vertices of different operands within the reach become one, before anything is intersected: surfaces that nearly coincide all
/// over then mostly coincide. An operand's own vertices never meet each other.
/// </summary>
internal static class OperandWelder
{
    public static Operand[] Weld(Operand[] operands, int reach)
    {
        VertexGrid grid = new(reach);
        List<LatticePoint3> places = [];
        List<int> lastOperand = [];
        Operand[] welded = new Operand[operands.Length];
        for (int operand = 0; operand < operands.Length; operand++)
        {
            LatticePoint3[] own = [.. operands[operand].Vertices];
            int firstNew = places.Count;
            for (int v = 0; v < own.Length; v++)
            {
                int near = grid.Nearest(own[v], reach);
                if (near >= 0 && lastOperand[near] != operand)
                {
                    own[v] = places[near];
                    lastOperand[near] = operand;
                }
                else
                {
                    places.Add(own[v]);
                    lastOperand.Add(operand);
                }
            }

            for (int v = firstNew; v < places.Count; v++)
            {
                grid.Add(places[v], v);
            }

            welded[operand] = Operand.Of(own, operands[operand].Corners, operands[operand].Tags, isClean: false);
        }

        return welded;
    }
}
