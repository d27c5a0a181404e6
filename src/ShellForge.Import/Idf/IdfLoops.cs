using ShellForge.Geometry.Numerics;
using ShellForge.Import.Drawing;
using ShellForge.Import.Files;

namespace ShellForge.Import.Idf;

/// <summary>
/// Builds loops from outline records "label x y angle". The angle turns from the point before to this one, counter-clockwise
/// positive; 360 makes a full circle of which the record before is the centre and this one a point on it.
/// </summary>
internal sealed class IdfLoops(string file, EcadLog log, string ownerOfErrors)
{
    private readonly List<OutlineLoop> loops = [];
    private readonly List<EdgeSegment> current = [];
    private Point2 first;
    private Point2 last;
    private int label = int.MinValue;
    private int points;
    private int firstLine;

    /// <summary>Records of outlines that don't close, by more than the joint tolerance.</summary>
    public int OpenLoops { get; private set; }

    public void Add(int loopLabel, Point2 at, double angle, int line)
    {
        if (points > 0 && (loopLabel != label || IsComplete(at)))
        {
            Close();
        }

        if (points == 0)
        {
            (label, first, last, firstLine, points) = (loopLabel, at, at, line, 1);
            return;
        }

        if (Math.Abs(angle) >= 360 && points == 1)
        {
            double radius = Point2.Distance(first, at);
            if (radius <= EcadTolerances.SamePoint)
            {
                log.Warn(file, line, "idf-circle", $"{ownerOfErrors}: a circle without a radius is left out");
            }
            else
            {
                loops.Add(new OutlineLoop([EdgeSegment.Circle(first, at)], firstLine, 0));
            }

            Reset();
            return;
        }

        if (Math.Abs(angle) >= 360)
        {
            log.Error(
                file, line, "idf-arc-angle", $"{ownerOfErrors}: an arc of {Numeral.Text(angle)} degrees inside a loop",
                "360 only in a loop of two records, centre first; other arcs turn by less");
            return;
        }

        if (Point2.Distance(last, at) > 0)
        {
            current.Add(EdgeSegment.ArcByAngle(last, at, angle));
        }

        last = at;
        points++;
    }

    public IReadOnlyList<OutlineLoop> Finish()
    {
        Close();
        return loops;
    }

    // The same label after a closed loop begins a new one: some writers number all cutouts alike.
    private bool IsComplete(Point2 next) => current.Count >= 2 && Point2.Distance(first, last) <= EcadTolerances.SamePoint && next != last;

    private void Close()
    {
        if (current.Count > 0)
        {
            double gap = Point2.Distance(first, last);
            if (gap > EcadTolerances.Joint)
            {
                OpenLoops++;
                log.Error(
                    file, firstLine, "ecad-outline-open",
                    $"{ownerOfErrors}: loop {label} is open by {Numeral.Text(gap)} mm",
                    "its last point repeats its first; close it in the layout program and export again");
            }
            else
            {
                if (gap > 0)
                {
                    current.Add(EdgeSegment.Line(last, first));
                }

                var loop = new OutlineLoop([.. current], firstLine, gap);
                if (loop.Area > EcadTolerances.SamePoint)
                {
                    loops.Add(loop);
                }
            }
        }
        else if (points == 1)
        {
            log.Warn(file, firstLine, "idf-lone-point", $"{ownerOfErrors}: loop {label} is a single point and is left out");
        }

        Reset();
    }

    private void Reset()
    {
        current.Clear();
        points = 0;
        label = int.MinValue;
    }
}
