using ShellForge.Geometry.Numerics;

namespace ShellForge.Testing;

/// <content>Outlines.</content>
public sealed partial class AnyBoards
{
    private void Outline(string shape)
    {
        double r = _size / 2;
        string? centre = Once(2) ? "[0, 0]" : null;
        switch (shape)
        {
            case "disc":
                _lines.Add(Mm($"  outline: {{disc: {_size}}}"));
                Cutouts();
                return;
            case "ring":
                _inner = Math.Max(1, Math.Round((_size - 4) * (0.1 + (0.85 * _dice.NextDouble())), 1));
                _lines.Add(Mm($"  outline: {{ring: {{outer: {_size}, bore: {_inner}}}}}"));
                Cutouts();
                return;
            case "half":
                Arcs(centre, (-r, 0, 0), (r, 0, 0), (-r, 0, 180));
                return;
            case "quarter":
                double i = Math.Round(r * (0.3 + (0.5 * _dice.NextDouble())), 1);
                Arcs(centre, (i, 0, 0), (r, 0, 0), (0, r, 90), (0, i, 0), (i, 0, -90));
                return;
            case "d":
                double a = 20 + (60 * _dice.NextDouble());
                (double x, double y) = (r * Cos(a), r * Sin(a));
                Arcs(centre, (x, -y, 0), (x, y, 360 - (2 * a)), (x, -y, 0));
                return;
            case "oval":
                double half = r * 0.5;
                Arcs(centre, (-half, -half, 0), (half, -half, 0), (half, half, 180), (-half, half, 0), (-half, -half, 180));
                return;
            case "flats":
                double f = 10 + (25 * _dice.NextDouble());
                Arcs(centre, (r * Cos(-f), r * Sin(-f), 0), (r * Cos(f), r * Sin(f), 0),
                    (r * Cos(180 - f), r * Sin(180 - f), 180 - (2 * f)),
                    (r * Cos(180 + f), r * Sin(180 + f), 0), (r * Cos(-f), r * Sin(-f), 180 - (2 * f)));
                return;
            case "star":
                Polygon(centre, Spokes(5 + _dice.Next(4), r, r * (0.35 + (0.4 * _dice.NextDouble()))));
                return;
            case "gear":
                Polygon(centre, Teeth(6 + _dice.Next(20), r));
                return;
            case "heart":
                Arcs(centre, (0, -r, 0), (r * 0.9, r * 0.2, 20), (0, r * 0.45, 190), (-r * 0.9, r * 0.2, 190), (0, -r, 20));
                return;
            case "c":
                double w = Math.Round(r * (0.2 + (0.4 * _dice.NextDouble())), 1);
                double gap = 4 + (80 * _dice.NextDouble());
                Arcs(centre, (r * Cos(gap), r * Sin(gap), 0), (r * Cos(-gap), r * Sin(-gap), 360 - (2 * gap)),
                    ((r - w) * Cos(-gap), (r - w) * Sin(-gap), 0), ((r - w) * Cos(gap), (r - w) * Sin(gap), -(360 - (2 * gap))),
                    (r * Cos(gap), r * Sin(gap), 0));
                return;
            case "tail":
                double t = r * 0.2;
                double s = Math.Sqrt((r * r * 0.49) - (t * t));
                Arcs(centre, (s, t, 0), (s, -t, 360 - (2 * Angle.Of(new Point2(s, t)).Degrees)), (r * 1.2, -t, 0), (r * 1.2, t, 0),
                    (s, t, 0));
                return;
            case "l":
                Polygon(centre,
                    [(-r * 0.7, -r * 0.7), (r * 0.7, -r * 0.7), (r * 0.7, -r * 0.2), (-r * 0.1, -r * 0.2), (-r * 0.1, r * 0.7),
                        (-r * 0.7, r * 0.7)]);
                return;
            case "bar":
                double b = Math.Max(2, r * (0.05 + (0.3 * _dice.NextDouble())));
                Polygon(centre, [(-r, -b), (r, -b), (r, b), (-r, b)]);
                return;
            case "triangle":
                Polygon(centre, [(-r, -r * 0.4), (r, -r * 0.5), (r * (_dice.NextDouble() - 0.5), r * (0.1 + (0.7 * _dice.NextDouble())))]);
                return;
            case "holed":
                Polygon(centre, [.. Enumerable.Range(0, 8).Select(k => (r * Cos(22.5 + (45 * k)), r * Sin(22.5 + (45 * k))))]);
                _lines.Add(Mm($"  cutouts: [{{circle: {Math.Round(r * 0.8, 1)}}}]"));
                return;
            default:
                Polygon(centre, [.. Enumerable.Range(0, 9).Select(k => (k * 40.0) + (30 * _dice.NextDouble()))
                    .Select(at => (At: at, R: r * (0.4 + (0.6 * _dice.NextDouble())))).Select(p => (p.R * Cos(p.At), p.R * Sin(p.At)))]);
                return;
        }
    }

    private static (double X, double Y)[] Spokes(int count, double outer, double inner) =>
    [
        .. Enumerable.Range(0, 2 * count).Select(k => (k % 2 == 0 ? outer : inner, k * 180.0 / count))
            .Select(p => (p.Item1 * Cos(p.Item2), p.Item1 * Sin(p.Item2))),
    ];

    private static (double X, double Y)[] Teeth(int count, double outer) =>
    [
        .. Enumerable.Range(0, 4 * count).Select(k => (k % 4 < 2 ? outer : outer * 0.85, k * 90.0 / count))
            .Select(p => (p.Item1 * Cos(p.Item2), p.Item1 * Sin(p.Item2))),
    ];

    private void Polygon(string? centre, (double X, double Y)[] corners)
    {
        _edge = [.. corners.Select(p => new Point2(p.X, p.Y))];
        _lines.Add("  outline: {polygon: [" + string.Join(", ", corners.Select(p => Mm($"[{Math.Round(p.X, 3)}, {Math.Round(p.Y, 3)}]")))
            + "]}");
        Centre(centre);
    }

    private void Arcs(string? centre, params (double X, double Y, double Arc)[] corners)
    {
        var edge = new List<Point2>();
        for (int k = 0; k < corners.Length; k++)
        {
            (double x, double y, double arc) = corners[(k + corners.Length - 1) % corners.Length];
            edge.AddRange(Chords(new Point2(x, y), new Point2(corners[k].X, corners[k].Y), corners[k].Arc));
        }

        _edge = [.. edge];
        _lines.Add("  outline: {arcs: [" + string.Join(", ", corners.Select(p => p.Arc == 0
            ? Mm($"[{Math.Round(p.X, 3)}, {Math.Round(p.Y, 3)}]")
                : Mm($"[{Math.Round(p.X, 3)}, {Math.Round(p.Y, 3)}, {Math.Round(p.Arc, 3)}]"))) + "]}");
        Centre(centre);
    }

    // The way from one corner to the next, the first left out.
    private static IEnumerable<Point2> Chords(Point2 from, Point2 to, double arc)
    {
        Point2 chord = to - from;
        if (chord.Length > 0 && arc != 0)
        {
            double apart = chord.Length / 2 * Cos(arc / 2) / Sin(arc / 2);
            Point2 centre = from + (0.5 * chord) + (apart / chord.Length * new Point2(-chord.Y, chord.X));
            for (int k = 1; k < 24; k++)
            {
                yield return centre + (from - centre).Turned(Angle.FromDegrees(arc * k / 24));
            }
        }

        yield return to;
    }
}
