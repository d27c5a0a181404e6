using System.Collections.Immutable;
using ShellForge.Board.Profiles;
using ShellForge.Coupons.Answers;
using ShellForge.Coupons.Drawing;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Plan;

namespace ShellForge.Coupons.Kinds;

/// <summary>
/// An angle with two long arms, round holes and a slot for calipers: how far prints shrink, and what outer sizes, holes and slots lose or
/// gain on top. A long and a short outer size tell shrinkage from the growth of edges.
/// </summary>
internal sealed class SizeBar : CouponKind
{
    private const double Longest = 100;
    private const double Width = 12;
    private const double Thickness = 2.0;
    private const double Chamfer = 0.4;
    private const double SlotWidth = 7;
    private const double SlotLength = 16;

    // What corner and end of an arm keep for themselves, and what the shortest arm needs, mm.
    private const double Corner = 14;
    private const double End = 20;
    private const double Shortest = 85;

    // From a hole to its figures, mm.
    private const double Beside = 0.8;

    // A reading off the line of the others by more than this was misread, mm: calipers and prints stray by 0.03 each.
    private const double MostStray = 0.15;

    // The least spread that is believed: calipers are read to 0.02, and a print repeats to that, mm.
    private const double LeastAccuracy = 0.05;

    // Arms that differ by more than this have a loose belt, not a shrinking filament.
    private const double MostSkew = 0.005;

    // Shrinkage of any filament lies in here. Source: trade, 0.2 to 1 %; a printer's own scale is off by 0.5 % at most.
    private const double LeastShrinkage = -0.006;
    private const double MostShrinkage = 0.025;

    private static readonly ImmutableArray<double> Holes = [5, 6.5, 8];

    /// <summary>Its name.</summary>
    public const string Word = "size-bar";

    /// <inheritdoc />
    public override string Name => Word;

    /// <inheritdoc />
    public override string Tells => "shrinkage, and what outer sizes, holes and slots lose or gain";

    /// <inheritdoc />
    public override string? Lacks(CouponWish wish) => LengthOn(wish.Printer) < Shortest
        ? $"the bed of {wish.Printer.Name} is too short for an arm of {Shortest:0} mm; measure a longer print of your own, and write "
            + $"`shrinkage:` into a profile"
        : null;

    /// <inheritdoc />
    public override string? Matters(HousingPlan plan) => "posts stand where the board's holes are only if shrinkage is allowed for";

    /// <inheritdoc />
    public override Coupon Draw(CouponWish wish)
    {
        PrintBasis basis = wish.Basis;
        double length = LengthOn(wish.Printer);
        double top = basis.Up(Thickness);
        Point2 middle = new(length / 2, length / 2);
        ImmutableArray<Point2> Angle(double inset) =>
        [
            .. new Point2[]
            {
                new(inset, inset), new(length - inset, inset), new(length - inset, Width - inset), new(Width - inset, Width - inset),
                new(Width - inset, length - inset), new(inset, length - inset),
            }.Select(p => p - middle),
        ];
        Solid body = Solid.Union(
            Shapes.Loft(Angle(Chamfer), 0, Angle(0), Chamfer), Shapes.Extrude(Region.Polygon(Angle(0)), Chamfer, top));
        var cuts = new List<Solid>();
        var marks = ImmutableArray.CreateBuilder<CouponMark>();
        var steps = ImmutableArray.CreateBuilder<CouponStep>();
        void Mark(string text, Point2 at) => marks.Add(Figures.On(text, at - middle, top, basis));

        double pitch = (length - Corner - End) / Holes.Length;
        for (int i = 0; i < Holes.Length; i++)
        {
            var at = Lattice.Snap(new Point2(Corner + ((i + 0.3) * pitch), Width / 2) - middle);
            Ring ring = Ring.Hole(Holes[i] / 2);
            cuts.Add(Shapes.Extrude(Region.Disc(at, ring), -1, top + 1));
            cuts.Add(Shapes.Taper(ring.Coaxial((Holes[i] / 2) + Chamfer, RingSide.Outside), 0, ring, Chamfer, at));
            marks.Add(
                Figures.On(Figures.Size(Holes[i]),
                    at + new Point2((Holes[i] / 2) + Beside + (Figures.Room(Figures.Size(Holes[i]), basis).Width / 2), 0), top, basis));
            steps.Add(new CouponStep(Holes[i], Figures.Size(Holes[i]), at));
        }

        var slot = Lattice.Snap(new Point2(Width / 2, length / 2) - middle);
        ImmutableArray<Point2> Opening(double more) =>
        [
            slot + new Point2((-SlotWidth / 2) - more, (-SlotLength / 2) - more),
            slot + new Point2((SlotWidth / 2) + more, (-SlotLength / 2) - more),
            slot + new Point2((SlotWidth / 2) + more, (SlotLength / 2) + more),
            slot + new Point2((-SlotWidth / 2) - more, (SlotLength / 2) + more),
        ];
        cuts.Add(Shapes.Extrude(Region.Polygon(Opening(0)), -1, top + 1));
        cuts.Add(Shapes.Loft(Opening(Chamfer), 0, Opening(0), Chamfer));
        marks.Add(Figures.On(Figures.Size(SlotWidth), slot + new Point2(0, (SlotLength / 2) + Figures.Height(basis)), top, basis));
        steps.Add(new CouponStep(SlotWidth, Figures.Size(SlotWidth), slot));
        Mark("X" + Figures.Size(length), new Point2(length - 9, Width / 2));
        Mark("Y", new Point2(Width / 2, length - 5));
        Mark(Figures.Size(Width), new Point2(Width / 2, length * 0.75));
        return new Coupon
        {
            Kind = this,
            Wish = wish,
            AllowsForShrinkage = false,
            Pieces = [new CouponPiece(Name, body.Less(cuts).And(marks.Select(Figures.Solid)), steps.ToImmutable(), marks.ToImmutable())],
            Hands =
            [
                "Switch off whatever your slicer itself does against shrinkage, narrow holes and wide first layers. Let the print cool on "
                    + "the bed, then for ten minutes beside it.",
                "Close the calipers and set them to zero. Measure in the middle of each face's height, not at the edge that lay on the "
                    + "bed, three times each, and write the middle value with two decimals.",
                "Holes and slot: the small jaws, turned gently until the reading is largest across the hole, and smallest across the slot.",
            ],
        };
    }

    /// <inheritdoc />
    public override ImmutableArray<Question> Questions(CouponWish wish) => [.. All(wish)];

    /// <inheritdoc />
    public override Reading Read(CouponWish wish, AnswerSheet answers)
    {
        ImmutableArray<SizeQuestion> all = All(wish);
        double[] sizes = [.. all.Select(answers.Size)];
        double length = LengthOn(wish.Printer);
        double scaleX = (sizes[0] - sizes[2]) / (length - Width);
        double scaleY = (sizes[1] - sizes[3]) / (length - Width);
        double scale = (scaleX + scaleY) / 2;
        double[] outers = [sizes[0] - (scale * length), sizes[1] - (scale * length), sizes[2] - (scale * Width),
            sizes[3] - (scale * Width)];
        double[] holes = [.. Holes.Select((drawn, i) => sizes[4 + i] - (scale * drawn))];
        double slot = sizes[^1] - (scale * SlotWidth);
        double outer = outers.Average();
        double hole = holes.Average();
        double[] strays = [.. outers.Select(each => each - outer), .. holes.Select(each => each - hole)];
        int worst = Array.FindIndex(strays, stray => Math.Abs(stray) == strays.Max(Math.Abs));
        if (Math.Abs(scaleX - scaleY) > MostSkew)
        {
            return Reading.Wrong(
                new AnswerFault("x",
                    $"the arms differ by {100 * Math.Abs(scaleX - scaleY):0.00} % ({sizes[0]:0.00} and {sizes[1]:0.00} mm): measure both "
                        + $"again; if it stays, tighten the belts first"));
        }

        if (Math.Abs(strays[worst]) > MostStray)
        {
            return Reading.Wrong(
                new AnswerFault(all[worst].Key,
                    $"{sizes[worst]:0.00} mm lies {Math.Abs(strays[worst]):0.00} off what the other readings say: measure it again"));
        }

        double shrinkage = 1 - scale;
        if (shrinkage is < LeastShrinkage or > MostShrinkage)
        {
            return Reading.Wrong(
                new AnswerFault("x",
                    $"a shrinkage of {100 * shrinkage:0.00} % is beyond any filament: measure the long and the short sizes again"));
        }

        if (hole > outer)
        {
            return Reading.Wrong(
                new AnswerFault(all[4].Key,
                    $"holes come out {hole:0.00} wider and outer sizes {outer:0.00}: one nozzle can't do both; measure holes with the "
                        + $"small jaws, outer sizes with the large ones"));
        }

        double accuracy = Math.Max(LeastAccuracy, 2 * strays.Max(Math.Abs));
        return new Reading
        {
            Values =
            [
                .. wish.Printer.SlicerScalesShrinkage
                    ? Array.Empty<MeasuredValue>()
                    : [
                        MeasuredValue.OfPairing("shrinkage", Math.Round(shrinkage, 5), "shrinkage"),
                        MeasuredValue.OfPairing("shrinkage-spread", Math.Max(Least, Math.Round(Math.Abs(scaleX - scaleY), 5)),
                            "how much it varies"),
                    ],
                MeasuredValue.OfPairing("outer-allowance", Rounded(-outer), "added to outer sizes"),
                MeasuredValue.OfPairing("hole-allowance", Rounded(-hole), "added to holes"),
                MeasuredValue.OfPairing("slot-allowance", Rounded(-slot), "added to slots"),
                MeasuredValue.OfPairing("accuracy", Math.Round(accuracy, 2, MidpointRounding.AwayFromZero), "what sizes stray by"),
            ],
            Notes = wish.Printer.SlicerScalesShrinkage
                ? [$"the printer's profile says that the slicer scales against shrinkage: {100 * shrinkage:0.00} % is left, which is for "
                    + $"the slicer to add"]
                : [],
        };
    }

    // A spool differs along its length by that much at least, as a fraction.
    private const double Least = 0.0005;

    private static double Rounded(double size) => Math.Round(size, 3, MidpointRounding.AwayFromZero) + 0.0;

    private static double LengthOn(PrinterProfile printer) =>
        Math.Min(Longest, Math.Floor(Math.Min(printer.BedX, printer.BedY) - (2 * printer.BedMargin)));

    private static ImmutableArray<SizeQuestion> All(CouponWish wish)
    {
        double length = LengthOn(wish.Printer);
        double reach = length * 0.03;
        return
        [
            new SizeQuestion("x", $"Length of the arm marked X{length:0.##}, over its ends, mm", length, reach),
            new SizeQuestion("y", $"Length of the arm marked Y, over its ends, mm ({length:0.##} as drawn)", length, reach),
            new SizeQuestion("width-x", "Width of the arm marked Y, across it near the figure 12, mm", Width, 0.8),
            new SizeQuestion("width-y", "Width of the arm marked X, across it near its end, mm (12 as drawn)", Width, 0.8),
            .. Holes.Select(hole => new SizeQuestion(
                $"hole-{hole.ToString("0.#", System.Globalization.CultureInfo.InvariantCulture)}",
                $"Diameter of the hole left of the figures {hole.ToString("0.#", System.Globalization.CultureInfo.InvariantCulture)}, mm",
                hole, 0.9)),
            new SizeQuestion("slot", "Width of the slot at the figure 7, across the arm, mm", SlotWidth, 0.9),
        ];
    }
}
