namespace ShellForge.Geometry.Booleans;

/// <summary>
/// Stage 1: the pairs of triangles that may meet, in an order that depends on the operands alone. The work is cut into pieces that
/// all cores share; each piece's finds stand together, pieces in their order.
/// </summary>
internal static class PairFinder
{
    // Leaves of one tree that make a piece, and triangles from which on more than one core is worth waking.
    private const int PieceLeaves = 1024;
    private const int WorthThreads = 4096;

    private readonly record struct Piece(int First, int Second, int From, int To);

    /// <summary>Calls back for each pair, operand by operand; on as many threads as there are cores when none are named (-1).</summary>
    public static void Find(Scene scene, Action<int, int> pair, int threads, CancellationToken ct)
    {
        List<Piece> pieces = Pieces(scene);
        (int, int)[]?[] found = new (int, int)[pieces.Count][];
        if (scene.TriangleCount < WorthThreads)
        {
            List<(int, int)> scratch = [];
            for (int i = 0; i < found.Length; i++)
            {
                ct.ThrowIfCancellationRequested();
                found[i] = InPiece(scene, pieces[i], scratch);
            }
        }
        else
        {
            Parallel.For(
                0,
                found.Length,
                new ParallelOptions { CancellationToken = ct, MaxDegreeOfParallelism = threads },
                static () => new List<(int, int)>(),
                (i, _, scratch) =>
                {
                    found[i] = InPiece(scene, pieces[i], scratch);
                    return scratch;
                },
                static _ => { });
        }

        for (int i = 0; i < found.Length; i++)
        {
            if (found[i] is { } pairs)
            {
                int startA = scene.TriangleStart[pieces[i].First], startB = scene.TriangleStart[pieces[i].Second];
                foreach ((int first, int second) in pairs)
                {
                    pair(startA + first, startB + second);
                }
            }
        }
    }

    private static List<Piece> Pieces(Scene scene)
    {
        List<Piece> pieces = [];
        for (int a = 0; a < scene.Operands.Length; a++)
        {
            BoxTree tree = scene.Operands[a].Tree;
            if (!scene.Operands[a].IsClean)
            {
                for (int from = 0; from < tree.LeafCount; from += PieceLeaves)
                {
                    pieces.Add(new Piece(a, a, from, Math.Min(tree.LeafCount, from + PieceLeaves)));
                }
            }

            for (int b = a + 1; b < scene.Operands.Length; b++)
            {
                BoxTree other = scene.Operands[b].Tree;
                if (tree.Bounds.Touches(other.Bounds))
                {
                    foreach (int node in tree.NodesOf(PieceLeaves))
                    {
                        pieces.Add(new Piece(a, b, node, node));
                    }
                }
            }
        }

        return pieces;
    }

    private static (int, int)[]? InPiece(Scene scene, Piece piece, List<(int First, int Second)> scratch)
    {
        Operand a = scene.Operands[piece.First], b = scene.Operands[piece.Second];
        scratch.Clear();
        if (piece.First == piece.Second)
        {
            a.Tree.OwnPairs(piece.From, piece.To, a.KnownApart, scratch);
        }
        else
        {
            a.Tree.Pairs(piece.From, b.Tree, scratch);
        }

        PairFilter filter = new(a, b);
        int kept = 0;
        for (int i = 0; i < scratch.Count; i++)
        {
            (int first, int second) = scratch[i];
            if (filter.MayMeet(first, second))
            {
                scratch[kept++] = (first, second);
            }
        }

        return kept == 0 ? null : scratch[..kept].ToArray();
    }
}
