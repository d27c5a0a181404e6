using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Forms;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>Puts the wishes for the housing together and checks them against the board.</summary>
internal sealed class HousingResolver(
    ResolvedBoard? board, Angle up, DiagnosticSink sink, ProfileLibrary profiles, NodePaths paths)
{
    /// <summary>The wishes; null when insert or screw could not be read, or an insert is needed and not said.</summary>
    public HousingSpec? Resolve(ParsedHousing said)
    {
        ImmutableArray<CableSpec>? cables = Cables(said);
        CheckWords(said);
        ImmutableArray<OwnOpening> openings = new OpeningResolver(board, sink).Resolve(said.Openings.Or([]));
        BatterySpec? battery = said.Battery.Given ? new BatteryResolver(board, sink).Resolve(said.Battery.Value) : null;
        if (!NeedsMet(said) || cables is null)
        {
            return null;
        }

        ScrewProfile? screw = null;
        if (said.Insert.Given)
        {
            ParsedScrew? screwSaid = said.Screw.Given ? said.Screw.Value : null;
            FilePlace screwPlace = said.Screw.Given ? said.Screw.Place : said.Insert.Place;
            screw = new ScrewChoice(profiles, sink).For(said.Insert.Value, screwSaid, screwPlace);
            if (screw is null)
            {
                return null;
            }
        }

        return said.Wishes with
        {
            Insert = said.Insert.Given ? said.Insert.Value : null,
            Screw = screw,
            Cables = cables.Value,
            Light = said.Wishes.Light with { WindowOutline = WindowOutline(said.Light.Value.Window) },
            Openings = openings,
            Battery = battery,
            SecondBoard = board?.SecondBoard,
        };
    }

    // An insert is needed where a screw goes: in every mounting hole without one of its own, and through the cover.
    private bool NeedsMet(ParsedHousing said)
    {
        if (said.Insert.Given)
        {
            return true;
        }

        // One that can't be read, or whose key is mistyped, has been told.
        if (!ReferenceEquals(said.Insert.Node, said.Node)
            || (said.Node is MappingNode mapping && mapping.Entries.Any(entry => NearestName.In(entry.Key.Text, ["insert"]) is not null)))
        {
            return false;
        }

        BoardHole? hole = board?.Board?.Holes.FirstOrDefault(each => each.For == HolePurpose.Mount && each.Insert is null);
        string? what = said.Wishes.Closure == ClosureKind.Screws ? "closure screws go into inserts"
            : said.Wishes.Hold == HoldKind.Clamp ? "the screws of the clamp ring go into inserts"
            : board?.SecondBoard?.Hold == SecondBoardHold.Screws ? "the second board's screws go into inserts"
            : hole is not null ? $"a screw goes through {hole.Name} into an insert"
            : null;
        if (what is null)
        {
            return board?.Board is not null;
        }

        sink.Error(
            said.Node.Place, "no-insert", $"the housing has no `insert:`, and {what}",
            said.Wishes.Closure == ClosureKind.Screws
                ? "expected insert: the insert in your drawer, by its body, such as m2.5x4-od4.6, or closure: snap"
                : said.Wishes.Hold == HoldKind.Clamp
                ? "expected insert: the insert in your drawer, by its body, such as m2.5x4-od4.6, or hold: clips"
                : board?.SecondBoard?.Hold == SecondBoardHold.Screws
                ? "expected insert: the insert in your drawer, by its body, or second-board: {hold: clips} or {hold: strap}"
                : "expected insert: the insert in your drawer, by its body, such as m2.5x4-od4.6, or for: wire or tooling at holes "
                    + "without a screw");
        return false;
    }

    // The same coordinates as the board's, which are counted from its centre inside.
    private Region WindowOutline(Parsed<ParsedWindow> said)
    {
        if (said is not { Given: true, Value: { Shape: WindowShape.Outline } window })
        {
            return Region.Empty;
        }

        Point2 centre = board?.Board?.FileCentre ?? Point2.Origin;
        Point2[] corners = [.. OutlinePath.Points(window.Corners).Select(corner => corner - centre)];

        // What lies off every board may lie outside the space that parts are made in.
        bool onBoard = corners.All(corner => corner.Length <= BoardKinds.LargestBoard / 2);
        corners = onBoard ? [.. corners.Select(Lattice.Snap)] : [];
        if (corners.Length < 3 || OutlinePath.Crossing(corners) is not null)
        {
            sink.Error(said.Place, "window-not-an-outline", "the window's corners make no outline on the board",
                "expected three corners or more in order round the window, on the board");
            return Region.Empty;
        }

        return Region.Polygon(corners);
    }

    private ImmutableArray<CableSpec>? Cables(ParsedHousing said)
    {
        if (!said.Cable.Given)
        {
            return DefaultCables(said);
        }

        var names = new HashSet<string>(StringComparer.Ordinal);
        var cables = ImmutableArray.CreateBuilder<CableSpec>();
        bool sound = true;
        foreach (ParsedCable cable in said.Cable.Value)
        {
            CableSpec? one = cable.Part.Given ? Connector(cable.Part) : cable.Round.Given ? Round(cable) : null;
            string? name = one switch
            {
                ConnectorCable connector => connector.PartRef,
                RoundCable round => round.Name,
                _ => null,
            };
            if (one is null || name is null)
            {
                sound = false;
                continue;
            }

            if (!names.Add(name))
            {
                sink.Error(
                    cable.Node.Place, "duplicate-name",
                    one is ConnectorCable ? $"two cables plug into {name}" : $"two cables go by the name '{name}'",
                    one is ConnectorCable ? "expected one" : "expected a name of its own for each, such as name: data");
            }

            cables.Add(one);
        }

        return sound ? cables.ToImmutable() : null;
    }

    private RoundCable Round(ParsedCable cable) => new(
        cable.Round.Value,
        cable.At.Or((up + Angle.FromDegrees(180)).Normalized),
        cable.Plug.Given ? cable.Plug.Value[0] : 0,
        cable.Plug.Given ? cable.Plug.Value[1] : 0,
        cable.Relief.Value,
        cable.Through.Value)
    {
        Name = cable.Name.Or(RoundCable.Unnamed),
        Path = paths.Of(cable.Node),
    };

    private ImmutableArray<CableSpec> DefaultCables(ParsedHousing said)
    {
        BoardPart[] open = board is null ? [] : [.. board.Parts.Where(p => p.Mouth is not null && p.Port != PortWish.Closed)];
        if (open.Length == 1)
        {
            sink.Note(said.Node.Place, "cable-not-said",
                $"`cable:` is not said: it is taken to plug into {open[0].Ref}, the only connector");
            return [new ConnectorCable(open[0].Ref)];
        }

        string which = open.Length == 0 ? "no connector takes one" : $"{string.Join(" and ", open.Select(p => p.Ref))} could take it";
        sink.Warning(said.Node.Place, "cable-not-said", $"`cable:` is not said and {which}: the housing gets no cable exit",
            "expected cable: {part: ...}, {round: ...} or none");
        return [];
    }

    private ConnectorCable? Connector(Parsed<string> part)
    {
        if (board is null)
        {
            return new ConnectorCable(part.Value);
        }

        BoardPart? found = board.Parts.FirstOrDefault(p => p.Ref == part.Value);
        if (found is null)
        {
            sink.Error(
                part.Place,
                "unknown-part",
                $"there is no part '{part.Value}' that could take the cable",
                "expected the designator of a connector",
                NearestName.In(part.Value, board.Parts.Where(p => p.Mouth is not null).Select(p => p.Ref)));
            return null;
        }

        if (found.Mouth is null)
        {
            sink.Error(part.Place, "no-mouth", $"{part.Value} takes no plug", "expected the designator of a connector");
            return null;
        }

        if (found.Port == PortWish.Closed)
        {
            sink.Error(part.Place, "cable-port-closed", $"the cable is to plug into {part.Value}, whose port is closed",
                "expected port: open");
        }

        return new ConnectorCable(found.Ref);
    }

    private void CheckWords(ParsedHousing said)
    {
        if (said.Wishes.Size.Outer is not null && said.Clearance is { Given: true, Value.BoardEdge: not null })
        {
            sink.Error(said.Size.Place, "conflicting-keys", "'size: {outer: ...}' cannot stand beside 'clearance: {board-edge: ...}'",
                "expected one of them: each says how wide the gap round the board is");
        }

        if (said.BoreOpen.Given && board is { Outline: not (null or RingOutline) })
        {
            sink.Warning(said.BoreOpen.Place, "no-bore", "`bore:` is said, but the outline is no ring", "expected an outline {ring: ...}");
        }

        if (said.ClosureScrews.Given && said.Wishes.Closure != ClosureKind.Screws)
        {
            sink.Warning(said.ClosureScrews.Place, "no-closure-screws", "`closure-screws:` is said, but the closure takes none",
                "expected closure: screws");
        }

        if (said.Light is { Given: true, Value.Through: { Given: true, Value: LightThrough.Wall } through }
            && board is not null
            && board.Circles.All(c => c.Facing == PixelFacing.Up))
        {
            sink.Warning(through.Place, "no-side-light", "the light is to leave through the wall, but all LEDs look up",
                "expected side-facing LEDs, or through: front");
        }
    }
}
