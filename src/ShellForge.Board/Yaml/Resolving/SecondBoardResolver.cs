using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Yaml.Forms;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>Puts a second board together; one on spacers becomes a part on the LED board's back, with the heads of its screws.</summary>
/// <param name="sink">Takes what is wrong.</param>
/// <param name="origin">Where plans have their origin, in the file's coordinates.</param>
internal sealed class SecondBoardResolver(DiagnosticSink sink, Point2 origin)
{
    // Laminate with parts on it, g/mm3. Typical.
    private const double GramsPerVolume = 0.0026;

    private const int FewestSpacers = 2;

    /// <summary>The second board; null where its size or a height could not be read, which has been told.</summary>
    public SecondBoardSpec? Resolve(ParsedSecondBoard said)
    {
        if (!(said.Size.Given || said.Round.Given) || !said.Above.Given)
        {
            return null;
        }

        (double length, double width) = said.Round.Given ? (said.Round.Value, said.Round.Value) : (said.Size.Value[0], said.Size.Value[1]);
        double area = said.Round.Given ? Math.PI / 4 * length * length : length * width;
        bool stacked = said.Spacers.Given;
        if (stacked && said.Hold is { Given: true, Value: not SecondBoardHold.Auto })
        {
            sink.Error(said.Hold.Place, "conflicting-keys", "'hold' cannot stand beside 'spacers': the spacers hold the second board",
                "expected one of them");
        }

        var spec = new SecondBoardSpec
        {
            Length = length,
            Width = width,
            Round = said.Round.Given,
            Thickness = said.Thickness.Value,
            Above = said.Above.Value,
            Below = said.Below.Value,
            Hold = said.Hold.Value,
            At = said.At.Given ? Place(said.At) : null,
            Turn = said.Turn.Given ? said.Turn.Value.Normalized : null,
            Watts = said.Watts.Value,
            Grams = said.Grams.Or(Math.Round(area * said.Thickness.Value * GramsPerVolume, 1)),
            Mains = said.Mains.Value,
            Spacers = stacked ? said.Spacers.Value : null,
        };
        return said.Holes is { Given: true, Value: { At.Given: true, Diameter.Given: true } holes } ? WithHoles(spec, holes)
            : said.Hold is { Given: true, Value: SecondBoardHold.Screws } && !stacked ? WithoutHoles(spec, said.Hold)
            : spec;
    }

    /// <summary>
    /// What a second board on spacers adds to the LED board's parts: itself on the back, and the screws' heads on the front. Nothing for
    /// one on the floor, or where it has no spacers to hang from, which is told.
    /// </summary>
    /// <param name="said">What was said of it; null for no second board.</param>
    /// <param name="spec">The same, put together.</param>
    /// <param name="holes">The LED board's holes.</param>
    public ImmutableArray<BoardPart> OnSpacers(Parsed<ParsedSecondBoard>? said, SecondBoardSpec? spec, ImmutableArray<BoardHole> holes)
    {
        ImmutableArray<BoardHole> spacers = [.. holes.Where(hole => hole.For == HolePurpose.Spacer && hole.Screw is not null)];
        if (spec?.Spacers is not double length || said is not { } asked)
        {
            return [];
        }

        if (spacers.Length < FewestSpacers)
        {
            sink.Error(asked.Value.Spacers.Place, "no-spacer-holes",
                spacers.Length == 0 ? "no hole of the board is for the second board's spacers"
                    : "one spacer alone lets the second board turn",
                $"expected {FewestSpacers} holes or more with for: spacer");
            return [];
        }

        Point2 at = spec.At ?? Lattice.Snap(
            new Point2(spacers.Average(hole => hole.At.X), spacers.Average(hole => hole.At.Y)));
        Angle turn = spec.Turn ?? Angle.Zero;
        foreach (BoardHole hole in spacers.Where(hole => !IsOn(spec, (hole.At - at).Turned(-1 * turn), hole.Diameter / 2)))
        {
            sink.Error(asked.Place, "spacer-beside-second-board",
                $"{hole.Name} is for a spacer, but the second board of {spec.Size} mm does not reach over it",
                "expected at and turn of the second board so that it reaches over all its spacers");
        }

        double head = spacers.Max(hole => hole.Screw!.HeadHeight.Value);
        double below = Math.Max(spec.Below, head);
        return
        [
            new BoardPart
            {
                Ref = SecondBoardSpec.WireWord,
                Side = BoardSide.Bottom,
                At = at,
                Rotation = turn,
                Length = spec.Length,
                Width = spec.Width,
                Round = spec.Round,
                Height = length + spec.Thickness + below,
                HeightFrom = "its spacers, its thickness and what is under it",
                Lift = Math.Max(0, length - spec.Above),
                OnSpacers = true,
                Watts = spec.Watts,
                Grams = spec.Grams,
                Path = "housing.second-board",
            },
            .. spacers.Select(hole => new BoardPart
            {
                Ref = $"the spacer screw in {hole.Name}",
                Side = BoardSide.Top,
                At = hole.At,
                Length = hole.Screw!.HeadDiameter,
                Width = hole.Screw.HeadDiameter,
                Round = true,
                Height = hole.Screw.HeadHeight,
                HeightFrom = hole.Screw.Name,
                Path = hole.Path,
            }),
        ];
    }

    /// <summary>Tells holes for spacers that nothing hangs from.</summary>
    /// <param name="said">The holes as said.</param>
    /// <param name="spec">The second board.</param>
    public void CheckUsed(ImmutableArray<ParsedHole> said, SecondBoardSpec? spec)
    {
        if (spec?.Spacers is null && said.FirstOrDefault(hole => hole.For is { Given: true, Value: HolePurpose.Spacer }) is { } idle)
        {
            sink.Error(idle.For.Place, "spacer-without-board", "a hole is for a spacer, but no second board hangs from spacers",
                "expected housing: {second-board: {size: ..., above: ..., spacers: ...}}, or for: tooling");
        }
    }

    private static bool IsOn(SecondBoardSpec spec, Point2 place, double radius) => spec.Round
        ? place.Length + radius <= spec.Length / 2
        : Math.Abs(place.X) + radius <= spec.Length / 2 && Math.Abs(place.Y) + radius <= spec.Width / 2;

    private SecondBoardSpec WithHoles(SecondBoardSpec spec, ParsedOwnHoles said)
    {
        ImmutableArray<Point2> holes = said.At.Value;
        foreach (Point2 hole in holes.Where(hole => !IsOn(spec, hole, said.Diameter.Value / 2)))
        {
            sink.Error(said.At.Place, "hole-off-second-board",
                string.Create(CultureInfo.InvariantCulture,
                    $"the hole at [{hole.X:0.##}, {hole.Y:0.##}] does not lie inside the second board of {spec.Size} mm"),
                "expected a place [x, y] counted from the second board's own middle");
        }

        for (int i = 0; i < holes.Length; i++)
        {
            if (holes.Take(i).Any(other => Point2.Distance(other, holes[i]) < said.Diameter.Value))
            {
                sink.Error(said.At.Place, "holes-overlap",
                    string.Create(CultureInfo.InvariantCulture,
                        $"two holes of the second board overlap at [{holes[i].X:0.##}, {holes[i].Y:0.##}]"),
                    "expected holes apart from each other");
            }
        }

        return spec with { Holes = holes, HoleDiameter = said.Diameter.Value };
    }

    private SecondBoardSpec WithoutHoles(SecondBoardSpec spec, Parsed<SecondBoardHold> said)
    {
        sink.Error(said.Place, "no-holes", "the second board is to be screwed down, but none of its holes is said",
            "expected holes: {at: [[x, y], ...], diameter: ...}, or hold: clips or strap");
        return spec;
    }

    // The same coordinates as the board's, which are counted from its centre inside.
    private Point2? Place(Parsed<Point2> said)
    {
        Point2 at = said.Value - origin;
        if (at.Length > BoardKinds.LargestBoard / 2)
        {
            sink.Error(said.Place, "second-board-off-board",
                string.Create(CultureInfo.InvariantCulture, $"the second board would lie {at.Length:0} mm from the board's middle"),
                "expected a place [x, y] under the board");
            return null;
        }

        return Lattice.Snap(at);
    }
}
