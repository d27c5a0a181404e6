using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Plan;

namespace ShellForge.Checks.Gauges;

/// <summary>The room that something soldered to the board takes: an upright prism or cylinder in the assembled frame.</summary>
/// <param name="Ref">Designator; joints carry the part's with "joint" behind it.</param>
/// <param name="Side">Side of the board.</param>
/// <param name="Outline">In plan, at nominal size and place.</param>
/// <param name="FromZ">Lower end.</param>
/// <param name="ToZ">Upper end.</param>
/// <param name="At">Its middle in plan.</param>
public sealed record BoardBody(string Ref, BoardSide Side, Region Outline, double FromZ, double ToZ, Point2 At)
{
    /// <summary>
    /// Room for the fillet of solder round a lead: what stands out beyond the lead in plan, mm. Typical: check your boards.
    /// </summary>
    private const double JointRadius = 1.0;

    /// <summary>Copper keeps at least this far from the board's edge, mm. Source: board houses' tables, 0.3 to 0.5.</summary>
    private const double CopperFromEdge = 0.5;

    // How far behind the edge a mouth still takes a plug, mm: 2 is a ruined print. Source: practice.
    private const double AtEdge = 2.0;

    /// <summary>Whether it is the joint of a through-hole part, on the far side.</summary>
    public bool IsJoint { get; init; }

    /// <summary>Name of the printed part that it lies on; the board's where it is soldered to it or presses it.</summary>
    public string LiesOn { get; init; } = PartNames.Board;

    /// <summary>The envelope as a body.</summary>
    public Solid Solid => Shapes.Extrude(Outline, FromZ, ToZ);

    /// <summary>A point in its middle, on the face that looks away from the board.</summary>
    public Point3 FarPoint => new(At.X, At.Y, Side == BoardSide.Bottom ? FromZ : ToZ);

    /// <summary>
    /// Envelopes of everything on the board whose height is known: parts, LEDs, and the joints of through-hole parts on the far side.
    /// Parts of unknown height are left out; a rule of their own reports them.
    /// </summary>
    public static IEnumerable<BoardBody> Of(HousingPlan plan)
    {
        CircuitBoard board = plan.Source.Board;
        Region laminate = board.Outline.Region.Grown(-CopperFromEdge);
        foreach (BoardPart part in board.Parts)
        {
            Region outline = OutlineOf(part);
            if (part.Height is double height && height > 0)
            {
                BoardBody body = Standing(part.Ref, part.Side, outline, height, part.At, plan.Stack);
                yield return part.OnSpacers ? body with { ToZ = plan.Stack.BoardBottom - part.Lift } : body;
            }

            if (part.JointProtrusion > 0)
            {
                // Leads come out where there is copper: a body that reaches to the edge or past it has none there.
                BoardSide far = part.Side == BoardSide.Bottom ? BoardSide.Top : BoardSide.Bottom;
                Region joints = outline.Intersect(laminate);
                if (!joints.IsEmpty)
                {
                    yield return Standing(part.Ref + " joint", far, joints, part.JointProtrusion, part.At,
                        plan.Stack) with
                    { IsJoint = true };
                }
            }
        }

        foreach (PixelCircle circle in board.PixelCircles)
        {
            foreach (Pixel pixel in circle.Pixels)
            {
                Region outline = Body(circle.Led.Length, circle.Led.Width, pixel.Rotation, pixel.At);
                yield return Standing(pixel.Ref, BoardSide.Top, outline, circle.Led.Height, pixel.At, plan.Stack);
                if (circle.Led.TailLength > 0)
                {
                    yield return Standing(pixel.Ref + " joint", BoardSide.Bottom, outline, circle.Led.TailLength, pixel.At,
                        plan.Stack) with
                    { IsJoint = true };
                }
            }
        }
    }

    /// <summary>The blobs of soldered leads, with the bend of the wire.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="height">Height of a blob with its bend, mm.</param>
    public static IEnumerable<BoardBody> OfWires(HousingPlan plan, double height)
    {
        foreach (WireLead wire in plan.Source.Board.Wires)
        {
            double radius = Math.Max(JointRadius, wire.Diameter * wire.Conductors / 2);
            yield return Standing(wire.Name, wire.Side, Region.Disc(wire.At, Ring.Hole(radius)), height, wire.At, plan.Stack);
        }
    }

    /// <summary>Heads and washers of the screws that hold the board, by themselves or through a ring.</summary>
    public static IEnumerable<BoardBody> OfHeads(HousingPlan plan)
    {
        foreach (ScrewJointPlan joint in plan.Screws.Where(joint => joint.IsInTub))
        {
            double radius = Math.Max(joint.Screw.HeadDiameter, joint.Washer ? joint.Screw.WasherDiameter : 0) / 2;
            double rise = joint.Screw.HeadHeight + (joint.Washer ? joint.Screw.WasherThickness : 0);
            Region outline = Region.Disc(joint.At, Ring.Hole(radius));
            BoardBody head = Standing(
                joint.Name + " head", joint.FromFront ? BoardSide.Top : BoardSide.Bottom, outline, rise, joint.At, plan.Stack);
            double over = joint.FromFront ? joint.SeatZ - plan.Stack.BoardTop : 0;
            yield return head with { FromZ = head.FromZ + over, ToZ = head.ToZ + over, LiesOn = joint.Through };
        }
    }

    /// <summary>The body of a part in plan.</summary>
    public static Region OutlineOf(BoardPart part) => part.Round
        ? Region.Disc(part.At, Ring.Hole(part.Length / 2))
        : Body(part.Length, part.Width, part.Rotation, part.At);

    /// <summary>
    /// Whether a part is a connector whose mouth lies at the edge, where a plug wants it: it is placed by the edge, goes with it whatever
    /// its unit, and says nothing about the list that places the others.
    /// </summary>
    public static bool IsAtEdge(BoardPart part) => part.Mouth is { PastEdge: > -AtEdge };

    private static Region Body(double length, double width, Angle rotation, Point2 at) =>
        Region.Rectangle(new Point2(-length / 2, -width / 2), new Point2(length / 2, width / 2)).Turned(rotation).Moved(at);

    private static BoardBody Standing(string reference, BoardSide side, Region outline, double height, Point2 at, StackPlan stack) =>
        side == BoardSide.Bottom
            ? new BoardBody(reference, side, outline, stack.BoardBottom - height, stack.BoardBottom, at)
            : new BoardBody(reference, side, outline, stack.BoardTop, stack.BoardTop + height, at);
}
