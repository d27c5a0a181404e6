using System.Collections.Immutable;
using ShellForge.Geometry.Measuring;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Gauges;

/// <summary>
/// The board put in at a slant: its connector first, pushed out through its opening along the slanted board, then the far side let down.
/// The populated board is one rigid body moved in small steps; every step must stay clear of the tub as made.
/// </summary>
internal static class TiltIn
{
    private const double PushStep = 0.5;
    private const double TurnStepDegrees = 1;

    /// <summary>The whole board is looked at this much above its place: it rests on its standoffs there.</summary>
    private const double Lifted = 0.1;

    private static readonly ImmutableArray<double> Slants = [8, 12, 16, 20, 25, 30];

    /// <summary>The least slant at which a board goes in with a port first; null: none does.</summary>
    /// <param name="bodies">Laminate and everything on it.</param>
    /// <param name="tub">The tub's surface.</param>
    /// <param name="port">The port that the connector goes out through.</param>
    /// <param name="push">How far it has to be pushed out along the board, mm.</param>
    public static double? LeastSlant(IEnumerable<BoardBody> bodies, SurfaceTree tub, PortPlan port, double push)
    {
        var board = new SurfaceTree(Together(bodies));
        foreach (double slant in Slants)
        {
            if (GoesIn(board, tub, port, slant, push))
            {
                return slant;
            }
        }

        return null;
    }

    private static bool GoesIn(SurfaceTree board, SurfaceTree tub, PortPlan port, double slant, double push)
    {
        for (double turned = 0; turned <= slant; turned += TurnStepDegrees)
        {
            if (Meets(board.Moved(Pose(port, turned, 0)), tub))
            {
                return false;
            }
        }

        for (double back = 0; back <= push; back += PushStep)
        {
            if (Meets(board.Moved(Pose(port, slant, back)), tub))
            {
                return false;
            }
        }

        // From there it is lifted out along z.
        for (double rise = 0; rise <= 40; rise += 4 * PushStep)
        {
            if (Meets(board.Moved(Pose(port, slant, push).Then(Transform3.Shift(0, 0, rise))), tub))
            {
                return false;
            }
        }

        return true;
    }

    private static bool Meets(SurfaceTree board, SurfaceTree tub) => Clearance.Between(board, tub, 0) is not null;

    // Turned about the level line through the mouth across its direction, the far side up; then drawn back along the slanted board.
    private static Transform3 Pose(PortPlan port, double degrees, double back)
    {
        var slant = Angle.FromDegrees(degrees);
        Angle faces = port.Faces;
        return Transform3.Shift(0 - port.Face.X, 0 - port.Face.Y, 0 - port.AxisZ)
            .Then(Transform3.TurnZ(Angle.Zero - faces))
            .Then(Transform3.TurnY(slant))
            .Then(Transform3.Shift(-back * slant.Cos, 0, back * slant.Sin))
            .Then(Transform3.TurnZ(faces))
            .Then(Transform3.Shift(port.Face.X, port.Face.Y, port.AxisZ + Lifted));
    }

    private static Mesh Together(IEnumerable<BoardBody> bodies)
    {
        var vertices = ImmutableArray.CreateBuilder<LatticePoint3>();
        var triangles = ImmutableArray.CreateBuilder<int>();
        foreach (BoardBody body in bodies)
        {
            // Surfaces may run through each other here: only their distance to the tub is asked.
            var source = (SourceSolid)body.Solid;
            int first = vertices.Count;
            vertices.AddRange(source.Vertices.Select(Lattice.ToLattice));
            triangles.AddRange(source.Triangles.Select(v => v + first));
        }

        return new Mesh(vertices.ToImmutable(), triangles.ToImmutable(), [.. new FaceTag[triangles.Count / 3]]);
    }
}
