using System.Collections.Immutable;
using ShellForge.Geometry.Booleans.Ingest;
using ShellForge.Geometry.Booleans.Rounding;
using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Geometry.Booleans;

/// <summary>
/// Computes solids: the whole tree in one exact arrangement, rounded to the lattice once, and given out only when an exact check
/// found it clean. The README in this folder names the stages and what each guarantees.
/// </summary>
public static class SolidEvaluator
{
    private const int MostRounds = 6;

    // A clean mesh is the solid's only if it encloses what the exact boundary does: a face moves by so many steps when it is rounded, and
    // by so many times the merge steps in each round.
    private const int RoundingMoves = 4;
    private const int MergeMoves = 2;

    // How a result is rounded, tried from the first on. The first tidies: it drops edges under two steps, which most solids don't have and
    // nearly all can spare; a contact that comes of it is no gain, so the second leaves them. Within so many steps vertices are taken for
    // one, and edges led through vertices: for films, places where faces of two operands lie less than a few steps apart without being the
    // same. Where even that does not settle, the operands' vertices are welded within the same reach before they are intersected anew.
    private static readonly (int MergeSteps, bool Welds, bool Tidies)[] Ladder =
        [(0, false, true), (0, false, false), (2, false, false), (2, true, false), (4, false, false), (4, true, false), (8, true, false),
            (16, true, false)];

    /// <summary>
    /// The mesh that bounds the solid: closed, oriented, one fan round each vertex, no degenerate triangle, no two triangles that
    /// meet outside a shared vertex or edge. Where the exact solid touches itself at an edge or vertex it is opened by at most
    /// 0.002 mm and the place listed. The same tree gives the same bytes on every machine and for every number of threads.
    /// </summary>
    /// <param name="solid">The tree.</param>
    /// <param name="ct">Stops the work between steps.</param>
    /// <param name="progress">Told fractions from 0 to 1.</param>
    /// <exception cref="ArgumentException">A source is not a closed mesh, or a vertex leaves the domain of ±256 mm.</exception>
    /// <exception cref="OperationCanceledException">The token was cancelled.</exception>
#pragma warning disable CA1068 // Most callers pass a token and no progress.
    public static SolidOutcome Evaluate(Solid solid, CancellationToken ct = default, IProgress<double>? progress = null)
#pragma warning restore CA1068
        => Evaluate(solid, threads: -1, ct, progress);

    /// <summary>The same on so many threads at most; -1 for as many as there are cores.</summary>
    internal static SolidOutcome Evaluate(Solid solid, int threads, CancellationToken ct, IProgress<double>? progress = null)
    {
        (Operand[] operands, Expression root) = SolidFlattener.Flatten(solid, ct);
        progress?.Report(0.1);
        BooleanRound first = new(operands, threads, ct);
        progress?.Report(0.4);
        ExactResult exact = first.Evaluate(root);
        progress?.Report(0.7);
        Point3 place = default;
        SolidOutcome? last = null;
        int collapsed = -1;
        BoundaryVolume? exactly = null;
        foreach ((int mergeSteps, bool welds, bool tidies) in Ladder)
        {
            if (mergeSteps == 0 && collapsed == 0)
            {
                // The same as before.
                continue;
            }

            ExactResult current = welds ? new BooleanRound(OperandWelder.Weld(operands, mergeSteps), threads, ct).Evaluate(root) : exact;
            long fewest = int.MaxValue;
            for (int round = 0; round <= MostRounds; round++)
            {
                RoundedMesh mesh = current.Round(mergeSteps, tidies, threads, ct);
                collapsed = mesh.Collapsed;
                exactly ??= mesh.Bounded;
                if (collapsed > 0 && mesh.LostFilm)
                {
                    // Solid that is thinner than the edges that went.
                    break;
                }

                Operand rounded = Welded(mesh);
                BooleanRound next = new([rounded], threads, ct);
                if (!next.HasIntersections && SolidWedges.Pair(rounded) is { } wedges
                    && ShellSides.AreRight(next.Found, wedges.Partner, ct))
                {
                    int moves = RoundingMoves + (MergeMoves * mergeSteps * (round + 1));
                    if (!exactly.Value.IsThatOf(rounded.Vertices, rounded.Corners, moves * Lattice.Step))
                    {
                        // Merging has drawn a face across a gap.
                        place = rounded.TriangleCount > 0 ? rounded.Corner(0, 0).ToMillimetres() : place;
                        break;
                    }

                    (Operand? opened, place, ImmutableArray<ContactOpening> openings) = ContactOpener.Open(rounded, wedges, threads, ct);
                    SolidOutcome outcome = opened is null ? Defect(root, operands, place, "A contact could not be opened")
                        : new SolidOutcome
                        {
                            Solid = new SolidMesh(opened.ToMesh()),
                            Openings = openings,
                            Rounds = round,
                            MergeSteps = mergeSteps,
                        };
                    if (outcome.Solid is not null && (collapsed == 0 || outcome.Openings.IsEmpty))
                    {
                        progress?.Report(1);
                        return outcome;
                    }

                    // Another rounding has other triangles round the contact.
                    last = last?.Solid is null ? outcome : last;
                    break;
                }

                // Where nothing meets, rounding turned a film inside out: the next round drops it.
                place = next.HasIntersections ? next.FirstPlace() : rounded.Corner(0, 0).ToMillimetres();
                int meetings = next.Found.TrianglePoints.Count;
                if (mergeSteps == 0 || meetings > 2 * fewest)
                {
                    break;
                }

                fewest = Math.Min(fewest, meetings);
                current = next.Evaluate(Expression.Leaf(0));
            }
        }

        return last ?? Defect(root, operands, place, "The rounded result does not settle");
    }

    private static SolidOutcome Defect(Expression root, Operand[] operands, Point3 place, string reason) =>
        new() { Defect = new KernelDefect(root.ToString(), [.. operands.Select(o => o.ToMesh())], place, reason) };

    private static Operand Welded(RoundedMesh mesh)
    {
        Dictionary<LatticePoint3, int> first = new(mesh.Vertices.Length);
        int[] number = new int[mesh.Vertices.Length];
        List<LatticePoint3> vertices = new(mesh.Vertices.Length);
        for (int v = 0; v < number.Length; v++)
        {
            if (!first.TryGetValue(mesh.Vertices[v], out number[v]))
            {
                number[v] = vertices.Count;
                first.Add(mesh.Vertices[v], vertices.Count);
                vertices.Add(mesh.Vertices[v]);
            }
        }

        // The mesh is given up here, so its corners are renumbered where they are.
        int[] corners = mesh.Corners;
        for (int i = 0; i < corners.Length; i++)
        {
            corners[i] = number[corners[i]];
        }

        return Operand.Of([.. vertices], corners, mesh.Tags, isClean: false, mesh.KnownApart);
    }
}
