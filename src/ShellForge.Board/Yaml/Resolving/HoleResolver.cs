using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Forms;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>Writes out holes and checks that they lie in the board and apart from each other.</summary>
/// <param name="surface">Where the laminate is; null when the outline could not be read.</param>
/// <param name="housing">The wishes for the housing; null when they could not be read.</param>
/// <param name="context">What every step needs.</param>
internal sealed class HoleResolver(BoardSurface? surface, ParsedHousing? housing, ResolvingContext context)
{
    private const int MostHoles = 500;

    // Threads that spacers are sold with.
    private static readonly ImmutableArray<string> SpacerThreads = ["M2", "M2.5", "M3", "M4"];

    /// <summary>The holes, patterns written out.</summary>
    public ImmutableArray<BoardHole> Resolve(ImmutableArray<ParsedHole> said)
    {
        ImmutableArray<BoardHole>.Builder holes = ImmutableArray.CreateBuilder<BoardHole>();
        var sources = new List<ParsedHole>();
        foreach (ParsedHole hole in said.Where(h => h.Diameter.Given))
        {
            ImmutableArray<PlaceOnBoard> places = Placing.Places(hole.Place, context);
            if (holes.Count + places.Length > MostHoles)
            {
                context.Sink.Error(hole.Node.Place, "too-many-holes", $"more than {MostHoles} holes", $"expected at most {MostHoles}");
                break;
            }

            ScrewProfile? screw = OwnScrew(hole);
            foreach (PlaceOnBoard place in places)
            {
                holes.Add(Hole(hole, screw, place, holes.Count + 1));
                sources.Add(hole);
            }

            CheckInside(hole, places);
        }

        CheckApart(holes, sources);
        return holes.ToImmutable();
    }

    // A hole with an insert of its own needs the screw of that thread; a screw of its own must fit the insert it meets.
    private ScrewProfile? OwnScrew(ParsedHole said)
    {
        if (said.For.Value == HolePurpose.Spacer)
        {
            return SpacerScrew(said);
        }

        InsertProfile? insert = said.Insert.Given ? said.Insert.Value
            : housing is { Insert.Given: true } ? housing.Insert.Value
            : null;
        if (insert is null || !(said.Insert.Given || said.Screw.Given))
        {
            return null;
        }

        if (said.Screw.Given)
        {
            return new ScrewChoice(context.Profiles, context.Sink).For(insert, said.Screw.Value, said.Screw.Place);
        }

        ScrewHead head = housing is { Screw.Given: true } ? housing.Screw.Value.Head : ScrewHead.Pan;
        return new ScrewChoice(context.Profiles, context.Sink).For(insert, new ParsedScrew(null, head), said.Insert.Place);
    }

    // A spacer has the thickest common thread that its hole lets pass, unless a screw is named.
    private ScrewProfile? SpacerScrew(ParsedHole said)
    {
        if (said.Insert.Given)
        {
            context.Sink.Error(said.Insert.Place, "insert-at-spacer", "a spacer has a thread of its own and takes no insert",
                "expected no insert at a hole with for: spacer");
        }

        if (said.Screw is { Given: true, Value.Profile: { } named })
        {
            if (named.ThreadDiameter > said.Diameter.Value)
            {
                context.Sink.Error(said.Screw.Place, "no-screw-for-spacer",
                    $"{named.Thread} does not pass the hole of {NumberText.Written(said.Diameter.Value)} for its spacer",
                    "expected a screw of a thinner thread, or a wider hole");
            }

            return named;
        }

        ScrewHead head = said.Screw.Given ? said.Screw.Value.Head : ScrewHead.Pan;
        ScrewProfile? found = context.Profiles.Screws.All
            .Where(screw => screw.Head == head && SpacerThreads.Contains(screw.Thread)
                && screw.ThreadDiameter.Value <= said.Diameter.Value)
            .MaxBy(screw => screw.ThreadDiameter.Value);
        if (found is null)
        {
            context.Sink.Error(said.Node.Place, "no-screw-for-spacer",
                $"no {head.ToString().ToLowerInvariant()}-head screw of a spacer's thread passes a hole of "
                    + NumberText.Written(said.Diameter.Value),
                $"expected a hole that passes one of {string.Join(", ", SpacerThreads)}, or a screw by its profile");
        }

        return found;
    }

    private BoardHole Hole(ParsedHole said, ScrewProfile? screw, PlaceOnBoard place, int number) => new()
    {
        Name = $"hole {number}",
        At = place.At,
        Diameter = said.Diameter.Value,
        For = said.For.Value,
        Screw = screw,
        Insert = said.Insert.Given ? said.Insert.Value : null,
        KeepOutTop = said.KeepOut.Given ? said.KeepOut.Value.Top : null,
        KeepOutBottom = said.KeepOut.Given ? said.KeepOut.Value.Bottom : null,
        Path = context.Paths.Of(said.Node),
    };

    private void CheckInside(ParsedHole said, ImmutableArray<PlaceOnBoard> places)
    {
        double radius = said.Diameter.Value / 2;
        PlaceOnBoard[] outside = surface is null ? [] : [.. places.Where(p => !surface.HoldsDisc(p.At, radius))];
        if (outside.Length > 0)
        {
            string which = places.Length == 1 ? "the hole" : $"{outside.Length} of {places.Length} holes";
            context.Sink.Error(
                said.Node.Place,
                "hole-off-board",
                $"{which} of {NumberText.Written(said.Diameter.Value)} at {surface!.Spell(outside[0].At)} "
                    + $"{(outside.Length == 1 ? "does" : "do")} not lie inside the board",
                surface.Extent);
        }
    }

    private void CheckApart(ImmutableArray<BoardHole>.Builder holes, List<ParsedHole> sources)
    {
        var told = new HashSet<ParsedHole>(ReferenceEqualityComparer.Instance);
        for (int i = 0; i < holes.Count; i++)
        {
            for (int j = 0; j < i; j++)
            {
                double apart = Point2.Distance(holes[i].At, holes[j].At) - ((holes[i].Diameter + holes[j].Diameter) / 2);
                if (apart <= 0 && told.Add(sources[i]))
                {
                    context.Sink.Error(
                        sources[i].Node.Place,
                        "holes-overlap",
                        $"hole {i + 1} at {surface?.Spell(holes[i].At) ?? "its place"} overlaps hole {j + 1}, given at line "
                            + $"{sources[j].Node.Place.Line}",
                        "expected holes apart from each other");
                }
            }
        }
    }
}
