using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Draft;

namespace ShellForge.Planning.Mounts;

/// <summary>Something that hangs from or stands out of the rim.</summary>
/// <param name="Name">For messages: "J1's plug".</param>
/// <param name="Way">Its way in the housing's plan, turned upright, with the room beside it.</param>
/// <param name="Lowest">z in the housing's frame of its side towards the floor, mm.</param>
/// <param name="Under">Room wanted under it, mm.</param>
/// <param name="Hangs">Whether it leaves more or less downward.</param>
internal sealed record HangingThing(string Name, Region Way, double Lowest, double Under, bool Hangs);

/// <summary>What a stand is laid out for. The housing's plan is turned so that up is +y, its middle on x = 0.</summary>
/// <param name="Outline">The housing in plan.</param>
/// <param name="Window">Its lit window.</param>
/// <param name="Front">Its height from the outer floor to the front, mm.</param>
/// <param name="Tilt">Of its face, from the horizontal.</param>
/// <param name="Basis">Lines and layers.</param>
/// <param name="Wall">Wall of the stand, mm.</param>
/// <param name="Half">From the middle to the outer face of a cheek, mm.</param>
/// <param name="Hanging">What hangs from the rim.</param>
internal sealed record StandGiven(
    Region Outline, Region Window, double Front, Angle Tilt, PrintBasis Basis, double Wall, double Half,
    ImmutableArray<HangingThing> Hanging);

/// <summary>
/// Where a stand holds a housing. A point of the housing, v up along its face and h off its outer floor, lies at (y, z) of the stand:
/// <code>
///   z |     / h
///     |  v /  ...   y = forward + v cos - h sin,  z = lift + v sin + h cos
///     |___/______ y
/// </code>
/// </summary>
internal sealed class StandLayout
{
    // Gap round the rim, mm: it goes in by hand.
    private const double Gap = 0.4;

    // Front lips: as high as they may be without standing before the window, and at least enough to hold, mm.
    private const double LipMost = 6;
    private const double LipLeast = 2;
    private const double BelowWindow = 0.5;

    // Thickness of lip and arm in the direction of the housing's axis, mm, and the arm's share of the way from rim to centre of mass.
    private const double LipThickness = 4;
    private const double ArmThickness = 8;
    private const double ArmShare = 0.75;
    private const double ArmLeast = 8;

    // Height of the band and its corner radius, mm, for housings of all widths.
    private const double BandShare = 0.08;
    private const double CornerShare = 0.08;

    // Least plastic under a notch, mm.
    private const double UnderNotch = 4;

    // An arm may stand out backward over its foot by this share of its height: 26 degrees, which prints.
    private const double LeanShare = 0.5;

    /// <summary>It bears being tilted by so much before it tips, degrees: a hand's push, a pulled cable. Typical.</summary>
    public const double TipsAtDegrees = 12;

    private readonly double _left;
    private readonly double _right;
    private readonly double _centre;

    private StandLayout(StandGiven given)
    {
        Given = given;
        HalfWidth = given.Half;
        double across = given.Outline.Bounds.Size.X;
        BandHeight = given.Basis.Up(Math.Clamp(BandShare * across, 4, 10));
        Corner = Math.Min(Math.Clamp(CornerShare * across, 2.5, 8), given.Half - given.Wall);
        _centre = CentreOf(given.Outline);
        _left = RestAt(left: true);
        _right = RestAt(left: false);
        ArmTop = Math.Max(
            given.Outline.Bounds.Min.Y + (ArmShare * (_centre - given.Outline.Bounds.Min.Y)), Math.Max(_left, _right) + ArmLeast);
        (Lift, LiftedFor) = Lifted();

        double front = given.Front + Gap + LipThickness;
        double middle = (_centre * Cos) - (given.Front / 2 * Sin);
        Margin = (Lift + (_centre * Sin) + (given.Front / 2 * Cos)) * Angle.FromDegrees(TipsAtDegrees).Sin
            / Angle.FromDegrees(TipsAtDegrees).Cos;
        double lip = Math.Min(_left, _right);
        double foremost = Math.Min((lip - UnderNotch) * Cos, (lip + LipMost) * Cos) - (front * Sin);
        Point2 armBack = new((ArmTop * Cos) + ((Gap + ArmThickness) * Sin), Lift + (ArmTop * Sin) - ((Gap + ArmThickness) * Cos));
        double from = Math.Min(foremost - Corner, middle - Margin);
        double to = Math.Max(
            Math.Max(armBack.X - (LeanShare * (armBack.Y - BandHeight)) + Corner,
                (Math.Max(_left, _right) * Cos) + (Gap * Sin) + (ArmThickness / 2) + Corner),
            middle + Margin);
        Depth = Math.Ceiling(Math.Max(to - from, 2.2 * Corner));
        Forward = -(from + to) / 2;
    }

    /// <summary>What it is laid out for.</summary>
    public StandGiven Given { get; }

    /// <summary>x of the outer face of the right cheek, mm.</summary>
    public double HalfWidth { get; }

    /// <summary>Depth of the foot, mm.</summary>
    public double Depth { get; }

    /// <summary>z of the housing's middle at its outer floor.</summary>
    public double Lift { get; }

    /// <summary>What drives the lift.</summary>
    public string LiftedFor { get; }

    /// <summary>y of the housing's middle at its outer floor.</summary>
    public double Forward { get; }

    /// <summary>Least way from below the centre of mass to the edge of the foot, mm.</summary>
    public double Margin { get; }

    /// <summary>Height of the band, mm.</summary>
    public double BandHeight { get; }

    /// <summary>Corner radius of the band, mm.</summary>
    public double Corner { get; }

    /// <summary>v of the arms' top.</summary>
    public double ArmTop { get; }

    /// <summary>z over everything of it.</summary>
    public double Height =>
        Math.Ceiling(
            Math.Max(At(ArmTop, -Gap).Y,
                Math.Max(At(_left + LipMost, Given.Front + Gap + LipThickness).Y,
                    At(_right + LipMost, Given.Front + Gap + LipThickness).Y))) + 1;

    /// <summary>Its plastic, mm3; where band and cheeks share some, that is counted twice.</summary>
    public double Volume => (Band.Area * BandHeight) + ((Side(left: true).Area + Side(left: false).Area) * Given.Wall);

    /// <summary>Whether what hangs from the rim passes beside both cheeks.</summary>
    public bool IsClear => Given.Hanging.All(thing => thing.Way.Intersect(Cheek(left: true).And(Cheek(left: false))).IsEmpty);

    /// <summary>The band in plan.</summary>
    public Region Band => Region.RoundedRectangle(Point2.Origin, 2 * HalfWidth, Depth, Corner)
        .Less(Region.RoundedRectangle(Point2.Origin, 2 * (HalfWidth - Given.Wall), Depth - (2 * Given.Wall),
            Math.Max(Corner - Given.Wall, 0.5)));

    private double Cos => Given.Tilt.Cos;

    private double Sin => Given.Tilt.Sin;

    /// <summary>A layout.</summary>
    public static StandLayout Of(StandGiven given) => new(given);

    /// <summary>The side view (y, z) of one cheek.</summary>
    public Region Side(bool left)
    {
        double rest = left ? _left : _right;
        return StandSide.Of(this, rest, Math.Max(LipLeast, Math.Min(LipMost, WindowAt(left) - BelowWindow - rest)),
            (Gap, LipThickness, ArmThickness));
    }

    /// <summary>A point of the housing in the stand's side view.</summary>
    public Point2 At(double v, double h) => new(Forward + (v * Cos) - (h * Sin), Lift + (v * Sin) + (h * Cos));

    // Where the rim lies lowest over a cheek.
    private double RestAt(bool left) => Given.Outline.Intersect(Strip(left, 0)).Bounds.Min.Y;

    private double WindowAt(bool left)
    {
        Region window = Given.Window.Intersect(Strip(left, 0));
        return window.IsEmpty ? double.PositiveInfinity : window.Bounds.Min.Y;
    }

    private Region Strip(bool left, double beside)
    {
        double from = HalfWidth - Given.Wall - beside;
        double to = HalfWidth + beside;
        Box2 bounds = Given.Outline.Bounds;
        return left
            ? Region.Rectangle(new Point2(-to, bounds.Min.Y - 1), new Point2(-from, bounds.Max.Y + 1))
            : Region.Rectangle(new Point2(from, bounds.Min.Y - 1), new Point2(to, bounds.Max.Y + 1));
    }

    // What stands in the way of plugs: the cheek in the housing's plan, from the arm's top down.
    private Region Cheek(bool left)
    {
        double from = left ? -HalfWidth : HalfWidth - Given.Wall;
        return Region.Rectangle(
            new Point2(from, Math.Max(-Lattice.LimitMillimetres, Given.Outline.Bounds.Min.Y - 100)), new Point2(from + Given.Wall, ArmTop));
    }

    private (double Lift, string Why) Lifted()
    {
        double under = Math.Max(5, BandHeight);
        var needs = new List<(double Lift, string Why)>
        {
            (under - (Given.Outline.Bounds.Min.Y * Sin), "the rim clears the band"),
            (BandHeight + UnderNotch - ((Math.Min(_left, _right) - Gap) * Sin), "plastic under the notches"),
        };
        needs.AddRange(Given.Hanging.Select(thing => (
            thing.Under - (thing.Way.Bounds.Min.Y * Sin) - (thing.Lowest * Cos),
            $"{thing.Name} and the bend of its cable hang under the rim")));
        (double lift, string why) = needs.MaxBy(need => need.Lift);
        return (Math.Ceiling(lift), why);
    }

    // y of the centre of an area: a housing is about as heavy everywhere.
    private static double CentreOf(Region outline)
    {
        double twice = 0;
        double moment = 0;
        foreach (ImmutableArray<Point2> loop in outline.Loops)
        {
            for (int i = 0; i < loop.Length; i++)
            {
                Point2 a = loop[i];
                Point2 b = loop[(i + 1) % loop.Length];
                double cross = Point2.Cross(a, b);
                twice += cross;
                moment += (a.Y + b.Y) * cross;
            }
        }

        return moment / (3 * twice);
    }
}
