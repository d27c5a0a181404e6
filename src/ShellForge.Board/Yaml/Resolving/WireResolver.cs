using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Yaml.Forms;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>Places soldered leads and checks where they go.</summary>
internal sealed class WireResolver(BoardSurface? surface, Designators designators, ResolvingContext context)
{
    private const string Out = "out";

    /// <summary>The leads, patterns written out.</summary>
    public ImmutableArray<WireLead> Resolve(ImmutableArray<ParsedWire> said)
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

        foreach (ParsedWire wire in said.Where(w => w.To.Given))
        {
            string to = wire.To.Value;
            if (to != Out && !names.Has(to) && !designators.Has(to))
            {
                context.Sink.Error(
                    wire.To.Place,
                    "wire-to-nowhere",
                    $"there is no wire and no part '{to}'",
                    "expected out, a wire's name or a part's designator",
                    NearestName.In(to, [Out, .. names.Taken, .. designators.Taken]));
            }
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
