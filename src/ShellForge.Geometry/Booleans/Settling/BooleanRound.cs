using ShellForge.Geometry.Booleans.Arranging;
using ShellForge.Geometry.Booleans.Classifying;
using ShellForge.Geometry.Booleans.Ingest;
using ShellForge.Geometry.Booleans.Meeting;
using ShellForge.Geometry.Booleans.Rounding;

namespace ShellForge.Geometry.Booleans.Settling;

/// <summary>
/// One round: broad phase and exact intersections of all operands, then, unless nothing meets, arrangement, classification and one
/// rounding. The first round works on the operands of the tree, later ones on the rounded result alone.
/// </summary>
internal sealed class BooleanRound
{
    private readonly OperandSet _scene;
    private readonly int _threads;
    private readonly CancellationToken _ct;

    /// <param name="operands">The solids.</param>
    /// <param name="threads">How many threads at most; -1 for as many as there are cores.</param>
    /// <param name="ct">Stops the work.</param>
    public BooleanRound(Operand[] operands, int threads, CancellationToken ct)
    {
        _threads = threads;
        _scene = new OperandSet(operands);
        _ct = ct;
        Found = Intersections.Of(_scene, PairFinder.Find(_scene, _threads, ct), _threads, ct);
        HasIntersections = Found.TrianglePoints.Count > 0;
    }

    public Intersections Found { get; }

    /// <summary>Whether any two triangles meet where their operands' own vertices and edges do not join them.</summary>
    public bool HasIntersections { get; }

    /// <summary>A place where two triangles meet wrongly, in mm.</summary>
    public ShellForge.Geometry.Numerics.Point3 FirstPlace() => Found.Points.Rounded(Found.TrianglePoints[0].Point).ToMillimetres();

    /// <summary>The boundary of the expression, exact.</summary>
    public ExactResult Evaluate(Expression expression)
    {
        MarkLoneEdges();
        Sheets sheets = Sheets.From(Found);
        Arrangement arrangement = Arrangement.Of(Found, sheets, _ct);
        Loops loops = Loops.Of(arrangement, _threads, _ct);
        Coverage coverage = Coverage.Of(arrangement, loops, _threads, _ct);
        Patches patches = Patches.From(_scene, sheets);
        CellComplex complex = new(arrangement, loops, coverage, patches);
        Facets facets = Facets.Of(complex, expression, _threads, _ct);
        Boundary boundary = Boundary.Of(complex, facets, expression.Polarity(_scene.Operands.Length), _ct);
        return new ExactResult(arrangement, boundary, patches, facets);
    }

    // Edges without exactly one partner are arranged even where nothing meets them: their windings flow through the arrangement.
    private void MarkLoneEdges()
    {
        for (int operand = 0; operand < _scene.Operands.Length; operand++)
        {
            int[] partner = _scene.Operands[operand].Partner;
            for (int h = 0; h < partner.Length; h++)
            {
                if (partner[h] < 0)
                {
                    Found.IsActive[_scene.TriangleStart[operand] + (h / 3)] = true;
                }
            }
        }
    }
}
