using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Benchmarks.Promises;

/// <summary>
/// Whether something comes off along z: seen along z, its lowest faces and the highest faces of all that stays are drawn into two pictures.
/// Where what stays is higher, it holds.
/// </summary>
internal sealed class LiftOff
{
    // Side of a pixel, mm.
    private const double Pixel = 0.2;

    // What stays may reach into what comes off from below by this, mm: ribs that are crushed.
    private const double Pressed = 0.35;

    private readonly int _held;
    private readonly double _left;
    private readonly double _front;
    private readonly int _columns;
    private readonly int _rows;
    private readonly float[] _lowest;
    private readonly float[] _highest;

    /// <summary>Pictures over a stretch of plan.</summary>
    /// <param name="least">Its lower left corner.</param>
    /// <param name="most">Its upper right corner.</param>
    /// <param name="held">Side of the square that must be held, mm: beads and ridges, which give, overlap by less.</param>
    public LiftOff(Point2 least, Point2 most, double held)
    {
        _held = (int)Math.Ceiling(held / Pixel);
        (_left, _front) = (least.X, least.Y);
        _columns = (int)((most.X - least.X) / Pixel) + 1;
        _rows = (int)((most.Y - least.Y) / Pixel) + 1;
        _lowest = new float[_columns * _rows];
        _highest = new float[_columns * _rows];
        Array.Fill(_lowest, float.PositiveInfinity);
        Array.Fill(_highest, float.NegativeInfinity);
    }

    /// <summary>Draws what comes off, turned about the axis first.</summary>
    public void Moves(Mesh mesh, Angle turn) =>
        Draw(mesh, turn, (at, z) => _lowest[at] = Math.Min(_lowest[at], (float)z));

    /// <summary>Draws what stays.</summary>
    public void Stays(Mesh mesh) => Draw(mesh, Angle.Zero, (at, z) => _highest[at] = Math.Max(_highest[at], (float)z));

    /// <summary>A place where what stays lies over what comes off, and by how much; null where nothing holds it.</summary>
    public (Point2 At, double By)? Caught()
    {
        for (int row = 0; row + _held <= _rows; row++)
        {
            for (int column = 0; column + _held <= _columns; column++)
            {
                bool caught = true;
                for (int k = 0; k < _held * _held && caught; k++)
                {
                    int at = ((row + (k / _held)) * _columns) + column + (k % _held);
                    caught = _highest[at] > _lowest[at] + Pressed;
                }

                if (caught)
                {
                    int middle = ((row + (_held / 2)) * _columns) + column + (_held / 2);
                    return (new Point2(_left + ((column + (_held / 2.0)) * Pixel), _front + ((row + (_held / 2.0)) * Pixel)),
                        _highest[middle] - _lowest[middle]);
                }
            }
        }

        return null;
    }

    private void Draw(Mesh mesh, Angle turn, Action<int, double> set)
    {
        for (int t = 0; t < mesh.Triangles.Length; t += 3)
        {
            (double ax, double ay, double az) = At(mesh, t, turn);
            (double bx, double by, double bz) = At(mesh, t + 1, turn);
            (double cx, double cy, double cz) = At(mesh, t + 2, turn);
            double twice = ((bx - ax) * (cy - ay)) - ((by - ay) * (cx - ax));
            if (twice == 0)
            {
                continue;
            }

            int top = Math.Min(_rows - 1, (int)Math.Floor(Math.Max(ay, Math.Max(by, cy))));
            int right = Math.Min(_columns - 1, (int)Math.Floor(Math.Max(ax, Math.Max(bx, cx))));
            for (int row = Math.Max(0, (int)Math.Ceiling(Math.Min(ay, Math.Min(by, cy)))); row <= top; row++)
            {
                for (int column = Math.Max(0, (int)Math.Ceiling(Math.Min(ax, Math.Min(bx, cx)))); column <= right; column++)
                {
                    double u = (((column - ax) * (cy - ay)) - ((row - ay) * (cx - ax))) / twice;
                    double v = (((bx - ax) * (row - ay)) - ((by - ay) * (column - ax))) / twice;
                    if (u >= 0 && v >= 0 && u + v <= 1)
                    {
                        set((row * _columns) + column, az + (u * (bz - az)) + (v * (cz - az)));
                    }
                }
            }
        }
    }

    // In pixels from the picture's corner; z in mm.
    private (double X, double Y, double Z) At(Mesh mesh, int corner, Angle turn)
    {
        LatticePoint3 point = mesh.Vertices[mesh.Triangles[corner]];
        Point2 at = new Point2(point.X * Lattice.Step, point.Y * Lattice.Step).Turned(turn);
        return ((at.X - _left) / Pixel, (at.Y - _front) / Pixel, point.Z * Lattice.Step);
    }
}
