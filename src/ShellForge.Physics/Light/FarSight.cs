using ShellForge.Geometry.Numerics;

namespace ShellForge.Physics.Light;

/// <summary>
/// Whether far LEDs see blocks of the grid, looked up once a block. What a far LED brings is below a hundredth of its peak, so the edge
/// of its shadow may be as coarse as a block.
/// </summary>
internal sealed class FarSight(LightScene scene, DirectLight direct)
{
    /// <summary>Cells along a block's side.</summary>
    public const int Side = 4;

    private readonly int _across = (scene.Face.Columns + Side - 1) / Side;
    private readonly sbyte[] _seen =
        new sbyte[direct.Count * ((scene.Face.Columns + Side - 1) / Side) * ((scene.Face.Rows + Side - 1) / Side)];

    /// <summary>
    /// Whether an LED sees a cell's block; the first cell that asks looks for all. Rows of different blocks may be asked about at the same
    /// time.
    /// </summary>
    public bool Sees(int led, int cell)
    {
        ReceiverGrid face = scene.Face;
        int block = (cell / face.Columns / Side * _across) + (cell % face.Columns / Side);
        int index = (block * direct.Count) + led;
        if (_seen[index] == 0)
        {
            int column = Math.Min((cell % face.Columns / Side * Side) + (Side / 2), face.Columns - 1);
            int row = Math.Min((cell / face.Columns / Side * Side) + (Side / 2), face.Rows - 1);
            int middle = (row * face.Columns) + column;
            Point2 looked = face.Middle(face.Open[middle] ? middle : cell);
            (Point3 at, Point3 normal) = face.At(looked.X, looked.Y);
            _seen[index] = direct.Sees(led, at, normal) ? (sbyte)1 : (sbyte)-1;
        }

        return _seen[index] > 0;
    }
}
