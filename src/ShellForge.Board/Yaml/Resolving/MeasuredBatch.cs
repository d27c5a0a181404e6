using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Forms;
using ShellForge.Board.Yaml.Tree;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>
/// Takes what was measured on a batch in place of what is nominal, and tells what can't be: a size of something that the file has not,
/// and one so far off that the caliper or the file must be wrong.
/// </summary>
internal sealed class MeasuredBatch(DiagnosticSink sink)
{
    // How far a measured size may lie off the nominal one. Source: rings sold under one name differ by 2 in the bore, laminates by a
    // tenth, bodies of inserts by a few tenths; what is farther off is another thing. The largest plug is listed: most are smaller.
    private static readonly Reach Diameter = new(0.06, 2.5);
    private static readonly Reach Laminate = new(0.2, 0.25);
    private static readonly Reach Body = new(0.1, 0.5);
    private static readonly Reach Overmould = new(0.5, 1.0);

    // A protection circuit with its tabs makes a cell up to 5 longer; AA and its kin may be a little shorter than the largest.
    private static readonly Reach Protected = new(0.15, 6);

    private readonly ImmutableArray<MeasuredSize>.Builder _sizes = ImmutableArray.CreateBuilder<MeasuredSize>();

    /// <summary>The file with measured sizes taken over. Faults have been told.</summary>
    public BoardFile Of(BoardFile file, ParsedBoard board, ParsedHousing housing)
    {
        BoardFile taken = file;
        if (board.Measured.Given)
        {
            taken = OfBoard(taken, board, board.Measured.Value);
        }

        if (housing.Measured.Given)
        {
            taken = OfThings(taken, housing.Measured.Value);
        }

        return taken with { Measured = _sizes.ToImmutable() };
    }

    // Outline and thickness are taken where they are read, since all else on the board lies on them.
    private BoardFile OfBoard(BoardFile file, ParsedBoard board, ParsedMeasured said)
    {
        string how = How(said.Batch);
        ParsedOutline outline = board.Outline.Value;
        Note(said.Outer, "board.measured.outer", "the board's outer diameter",
            outline.Disc.Given ? outline.Disc.Value : outline.Ring.Given ? outline.Ring.Value.Outer.Value : null, Diameter, how);
        Note(said.Bore, "board.measured.bore", "the board's bore", outline.Ring.Given ? outline.Ring.Value.Bore.Value : null,
            Diameter, how);
        Note(said.Thickness, "board.measured.thickness", "the board's thickness", board.Thickness.Value, Laminate, how);
        Note(said.TabStub, "board.measured.tab-stub", "the longest stub of a tab", null, Body, how);
        if (said.TabStub.Given && file.Board.Edge != EdgeFinish.Tabs)
        {
            sink.Warning(said.TabStub.Place, "measured-without-tabs", "the stub of a tab was measured, but the edge has no tabs",
                "expected 'edge: tabs', or no 'tab-stub'");
        }

        if (!said.LedHeight.Given)
        {
            return file;
        }

        LedProfile[] leds = [.. file.Board.PixelCircles.Select(circle => circle.Led).DistinctBy(led => led.Name)];
        if (leds.Length != 1)
        {
            sink.Error(said.LedHeight.Place, "measured-which-led",
                $"the height of an LED was measured, but the board has {(leds.Length == 0 ? "none" : $"{leds.Length} kinds of them")}",
                "expected a board with LEDs of one package");
            return file;
        }

        Note(said.LedHeight, "board.measured.led-height", $"the height of the LED {leds[0].Name}", leds[0].Height, Body, how);
        var height = new Sourced(said.LedHeight.Value, how);
        return file with
        {
            Board = file.Board with
            {
                PixelCircles = [.. file.Board.PixelCircles.Select(circle => circle with { Led = circle.Led with { Height = height } })],
            },
        };
    }

    private BoardFile OfThings(BoardFile file, ParsedMeasuredThings said)
    {
        string how = How(said.Batch);
        BoardFile taken = said.Insert.Given ? WithInsert(file, said.Insert, how) : file;
        taken = said.Magnet.Given ? WithMagnet(taken, said.Magnet, how) : taken;
        taken = said.Battery.Given ? WithBattery(taken, said.Battery, how) : taken;
        return said.Plug.Given ? WithPlug(taken, said.Plug, how) : taken;
    }

    private BoardFile WithInsert(BoardFile file, Parsed<ParsedSizes> said, string how)
    {
        if (file.Housing.Insert is not { } insert)
        {
            sink.Error(said.Place, "measured-without-insert", "an insert was measured, but the housing has none", "expected 'insert:'");
            return file;
        }

        (Parsed<double> outer, Parsed<double> length) = (said.Value.First, said.Value.Second);
        Note(outer, "housing.measured.insert.outer", $"the body of the insert {insert.Name}", insert.OuterDiameter, Body, how);
        Note(length, "housing.measured.insert.length", $"the length of the insert {insert.Name}", insert.Length, Body, how);
        InsertProfile Of(InsertProfile one) => one.Name != insert.Name ? one : one with
        {
            OuterDiameter = outer.Given ? new Sourced(outer.Value, how) : one.OuterDiameter,
            Length = length.Given ? new Sourced(length.Value, how) : one.Length,

            // A hole follows its body, unless it was found on a coupon.
            HoleDiameter = outer.Given && !one.IsHoleMeasured
                ? Moved(one.HoleDiameter, one.OuterDiameter, outer.Value, $"for the body {how}") : one.HoleDiameter,
        };
        return file with
        {
            Housing = file.Housing with { Insert = Of(insert) },
            Board = file.Board.WithInserts(Of),
        };
    }

    private BoardFile WithMagnet(BoardFile file, Parsed<ParsedSizes> said, string how)
    {
        if (file.Housing.Mount != MountKind.Magnets)
        {
            sink.Error(said.Place, "measured-without-magnets", "magnets were measured, but the housing has none",
                "expected 'mount: magnets'");
            return file;
        }

        (Parsed<double> diameter, Parsed<double> height) = (said.Value.First, said.Value.Second);
        MagnetSize nominal = file.Housing.Magnet;
        Note(diameter, "housing.measured.magnet.diameter", "the magnets' diameter", nominal.Diameter, Body, how);
        Note(height, "housing.measured.magnet.height", "the magnets' height", nominal.Height, Body, how);
        return file with
        {
            Housing = file.Housing with { Magnet = new MagnetSize(diameter.Or(nominal.Diameter), height.Or(nominal.Height)) },
        };
    }

    private BoardFile WithBattery(BoardFile file, Parsed<ParsedBatterySizes> said, string how)
    {
        if (file.Housing.Battery is not { } nominal)
        {
            sink.Error(said.Place, "measured-without-battery", "a battery was measured, but the housing has none",
                "expected 'battery: ...'");
            return file;
        }

        bool round = nominal.Form == BatteryForm.Round;
        (Parsed<double> diameter, Parsed<double> thickness, Parsed<double> width, Parsed<double> length) =
            (said.Value.Diameter, said.Value.Thickness, said.Value.Width, said.Value.Length);
        if (round ? thickness.Given || width.Given : diameter.Given)
        {
            sink.Error(said.Place, "measured-other-battery",
                $"{nominal.Name} is a {(round ? "cylinder" : "pouch")}, and a {(round ? "pouch" : "cylinder")} was measured",
                round ? "expected diameter and length" : "expected thickness, width and length");
            return file;
        }

        Parsed<double> thick = round ? diameter : thickness;
        Note(thick, round ? "housing.measured.battery.diameter" : "housing.measured.battery.thickness",
            $"the {(round ? "diameter" : "thickness")} of the {nominal.Name}", nominal.Thickness, Overmould, how);
        Note(width, "housing.measured.battery.width", $"the width of the {nominal.Name}", nominal.Width, Diameter, how);
        Note(length, "housing.measured.battery.length", $"the length of the {nominal.Name}", nominal.Length, Protected, how);
        return file with
        {
            Housing = file.Housing with
            {
                Battery = nominal with
                {
                    Thickness = thick.Or(nominal.Thickness),
                    Width = round ? thick.Or(nominal.Width) : width.Or(nominal.Width),
                    Length = length.Or(nominal.Length),
                },
            },
        };
    }

    private BoardFile WithPlug(BoardFile file, Parsed<ParsedPlug> said, string how)
    {
        BoardPart? part = file.Housing.Cables.OfType<ConnectorCable>().FirstOrDefault() is { } cable
            ? file.Board.Parts.FirstOrDefault(each => each.Ref == cable.PartRef) : null;
        if (part?.Mouth is not { } mouth)
        {
            sink.Error(said.Place, "measured-without-plug", "a plug was measured, but no part takes the cable's plug",
                "expected 'cable: {part: ...}'; the plug of a round cable stands at 'cable: {plug: [width, height]}'");
            return file;
        }

        (Parsed<double> width, Parsed<double> height, Parsed<double> corner) = said.Value;
        MouthProfile nominal = mouth.Profile;
        Note(width, "housing.measured.plug.width", $"the width of {part.Ref}'s plug", nominal.PlugWidth, Overmould, how);
        Note(height, "housing.measured.plug.height", $"the height of {part.Ref}'s plug", nominal.PlugHeight, Overmould, how);

        double smaller = Math.Min(width.Or(nominal.PlugWidth), height.Or(nominal.PlugHeight));
        Note(corner, "housing.measured.plug.corner-radius", $"the corners of {part.Ref}'s plug", null, Overmould, how);
        if (corner.Given && corner.Value > smaller / 2)
        {
            sink.Error(corner.Place, "measured-far-off",
                $"corners of {NumberText.Written(corner.Value)} are rounder than a plug of {NumberText.Written(smaller)} can be",
                $"expected 0 to {Written(smaller / 2)}");
        }

        // The recess keeps its room round the plug.
        string plug = $"for the plug {how}";
        MouthProfile measured = nominal with
        {
            PlugWidth = width.Given ? new Sourced(width.Value, how) : nominal.PlugWidth,
            PlugHeight = height.Given ? new Sourced(height.Value, how) : nominal.PlugHeight,
            PlugCornerRadius = corner.Given ? new Sourced(corner.Value, how) : nominal.PlugCornerRadius,
            RecessWidth = width.Given ? Moved(nominal.RecessWidth, nominal.PlugWidth, width.Value, plug) : nominal.RecessWidth,
            RecessHeight = height.Given ? Moved(nominal.RecessHeight, nominal.PlugHeight, height.Value, plug) : nominal.RecessHeight,
        };
        return file with { Board = file.Board.WithMouths((each, own) => each.Ref == part.Ref ? measured : own) };
    }

    // What a size has over that of the thing that goes into it stays as it is.
    private static Sourced Moved(Sourced size, double nominal, double measured, string why) =>
        new(Math.Round(size + measured - nominal, 3), $"{size.Source}, {why}");

    private void Note(Parsed<double> said, string path, string what, double? nominal, Reach reach, string how)
    {
        if (!said.Given)
        {
            return;
        }

        double most = nominal is { } size ? Math.Max(reach.Share * size, reach.Least) : double.PositiveInfinity;
        if (nominal is { } wanted && Math.Abs(said.Value - wanted) > most)
        {
            sink.Error(
                said.Place, "measured-far-off",
                $"{what} is measured as {NumberText.Written(said.Value)}, {Written(Math.Abs(said.Value - wanted))} off the nominal "
                    + $"{NumberText.Written(wanted)}",
                $"expected {Written(wanted - most)} to {Written(wanted + most)}; if the caliper is right, the nominal size is another one");
        }

        _sizes.Add(new MeasuredSize(path, what, said.Value, nominal, how));
    }

    private string How(ParsedBatch batch)
    {
        if (batch.Date.Given
            && !DateOnly.TryParseExact(batch.Date.Value, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _))
        {
            sink.Error(batch.Date.Place, "not-a-date", $"'{batch.Date.Value}' is no day", "expected year-month-day, such as 2026-11-29");
        }

        string when = Sourced.MeasuredWord + (batch.Date.Given ? batch.Date.Value : "on this batch");
        return batch.Batch.Given ? $"{when}, batch {batch.Batch.Value}" : when;
    }

    private static string Written(double length) => NumberText.Written(Math.Round(length, 2));

    private readonly record struct Reach(double Share, double Least);
}
