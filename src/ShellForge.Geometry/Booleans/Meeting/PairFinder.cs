using ShellForge.Geometry.Booleans.Ingest;
using ShellForge.Geometry.Booleans.Tables;

namespace ShellForge.Geometry.Booleans.Meeting;

/// <summary>
/// Stage 1: the pairs of triangles that may meet, in an order that depends on the operands alone. The work is cut into pieces that
/// all cores share; each piece's finds stand together, pieces in their order.
/// </summary>
internal static class PairFinder
{
    // Leaves of one tree that make a piece, and triangles from which on more than one core is worth waking.
    private const int PieceLeaves = 256;
    private const int WorthThreads = 4096;

    private readonly record struct Piece(int First, int Second, int Node, int OtherNode);

    /// <summary>The pairs, operand by operand, under the scene's numbers; found on up to so many threads (-1: all cores).</summary>
    public static (int First, int Second)[] Find(OperandSet scene, int threads, CancellationToken ct)
    {
        List<Piece> pieces = Pieces(scene);
        int runs = ParallelRuns.Count(pieces.Count, scene.TriangleCount < WorthThreads ? int.MaxValue : 2, threads);
        List<(int First, int Second)>[] found = new List<(int, int)>[runs];
        ParallelRuns.ForEach(runs, threads, run =>
        {
            List<(int First, int Second)> pairs = found[run] = [];
            (int from, int to) = ParallelRuns.Range(run, runs, pieces.Count);
            for (int i = from; i < to; i++)
            {
                ct.ThrowIfCancellationRequested();
                AddPiece(scene, pieces[i], pairs);
            }
        }, ct);
        (int First, int Second)[] all = new (int, int)[found.Sum(static run => run.Count)];
        int at = 0;
        foreach (List<(int, int)> run in found)
        {
            run.CopyTo(all, at);
            at += run.Count;
        }

        return all;
    }

    private static List<Piece> Pieces(OperandSet scene)
    {
        List<Piece> pieces = [];
        for (int a = 0; a < scene.Operands.Length; a++)
        {
            MortonTree tree = scene.Operands[a].Tree;
            if (!scene.Operands[a].IsClean)
            {
                int[] nodes = [.. tree.NodesOf(PieceLeaves)];
                for (int i = 0; i < nodes.Length; i++)
                {
                    for (int j = i; j < nodes.Length; j++)
                    {
                        if (tree.MayHavePairs(nodes[i], nodes[j]))
                        {
                            pieces.Add(new Piece(a, a, nodes[i], nodes[j]));
                        }
                    }
                }
            }

            for (int b = a + 1; b < scene.Operands.Length; b++)
            {
                MortonTree other = scene.Operands[b].Tree;
                if (tree.Bounds.Touches(other.Bounds))
                {
                    foreach (int node in tree.NodesOf(PieceLeaves))
                    {
                        pieces.Add(new Piece(a, b, node, 1));
                    }
                }
            }
        }

        return pieces;
    }

    private static void AddPiece(OperandSet scene, Piece piece, List<(int First, int Second)> pairs)
    {
        Operand a = scene.Operands[piece.First], b = scene.Operands[piece.Second];
        int kept = pairs.Count;
        if (piece.First == piece.Second)
        {
            a.Tree.OwnPairs(piece.Node, piece.OtherNode, pairs);
        }
        else
        {
            a.Tree.Pairs(piece.Node, b.Tree, pairs);
        }

        PairFilter filter = new(a, b);
        int startA = scene.TriangleStart[piece.First], startB = scene.TriangleStart[piece.Second];
        for (int i = kept; i < pairs.Count; i++)
        {
            (int first, int second) = pairs[i];
            if (filter.MayMeet(first, second))
            {
                pairs[kept++] = (startA + first, startB + second);
            }
        }

        pairs.RemoveRange(kept, pairs.Count - kept);
    }
}
