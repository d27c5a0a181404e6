using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;
using ShellForge.Import.Merging;

namespace ShellForge.Import.Writing;

/// <summary>A circle of LEDs as an entry of the board file, with the part that stands beside each of them.</summary>
internal sealed class LedCircleLine(ImportedBoard board, PitchCircle circle) : LedLine(board, circle.Members)
{
    /// <inheritdoc />
    public override string Lie => "stand on a circle";

    /// <inheritdoc />
    public override string Words =>
        $"{Members.Length} LEDs on a circle of {Numeral.Text(circle.Diameter, 2)}, {First.Reference} at "
            + $"{Numeral.Text(circle.FromDegrees, 1)} deg, {(circle.Clockwise ? "clockwise" : "counter-clockwise")}";

    /// <inheritdoc />
    public override string Entry(string package)
    {
        string direction = circle.Clockwise ? ", direction: cw" : "";
        return $"{{package: {package}, circle: {Numeral.Text(circle.Diameter)}, count: {circle.Count}, "
            + $"from: {Numeral.Text(circle.FromDegrees)}{direction}{Skip(circle.Skip)}{Ref()}{Turn()}{Beside()}}}";
    }

    private double DirectionOf(ImportedPart part)
    {
        Point2 from = part.BodyCentre - Board.Outline!.Centre;
        return Angle.Of(from).Degrees;
    }

    private string Turn()
    {
        double turned = Reduced(First.Rotation - DirectionOf(First));
        if (Leds.All(led => IsSameTurn(led.Rotation - DirectionOf(led), turned)))
        {
            return Rotation(turned);
        }

        double same = Reduced(First.Rotation);
        return Leds.All(led => IsSameTurn(led.Rotation, same)) ? ", turns: false" + Rotation(same) : "";
    }

    // A capacitor per LED: as many parts of one package as LEDs, each at the same place as seen from its LED.
    private string Beside()
    {
        ImmutableArray<ImportedPart> leds = Leds;
        var groups = Board.Parts.Select((p, i) => (Part: p, Index: i))
            .Where(p => p.Part.Placed && p.Part.Skip is null && p.Part.Match is { IsLed: false, Profile.Length: > 0 })
            .GroupBy(p => (p.Part.Match!.Profile, p.Part.Bottom))
            .Where(g => g.Count() == leds.Length && leds.Length <= 400);
        foreach (var group in groups)
        {
            List<(ImportedPart Part, int Index)> parts = [.. group];
            Point2? offset = null;
            var used = new HashSet<int>();
            bool fits = leds.All(led =>
            {
                (ImportedPart part, int index) = parts.MinBy(p => Point2.Distance(p.Part.BodyCentre, led.BodyCentre));
                Point2 here = (part.BodyCentre - led.BodyCentre).Turned(Angle.FromDegrees(-DirectionOf(led)));
                offset ??= here;
                return used.Add(index) && Point2.Distance(here, offset.Value) <= 2 * EcadTolerances.SameOpening;
            });
            if (fits && offset is { } at && at.Length < circle.Diameter / 4)
            {
                Companions = [.. used.Order()];
                ImportedPart first = parts[0].Part;
                string rotation = Rotation(Reduced(first.Rotation - DirectionOf(leds[0])));
                string side = first.Bottom ? ", side: bottom" : "";
                return $", with: {{package: {YamlText.Scalar(first.Match!.Profile)}, at: [{Numeral.Text(at.X, 2)}, "
                    + $"{Numeral.Text(at.Y, 2)}]{rotation}{side}}}";
            }
        }

        return "";
    }
}
