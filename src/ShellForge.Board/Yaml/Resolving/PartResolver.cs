using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Diagnostics;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Forms;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>Places parts, patterns and connectors.</summary>
internal sealed class PartResolver(BoardSurface? surface, Designators designators, ResolvingContext context)
{
    private const int MostParts = 2000;

    /// <summary>The parts, patterns written out.</summary>
    public ImmutableArray<BoardPart> Resolve(ImmutableArray<ParsedPart> said)
    {
        ImmutableArray<BoardPart>.Builder parts = ImmutableArray.CreateBuilder<BoardPart>();
        foreach (ParsedPart part in said.Where(p => p.Ref.Given && (p.Package.Given || p.Size.Given)))
        {
            BodySize body = Body(part);
            double? past = part.PastEdge.Given ? part.PastEdge.Value : null;
            if (part.Faces.Given && Mouth(part) is null)
            {
                context.Sink.Error(
                    part.Faces.Place, "no-mouth", $"{part.Ref.Value} has no mouth that could face anywhere",
                    "expected rotation, or a package that takes a plug");
                continue;
            }

            ImmutableArray<PlaceOnBoard> places = Places(part, past);
            if (parts.Count + places.Length > MostParts)
            {
                context.Sink.Error(part.Node.Place, "too-many-parts", $"more than {MostParts} parts", $"expected at most {MostParts}");
                break;
            }

            for (int i = 0; i < places.Length; i++)
            {
                string name = Designators.Counted(part.Ref.Value, i);
                designators.Take(name, part.Ref.Place);
                if (Part(part, name, body, places[i], past) is { } placed)
                {
                    parts.Add(placed);
                }
            }
        }

        return parts.ToImmutable();
    }

    private static MouthProfile? Mouth(ParsedPart said) => said.Package.Given ? said.Package.Value.Mouth : null;

    private BodySize Body(ParsedPart said)
    {
        PartMounting mounted = said.Mounted.Or(PartMounting.Unsaid);
        BodySize body = PartBody.Of(said.Package, said.Size, said.Round.Value, mounted, said.Lift.Value, said.Height);
        if (body.Height is null && !said.Height.Given && said.Package.Given)
        {
            PackageProfile package = said.Package.Value;
            (string Word, Sourced? Height)[] ways =
            [
                ("flat", package.Height), ("on-pins", package.HeightOnPins), ("in-socket", package.HeightInSocket),
                ("mid-board", package.HeightMidBoard),
            ];
            string known = string.Join(", ",
                ways.Where(w => w.Height is not null).Select(w => $"{w.Word} ({NumberText.Written(w.Height!.Value.Value)})"));
            context.Sink.Warning(
                said.Mounted.Place,
                Diagnostic.HeightUnknown,
                $"the height of {said.Ref.Value} is unknown: {body.HeightFrom}",
                known.Length == 0 ? "expected height: a number" : $"expected height: a number, or mounted: one of {known}");
            body = known.Length == 0 ? body : body with { HeightFrom = $"{body.HeightFrom}: {known}" };
        }

        // Heights are bounded where they are read; of a body that lies, its width stands up.
        if (mounted == PartMounting.Lying && body.Height - said.Lift.Value is { } tall && tall > PartForm.Highest)
        {
            context.Sink.Error(
                said.Mounted.Place, "part-too-high", $"lying, {said.Ref.Value} is {NumberText.Written(tall)} mm high",
                $"expected at most {NumberText.Written(PartForm.Highest)}");
        }

        return body;
    }

    private ImmutableArray<PlaceOnBoard> Places(ParsedPart said, double? past)
    {
        if (said.Place.Given)
        {
            return Placing.Places(said.Place, context);
        }

        if (said.Faces.Given && past is not null)
        {
            return [new PlaceOnBoard(0, Point2.Origin, said.Faces.Value)];
        }

        context.Sink.Error(
            said.Node.Place, "missing-key", $"it is not said where {said.Ref.Value} is",
            "expected at, polar, circle, grid, or faces with past-edge");
        return [];
    }

    private BoardPart? Part(ParsedPart said, string name, BodySize body, PlaceOnBoard place, double? past)
    {
        bool turns = said.Turns.Or(said.Place.IsPattern);
        Angle rotation = (turns ? place.Direction : Angle.Zero) + said.Rotation.Value;
        Angle faces = said.Faces.Given ? said.Faces.Value : rotation;
        Point2 at = place.At;
        ConnectorMouth? mouth = null;
        if (Mouth(said) is { } profile)
        {
            rotation = faces;
            double reach = (body.Length / 2) + profile.Overhang;
            double left = at.Turned(-1 * faces).Y;
            double? edge = surface?.EdgeAlong(faces, left);
            if (past is { } wanted)
            {
                if (edge is null && surface is not null)
                {
                    context.Sink.Error(said.PastEdge.Place, "no-edge-there", $"the board has no edge in front of {name}",
                        "expected a position on the board");
                    return null;
                }

                at = new Point2((edge ?? 0) + wanted - reach, left).Turned(faces);
            }

            Point2 face = at + Point2.Polar(reach, faces);
            mouth = new ConnectorMouth(profile, faces, face, face.Turned(-1 * faces).X - (edge ?? 0));
        }

        CheckOnBoard(said, name, body, at, rotation);
        return new BoardPart
        {
            Ref = name,
            Package = said.Package.Given ? said.Package.Value : null,
            Side = said.Side.Value,
            At = at,
            Rotation = rotation,
            Length = body.Length,
            Width = body.Width,
            Round = body.Round,
            Height = body.Height,
            HeightFrom = body.HeightFrom,
            HeightTolerance = body.Taller,
            Mounted = said.Mounted.Or(PartMounting.Unsaid),
            Lift = said.Lift.Value,
            Passive = said.Passive.Or(said.Package.Given && said.Package.Value.Passive),
            JointProtrusion = said.Joint.Or(said.Package.Given ? said.Package.Value.JointProtrusion : 0),
            Watts = said.Watts.Or(said.Package.Given ? said.Package.Value.Watts : 0),
            Mouth = mouth,
            Port = said.Port.Or(PortWish.Unsaid),
            Path = context.Paths.Of(said.Node),
        };
    }

    private void CheckOnBoard(ParsedPart said, string name, BodySize body, Point2 at, Angle rotation)
    {
        if (surface is not null && !surface.Touches(at, body.Length, body.Width, rotation))
        {
            context.Sink.Error(
                said.Place.Given ? said.Node.Place : said.PastEdge.Place, "part-off-board",
                $"{name} at {surface.Spell(at)} lies off the board", surface.Extent);
        }
    }
}
