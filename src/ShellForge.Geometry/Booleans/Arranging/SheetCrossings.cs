using ShellForge.Geometry.Booleans.Exact;
using ShellForge.Geometry.Booleans.Meeting;
using ShellForge.Geometry.Booleans.Tables;

namespace ShellForge.Geometry.Booleans.Arranging;

/// <summary>
/// Stage 2b: in each sheet, where the intervals drawn by other sheets cross one another (three planes) or pass through a point of
/// the sheet. An interval lies in two sheets, and what is found in one splits it in both.
/// </summary>
internal sealed class SheetCrossings
{
    private readonly Intersections _found;
    private readonly Sheets _sheets;
    private readonly PointStore _points;
    private readonly List<(int Interval, int Point)> _splits = [];

    private SheetCrossings(Intersections found, Sheets sheets)
    {
        _found = found;
        _sheets = sheets;
        _points = found.Points;
    }

    /// <summary>Points inside intervals.</summary>
    public static List<(int Interval, int Point)> Find(Intersections found, Sheets sheets, Grouping pointsOf, CancellationToken ct)
    {
        SheetCrossings crossings = new(found, sheets);
        List<(int, int)> members = new(2 * found.Intervals.Count);
        for (int i = 0; i < found.Intervals.Count; i++)
        {
            members.Add((sheets.Of(found.Intervals[i].First), i));
            members.Add((sheets.Of(found.Intervals[i].Second), i));
        }

        Grouping intervalsOf = Grouping.Of(sheets.Count, members);
        for (int sheet = 0; sheet < sheets.Count; sheet++)
        {
            if (intervalsOf[sheet].Length > 0)
            {
                ct.ThrowIfCancellationRequested();
                crossings.InSheet(sheet, intervalsOf[sheet], pointsOf[sheet]);
            }
        }

        return crossings._splits;
    }

    private void InSheet(int sheet, ReadOnlySpan<int> intervals, ReadOnlySpan<int> points)
    {
        Drawing drawing = _sheets.Drawings[sheet];
        int u = drawing.U, v = drawing.V;
        Drawn[] drawn = new Drawn[intervals.Length];
        for (int i = 0; i < drawn.Length; i++)
        {
            Interval interval = _found.Intervals[intervals[i]];
            double fromU = _points.Approximate(interval.From, u), toU = _points.Approximate(interval.To, u);
            double fromV = _points.Approximate(interval.From, v), toV = _points.Approximate(interval.To, v);
            int other = _sheets.Of(interval.First) == sheet ? interval.Second : interval.First;
            drawn[i] = new Drawn
            {
                Number = intervals[i],
                From = interval.From,
                To = interval.To,
                MinU = Math.Min(fromU, toU) - PointStore.Slack,
                MaxU = Math.Max(fromU, toU) + PointStore.Slack,
                MinV = Math.Min(fromV, toV) - PointStore.Slack,
                MaxV = Math.Max(fromV, toV) + PointStore.Slack,
                Axis = _points.AxisBetween(interval.From, interval.To),
                Other = _found.OperandSet.PlaneOf(other),
            };
        }

        Array.Sort(drawn, static (a, b) => a.MinU != b.MinU ? a.MinU.CompareTo(b.MinU) : a.Number.CompareTo(b.Number));
        PointsOnIntervals(drawn, points, u, v);
        for (int i = 0; i < drawn.Length; i++)
        {
            for (int j = i + 1; j < drawn.Length && drawn[j].MinU <= drawn[i].MaxU; j++)
            {
                if (drawn[i].MinV <= drawn[j].MaxV && drawn[j].MinV <= drawn[i].MaxV)
                {
                    Cross(sheet, drawn[i], drawn[j]);
                }
            }
        }
    }

    private void PointsOnIntervals(Drawn[] drawn, ReadOnlySpan<int> points, int u, int v)
    {
        double[] keys = new double[points.Length];
        int[] sorted = points.ToArray();
        for (int i = 0; i < keys.Length; i++)
        {
            keys[i] = _points.Approximate(sorted[i], u);
        }

        Array.Sort(keys, sorted);
        int first = 0;
        foreach (ref readonly Drawn interval in drawn.AsSpan())
        {
            while (first < keys.Length && keys[first] < interval.MinU - PointStore.Slack)
            {
                first++;
            }

            for (int i = first; i < keys.Length && keys[i] <= interval.MaxU + PointStore.Slack; i++)
            {
                int point = sorted[i];
                double pv = _points.Approximate(point, v);
                if (point != interval.From && point != interval.To && pv >= interval.MinV - PointStore.Slack
                    && pv <= interval.MaxV + PointStore.Slack && _points.Side(point, interval.Other) == 0
                    && _points.Compare(point, interval.From, interval.Axis) * _points.Compare(point, interval.To, interval.Axis) < 0)
                {
                    _splits.Add((interval.Number, point));
                }
            }
        }
    }

    private void Cross(int sheet, in Drawn a, in Drawn b)
    {
        if (_points.Side(a.From, b.Other) * _points.Side(a.To, b.Other) < 0
            && _points.Side(b.From, a.Other) * _points.Side(b.To, a.Other) < 0)
        {
            int point = _points.AddThreePlanes(_sheets.Planes[sheet], a.Other, b.Other);
            _splits.Add((a.Number, point));
            _splits.Add((b.Number, point));
        }
    }

    private struct Drawn
    {
        public int Number;
        public int From;
        public int To;
        public int Axis;
        public double MinU;
        public double MaxU;
        public double MinV;
        public double MaxV;
        public Plane Other;
    }
}
