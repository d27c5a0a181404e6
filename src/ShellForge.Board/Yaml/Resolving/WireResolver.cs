using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Yaml.Forms;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>Places soldered leads and checks where they go.</summary>
internal sealed class WireResolver(BoardSurface? surface, Designators designators, ResolvingContext context)
{
    /// <summary>The leads, patterns written out.</summary>
    /// <param name="said">The wires.</param>
    /// <param name="cables">Names of the round cables that leave the housing.</param>
    /// <param name="hasBattery">Whether leads may go to a battery.</param>
    public ImmutableArray<WireLead> Resolve(ImmutableArray<ParsedWire> said, ImmutableArray<string> cables, bool hasBattery)
    {
        ImmutableArray<WireLead>.Builder leads = ImmutableArray.CreateBuilder<WireLead>();
        var names = new Designators(context.Sink);
        foreach (ParsedWire wire in said.Where(w => w.Name.Given))
        {
            double? diameter = wire.Diameter.Given ? wire.Diameter.Value : InsulatedWire.OverInsulation(wire.Gauge.Or(0));
            if (diameter is null)
            {
                context.Sink.Error(
                    wire.Node.Place, "missing-key", $"the thickness of the wire '{wire.Name.Value}' is not said",
                    "expected diameter, or gauge: one of " + InsulatedWire.Known);
                continue;
            }

            ImmutableArray<PlaceOnBoard> places = Placing.Places(wire.Place, context);
            for (int i = 0; i < places.Length; i++)
            {
                string name = Designators.Counted(wire.Name.Value, i);
                names.Take(name, wire.Name.Place);
                CheckOnBoard(wire, name, places[i].At);
                leads.Add(new WireLead
                {
                    Name = name,
                    At = places[i].At,
                    Side = wire.Side.Value,
                    Conductors = wire.Conductors.Value,
                    Diameter = diameter.Value,
                    Gauge = wire.Gauge.Given ? wire.Gauge.Value : null,
                    To = wire.To.Value,
                });
            }
        }

        // Without a round cable leads may still leave by a way of the maker's own.
        ImmutableArray<string> ways =
            [.. cables.IsEmpty ? [RoundCable.Unnamed] : cables, .. hasBattery ? new[] { BatterySpec.WireWord } : []];
        foreach (ParsedWire wire in said)
        {
            string to = wire.To.Value;
            if (!ways.Contains(to) && !names.Has(to) && !designators.Has(to))
            {
                context.Sink.Error(
                    wire.To.Given ? wire.To.Place : wire.Node.Place,
                    "wire-to-nowhere",
                    to == RoundCable.Unnamed ? $"the wire '{wire.Name.Or("")}' leaves, but no cable goes by the name '{to}'"
                        : $"there is no cable, no wire and no part '{to}'",
                    $"expected {string.Join(" or ", ways)}, a wire's name or a part's designator",
                    NearestName.In(to, [.. ways, .. names.Taken, .. designators.Taken]));
            }
        }

        // The unnamed cable's word is kept for it, whatever a wire is called.
        foreach (string cable in cables.Where(
            cable => cable != RoundCable.Unnamed && (names.Has(cable) || designators.Has(cable))))
        {
            context.Sink.Error(
                said.FirstOrDefault(wire => wire.Name.Or("") == cable)?.Node.Place ?? said.Select(wire => wire.Node.Place).FirstOrDefault(),
                "duplicate-name", $"'{cable}' is the name of a cable and of a wire or part", "expected a name of its own for each");
        }

        return leads.ToImmutable();
    }

    private void CheckOnBoard(ParsedWire wire, string name, Point2 at)
    {
        if (surface is not null && !surface.Holds(at))
        {
            context.Sink.Error(wire.Node.Place, "wire-off-board", $"the wire '{name}' at {surface.Spell(at)} lies off the board",
                surface.Extent);
        }
    }
}
