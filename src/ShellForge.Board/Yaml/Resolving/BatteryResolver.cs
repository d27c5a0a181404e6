using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Forms;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>Puts a battery together from its profile or its sizes.</summary>
/// <param name="board">The board as far as it could be read.</param>
/// <param name="sink">Takes what is wrong.</param>
internal sealed class BatteryResolver(ResolvedBoard? board, DiagnosticSink sink)
{
    // Mass per volume where nothing is said, g/mm3. Source: 18650 cells of 47 g, 602040 pouches of 9.5 g; typical.
    private const double GramsPerVolume = 0.0027;
    private const double GramsPerVolumeOfPouch = 0.0019;

    // What is given by size alone is taken as the more delicate kind.
    private const double WarmestOfLithium = 45;

    /// <summary>The battery; null where nothing of it could be read that tells its size, which has been told.</summary>
    public BatterySpec? Resolve(ParsedBattery said)
    {
        BatterySpec? sized = said.Cell.Given ? OfProfile(said.Cell.Value)
            : said.Round.Given ? BySize(BatteryForm.Round, [said.Round.Value[0], .. said.Round.Value])
            : said.Flat.Given ? BySize(BatteryForm.Flat, said.Flat.Value)
            : null;
        return sized is null ? null : sized with
        {
            Grams = said.Grams.Or(sized.Grams),
            Count = said.Count.Value,
            At = said.At.Given ? Place(said.At) : null,
            Along = said.Along.Given ? said.Along.Value.Normalized : null,
            Strap = said.Strap.Value,
            PlugRef = said.Plug.Given ? Connector(said.Plug) : null,
        };
    }

    private static BatterySpec OfProfile(BatteryProfile profile) => new()
    {
        Name = profile.Name,
        Form = profile.Form,
        Thickness = profile.Thickness,
        Width = profile.Width,
        Length = profile.Length,
        Grams = profile.Grams,
        Lithium = profile.Lithium,
        WarmestCelsius = profile.WarmestCelsius,
    };

    private static BatterySpec BySize(BatteryForm form, ImmutableArray<double> size)
    {
        bool round = form == BatteryForm.Round;
        double volume = round ? Math.PI / 4 * size[0] * size[0] * size[2] : size[0] * size[1] * size[2];
        return new BatterySpec
        {
            Name = round ? $"cell of {NumberText.Written(size[0])} x {NumberText.Written(size[2])} mm"
                : $"pouch of {NumberText.Written(size[0])} x {NumberText.Written(size[1])} x {NumberText.Written(size[2])} mm",
            Form = form,
            Thickness = size[0],
            Width = size[1],
            Length = size[2],
            Grams = Math.Round(volume * (round ? GramsPerVolume : GramsPerVolumeOfPouch), 1),
            Lithium = true,
            WarmestCelsius = WarmestOfLithium,
        };
    }

    // The same coordinates as the board's, which are counted from its centre inside.
    private Point2? Place(Parsed<Point2> said)
    {
        Point2 at = said.Value - (board?.Board?.FileCentre ?? Point2.Origin);
        if (at.Length > BoardKinds.LargestBoard / 2)
        {
            sink.Error(said.Place, "battery-off-board",
                string.Create(CultureInfo.InvariantCulture, $"the battery's bay would lie {at.Length:0} mm from the board's middle"),
                "expected a place [x, y] under the board");
            return null;
        }

        return Lattice.Snap(at);
    }

    private string? Connector(Parsed<string> plug)
    {
        if (board is not null && board.Parts.All(part => part.Ref != plug.Value))
        {
            sink.Error(plug.Place, "unknown-part", $"there is no part '{plug.Value}' that could take the battery's plug",
                "expected the designator of a connector", NearestName.In(plug.Value, board.Parts.Select(part => part.Ref)));
            return null;
        }

        return plug.Value;
    }
}
