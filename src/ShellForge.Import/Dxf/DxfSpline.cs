using ShellForge.Geometry.Numerics;
using ShellForge.Import.Drawing;
using ShellForge.Import.Files;

namespace ShellForge.Import.Dxf;

/// <summary>Rational B-splines. The weights matter: a circle is stored as one, and without them it bulges like a cushion.</summary>
internal static class DxfSpline
{
    private const int HighestDegree = 11;
    private const int MostPoints = 20_000;

    public static List<EdgeSegment> Segments(DxfEntity e, string file, EcadLog log)
    {
        int degree = (int)Math.Clamp(e.Number(71, 3), 0, 100);
        var knots = new List<double>();
        var weights = new List<double>();
        var points = new List<Point2>();
        var through = new List<Point2>();
        double x = 0;
        double fitX = 0;
        foreach ((int code, double value) in e.Numbers)
        {
            switch (code)
            {
                case 40:
                    knots.Add(value);
                    break;
                case 41:
                    weights.Add(value);
                    break;
                case 10:
                    x = value;
                    break;
                case 20:
                    points.Add(new Point2(x, value));
                    break;
                case 11:
                    fitX = value;
                    break;
                case 21:
                    through.Add(new Point2(fitX, value));
                    break;
                default:
                    break;
            }
        }

        if (points.Count == 0 && through.Count > 1)
        {
            log.Warn(file, e.Line, "dxf-spline", "a spline without control points is drawn through its fit points as straight lines");
            return [.. through.Take(MostPoints).Zip(through.Skip(1), EdgeSegment.Line)];
        }

        bool isValid = degree is >= 1 and <= HighestDegree
            && points.Count > degree && points.Count <= MostPoints
            && knots.Count == points.Count + degree + 1
            && IsRising(knots)
            && (weights.Count == 0 || (weights.Count == points.Count && weights.TrueForAll(w => w > 0)));
        if (!isValid)
        {
            log.Warn(file, e.Line, "dxf-spline", "a spline whose degree, knots, weights and points don't go together is left out");
            return [];
        }

        var segments = new List<EdgeSegment>();
        var spline = new Spline(degree, knots, weights, points, new double[3 * (degree + 1)]);
        for (int span = degree; span < points.Count; span++)
        {
            if (knots[span + 1] > knots[span])
            {
                int here = span;
                CurveArcs.Append(segments, t => spline.At(t, here), knots[span], knots[span + 1]);
            }
        }

        return segments;
    }

    private static bool IsRising(List<double> knots)
    {
        for (int i = 1; i < knots.Count; i++)
        {
            if (knots[i] < knots[i - 1])
            {
                return false;
            }
        }

        return true;
    }

    private sealed record Spline(int Degree, List<double> Knots, List<double> Weights, List<Point2> Points, double[] Work)
    {
        // De Boor's scheme on homogeneous coordinates. Source: C. de Boor, A Practical Guide to Splines, ch. X.
        public Point2 At(double t, int span)
        {
            (int degree, List<double> knots, List<double> weights, List<Point2> points, double[] work) = this;
            for (int i = 0; i <= degree; i++)
            {
                int at = span - degree + i;
                double w = weights.Count == 0 ? 1 : weights[at];
                work[3 * i] = points[at].X * w;
                work[(3 * i) + 1] = points[at].Y * w;
                work[(3 * i) + 2] = w;
            }

            for (int level = 1; level <= degree; level++)
            {
                for (int i = degree; i >= level; i--)
                {
                    double low = knots[span - degree + i];
                    double high = knots[span + 1 + i - level];
                    double part = high > low ? (t - low) / (high - low) : 0;
                    for (int k = 0; k < 3; k++)
                    {
                        work[(3 * i) + k] = ((1 - part) * work[(3 * (i - 1)) + k]) + (part * work[(3 * i) + k]);
                    }
                }
            }

            double weight = work[(3 * degree) + 2];
            return new Point2(work[3 * degree] / weight, work[(3 * degree) + 1] / weight);
        }
    }
}
