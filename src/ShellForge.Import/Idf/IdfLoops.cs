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
    private readonly List<OutlineLoop> _loops = [];
    private readonly List<EdgeSegment> _current = [];
    private Point2 _first;
    private Point2 _last;
    private int _label = int.MinValue;
    private int _points;
    private int _firstLine;

    /// <summary>Records of outlines that don't close, by more than the joint tolerance.</summary>
    public int OpenLoops { get; private set; }

    public void Add(int loopLabel, Point2 at, double angle, int line)
    {
        if (_points > 0 && (loopLabel != _label || IsComplete(at)))
        {
            Close();
        }

        if (_points == 0)
        {
            (_label, _first, _last, _firstLine, _points) = (loopLabel, at, at, line, 1);
            return;
        }

        if (Math.Abs(angle) >= 360 && _points == 1)
        {
            double radius = Point2.Distance(_first, at);
            if (radius <= EcadTolerances.SamePoint)
            {
                log.Warn(file, line, "idf-circle", $"{ownerOfErrors}: a circle without a radius is left out");
            }
            else
            {
                _loops.Add(new OutlineLoop([EdgeSegment.Circle(_first, at)], _firstLine, 0));
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

        if (Point2.Distance(_last, at) > 0)
        {
            _current.Add(EdgeSegment.ArcByAngle(_last, at, angle));
        }

        _last = at;
        _points++;
    }

    public IReadOnlyList<OutlineLoop> Finish()
    {
        Close();
        return _loops;
    }

    // The same label after a closed loop begins a new one: some writers number all cutouts alike.
    private bool IsComplete(Point2 next) =>
        _current.Count >= 2 && Point2.Distance(_first, _last) <= EcadTolerances.SamePoint && next != _last;

    private void Close()
    {
        if (_current.Count > 0)
        {
            double gap = Point2.Distance(_first, _last);
            if (gap > EcadTolerances.Joint)
            {
                OpenLoops++;
                log.Error(
                    file, _firstLine, "ecad-outline-open",
                    $"{ownerOfErrors}: loop {_label} is open by {Numeral.Text(gap)} mm",
                    "its last point repeats its first; close it in the layout program and export again");
            }
            else
            {
                if (gap > 0)
                {
                    _current.Add(EdgeSegment.Line(_last, _first));
                }

                var loop = new OutlineLoop([.. _current], _firstLine, gap);
                if (loop.Area > EcadTolerances.SamePoint)
                {
                    _loops.Add(loop);
                }
            }
        }
        else if (_points == 1)
        {
            log.Warn(file, _firstLine, "idf-lone-point", $"{ownerOfErrors}: loop {_label} is a single point and is left out");
        }

        Reset();
    }

    private void Reset()
    {
        _current.Clear();
        _points = 0;
        _label = int.MinValue;
    }
}
