using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Yaml.Forms;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>Places the maker's own openings and checks what they are for.</summary>
/// <param name="board">The board as far as it could be read.</param>
/// <param name="sink">Takes what is wrong.</param>
internal sealed class OpeningResolver(ResolvedBoard? board, DiagnosticSink sink)
{
    // Corners that nobody asks for are as round as a nozzle makes them.
    private const double UsualCorner = 0.5;

    /// <summary>The openings; those with faults, which have been told, are left out.</summary>
    public ImmutableArray<OwnOpening> Resolve(ImmutableArray<ParsedOpening> said)
    {
        var names = new Designators(sink);
        foreach ((string taken, ParsedOpening opening) in said.SelectMany(opening => Things()
            .Where(thing => thing.Ref == opening.Name.Value).Select(thing => (thing.Ref, opening))))
        {
            sink.Error(opening.Name.Place, "duplicate-ref", $"'{taken}' is the name of an opening and of a part",
                "expected a name that no part has");
        }

        var openings = ImmutableArray.CreateBuilder<OwnOpening>();
        foreach (ParsedOpening opening in said)
        {
            names.Take(opening.Name.Value, opening.Name.Place);
            if (Shape(opening) is { } shape && Placed(opening, shape) is { } placed)
            {
                openings.Add(placed);
            }
        }

        return openings.ToImmutable();
    }

    private OwnOpening? Placed(ParsedOpening said, OpeningShape shape)
    {
        (OpenedSide side, Parsed<ParsedOpeningPlace> place) = said.Wall.Given ? (OpenedSide.Wall, said.Wall)
            : said.Floor.Given ? (OpenedSide.Floor, said.Floor) : (OpenedSide.Front, said.Front);
        if (!place.Given)
        {
            return null;
        }

        Point2? at = place.Value.Polar is { } polar ? (board?.Centre ?? Point2.Origin) + polar
            : place.Value.At is { } point ? point - (board?.Board?.FileCentre ?? Point2.Origin) : null;
        if (place.Value.Part is { } part)
        {
            at = Things().Where(thing => thing.Ref == part).Select(thing => (Point2?)thing.At).FirstOrDefault();
            if (at is null && board?.Board is not null)
            {
                sink.Error(place.Place, "unknown-part", $"there is no part '{part}' that '{said.Name.Value}' could be for",
                    said.Wall.Given ? "expected a board angle or a designator" : "expected [x, y], {polar: ...} or a designator",
                    NearestName.In(part, Things().Select(thing => thing.Ref)));
                return null;
            }
        }

        return new OwnOpening
        {
            Name = said.Name.Value.Trim(),
            In = side,
            Angle = place.Value.Angle,
            At = at,
            PartRef = place.Value.Part,
            Height = said.Height.Given ? said.Height.Value : null,
            OverBoard = said.OverBoard.Given ? said.OverBoard.Value : null,
            Shape = shape,
            Turn = said.Turn.Or(Angle.Zero),
            Path = $"housing.openings[{said.Name.Value}]",
        };
    }

    private OpeningShape? Shape(ParsedOpening said)
    {
        if (said.Diameter.Given)
        {
            if (said.Turn.Given)
            {
                sink.Warning(said.Turn.Place, "turn-of-round", "a round opening looks the same however it is turned",
                    "expected no 'turn', or a slot or rectangle");
            }

            return OpeningShape.Round(said.Diameter.Value);
        }

        if (!said.Slot.Given && !said.Rectangle.Given)
        {
            return null;
        }

        ImmutableArray<double> size = said.Slot.Given ? said.Slot.Value : said.Rectangle.Value;
        double half = Math.Min(size[0], size[1]) / 2;
        if (said.Slot.Given)
        {
            return OpeningShape.Slot(size[0], size[1]);
        }

        if (said.Corner.Given && said.Corner.Value > half)
        {
            sink.Error(said.Corner.Place, "out-of-range", "the corners are rounder than the rectangle is wide",
                $"expected a radius of at most {NumberText.Written(half)} mm, or a slot");
            return null;
        }

        return new OpeningShape(size[0], size[1], said.Corner.Or(Math.Min(UsualCorner, half)));
    }

    // Everything with a designator that an opening can be for.
    private IEnumerable<(string Ref, Point2 At)> Things() => board is null ? [] :
        board.Parts.Select(part => (part.Ref, part.At))
            .Concat(board.Circles.SelectMany(circle => circle.Pixels).Select(pixel => (pixel.Ref, pixel.At)));
}
