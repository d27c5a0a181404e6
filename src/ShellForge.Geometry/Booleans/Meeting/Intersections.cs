using ShellForge.Geometry.Booleans.Exact;
using ShellForge.Geometry.Booleans.Tables;

namespace ShellForge.Geometry.Booleans.Meeting;

/// <summary>
/// What the pairs of triangles have in common; the record between intersecting and arranging. Triangles, half-edges and edges go by
/// the scene's numbers.
/// </summary>
internal sealed class Intersections
{
    // Pairs from which on more than one core is worth waking.
    private const int WorthThreads = 2048;

    public Intersections(OperandSet scene)
    {
        OperandSet = scene;
        IsActive = new bool[scene.TriangleCount];
        PointOfVertex = new int[scene.VertexStart[^1]];
        Array.Fill(PointOfVertex, -1);
    }

    public OperandSet OperandSet { get; }

    public PointStore Points { get; private set; } = new();

    /// <summary>Triangles that something meets outside their operand's own mesh structure.</summary>
    public bool[] IsActive { get; }

    public int[] PointOfVertex { get; }

    /// <inheritdoc cref="Meetings.EdgePoints"/>
    public List<(int Edge, int Point)> EdgePoints { get; private set; } = [];

    /// <inheritdoc cref="Meetings.TrianglePoints"/>
    public List<(int Triangle, int Point)> TrianglePoints { get; private set; } = [];

    /// <inheritdoc cref="Meetings.Imprints"/>
    public List<(int Edge, int Triangle)> Imprints { get; private set; } = [];

    /// <inheritdoc cref="Meetings.Intervals"/>
    public List<Interval> Intervals { get; private set; } = [];

    /// <inheritdoc cref="Meetings.Coplanar"/>
    public List<(int First, int Second)> Coplanar { get; private set; } = [];

    /// <summary>Intersects the pairs, on up to so many threads (-1: all cores).</summary>
    public static Intersections Of(OperandSet scene, (int First, int Second)[] pairs, int threads, CancellationToken ct)
    {
        Intersections found = new(scene);
        int runs = ParallelRuns.Count(pairs.Length, WorthThreads, threads);
        Meetings[] meetings = new Meetings[runs];
        ParallelRuns.ForEach(runs, threads, run =>
        {
            Meetings own = meetings[run] = new Meetings(scene);
            PairIntersector intersector = new(scene, own);
            (int from, int to) = ParallelRuns.Range(run, runs, pairs.Length);
            for (int i = from; i < to; i++)
            {
                if ((i & 4095) == 0)
                {
                    ct.ThrowIfCancellationRequested();
                }

                intersector.Intersect(pairs[i].First, pairs[i].Second);
            }
        }, ct);
        foreach (Meetings run in meetings)
        {
            found.Take(run, ReferenceEquals(run, meetings[0]));
        }

        return found;
    }

    /// <summary>The point that a vertex of the scene is.</summary>
    public int VertexPoint(int triangle, int k)
    {
        ref int point = ref PointOfVertex[OperandSet.VertexNumber(triangle, k)];
        if (point < 0)
        {
            point = Points.Add(OperandSet.Corner(triangle, k));
        }

        return point;
    }

    // The first run's numbers stand as they are; those of the others are told by the points.
    private void Take(Meetings run, bool isFirst)
    {
        int[] number = [];
        if (isFirst)
        {
            (Points, EdgePoints, TrianglePoints) = (run.Points, run.EdgePoints, run.TrianglePoints);
            (Imprints, Intervals, Coplanar) = (run.Imprints, run.Intervals, run.Coplanar);
        }
        else
        {
            number = new int[run.Points.Count];
            for (int point = 0; point < number.Length; point++)
            {
                number[point] = Points.Add(run.Points, point);
            }

            foreach ((int edge, int point) in run.EdgePoints)
            {
                EdgePoints.Add((edge, number[point]));
            }

            foreach ((int triangle, int point) in run.TrianglePoints)
            {
                TrianglePoints.Add((triangle, number[point]));
            }

            foreach (Interval interval in run.Intervals)
            {
                Intervals.Add(interval with { From = number[interval.From], To = number[interval.To] });
            }

            Imprints.AddRange(run.Imprints);
            Coplanar.AddRange(run.Coplanar);
        }

        foreach ((int vertex, int point) in run.VertexPoints)
        {
            PointOfVertex[vertex] = isFirst ? point : number[point];
        }

        foreach ((int triangle, _) in run.TrianglePoints)
        {
            IsActive[triangle] = true;
        }

        // Of one plane, two may overlap without a point on any real edge.
        foreach ((int first, int second) in run.Coplanar)
        {
            IsActive[first] = true;
            IsActive[second] = true;
        }
    }
}

/// <summary>A segment between two points, in the planes of two triangles.</summary>
internal readonly record struct Interval(int First, int Second, int From, int To);
