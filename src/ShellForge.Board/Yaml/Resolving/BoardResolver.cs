using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Forms;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>What could be read of the board.</summary>
/// <param name="Outline">The edge; null when it could not be read.</param>
/// <param name="Parts">Parts, those beside LEDs included.</param>
/// <param name="Circles">LED circles.</param>
/// <param name="Board">All of it; null when something that it needs could not be read.</param>
internal sealed record ResolvedBoard(
    BoardOutline? Outline, ImmutableArray<BoardPart> Parts, ImmutableArray<PixelCircle> Circles, CircuitBoard? Board)
{
    /// <summary>The board's centre, about which polar places are counted, seen from where plans have their origin.</summary>
    public Point2 Centre { get; init; }

    /// <summary>A second board in the housing; null for none.</summary>
    public SecondBoardSpec? SecondBoard { get; init; }
}

/// <summary>Puts the board together from what was said.</summary>
internal sealed class BoardResolver(DiagnosticSink sink, ProfileLibrary profiles, NodePaths paths)
{
    /// <summary>The board as far as it could be read. Faults have been told.</summary>
    public ResolvedBoard Resolve(ParsedBoard said, ParsedHousing? housing)
    {
        var edge = new OutlineResolver(said, sink);
        BoardOutline? outline = edge.Resolve();
        BoardSurface? surface = outline is null ? null : new BoardSurface(outline, edge.Origin);
        var context = new ResolvingContext(sink, profiles, paths, edge.Origin, edge.Centre - edge.Origin);
        var designators = new Designators(sink);
        ImmutableArray<ParsedPart> partsSaid = said.Parts.Or([]);
        ImmutableArray<BoardHole> holes = new HoleResolver(surface, housing, context).Resolve(said.Holes.Or([]));
        ImmutableHashSet<string> partRefs = [.. partsSaid.Where(p => p.Ref.Given).Select(p => p.Ref.Value)];
        ImmutableArray<BoardPart> parts = new PartResolver(surface, designators, context).Resolve(partsSaid);
        var pixels = new PixelResolver(surface, designators, partRefs, context);
        ImmutableArray<PixelCircle> circles = pixels.Resolve(said.Pixels.Or([]));
        var second = new SecondBoardResolver(sink, edge.Origin);
        Parsed<ParsedSecondBoard>? secondSaid = housing?.SecondBoard.Given == true ? housing.SecondBoard : null;
        SecondBoardSpec? secondBoard = secondSaid is { } asked ? second.Resolve(asked.Value) : null;
        if (secondSaid is { } named)
        {
            designators.Take(SecondBoardSpec.WireWord, named.Place);
        }

        second.CheckUsed(said.Holes.Or([]), secondBoard);
        ImmutableArray<WireLead> wires = new WireResolver(surface, designators, context)
            .Resolve(said.Wires.Or([]), CableNames(housing), housing?.Battery.Given == true);
        parts = [.. parts, .. pixels.Companions, .. second.OnSpacers(secondSaid, secondBoard, holes)];
        if (outline is null || !said.Thickness.Given)
        {
            return new ResolvedBoard(outline, parts, circles, null) { Centre = context.Centre, SecondBoard = secondBoard };
        }

        ParsedMeasured? measured = said.Measured.Given ? said.Measured.Value : null;
        var board = new CircuitBoard
        {
            Outline = outline,
            Thickness = measured is { Thickness.Given: true } ? measured.Thickness.Value : said.Thickness.Value,
            Edge = said.Edge.Value,
            TabStub = measured is { TabStub.Given: true } ? measured.TabStub.Value : null,
            BoreMeasured = measured is { Bore.Given: true },
            Holes = holes,
            PixelCircles = circles,
            Parts = parts,
            Wires = wires,
            FileCentre = edge.Origin,
        };
        return new ResolvedBoard(outline, parts, circles, board) { Centre = context.Centre, SecondBoard = secondBoard };
    }

    private static ImmutableArray<string> CableNames(ParsedHousing? housing) => housing is null ? []
        : [.. housing.Cable.Or([]).Where(cable => cable.Round.Given).Select(cable => cable.Name.Or(RoundCable.Unnamed))];
}
