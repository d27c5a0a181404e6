using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;
using ShellForge.Import.Merging;

namespace ShellForge.Import.Writing;

/// <summary>One circle of LEDs as an entry of the board file, with the part that stands beside each of them.</summary>
internal sealed class LedCircleLine(ImportedBoard board, PitchCircle circle)
{
    private const double SameTurn = 1.0;

    public ImportedPart First => board.Parts[circle.Members[0]];

    public PackageMatch? Led => First.Match is { IsLed: true } led ? led : null;

    /// <summary>Parts that stand beside the LEDs and are written with them.</summary>
    public ImmutableArray<int> Companions { get; private set; } = [];

    /// <summary>The entry without braces' leading dash.</summary>
    public string Entry(string package)
    {
        string text =
            $"package: {package}, circle: {Numeral.Text(circle.Diameter)}, count: {circle.Count}, from: {Numeral.Text(circle.FromDegrees)}";
        text += circle.Clockwise ? ", direction: cw" : "";
        text += circle.Skip.IsEmpty ? "" : $", skip: [{string.Join(", ", circle.Skip)}]";
        text += Counted() ? $", ref: {YamlText.Scalar(First.Reference)}" : "";
        text += Turn();
        return "{" + text + Beside() + "}";
    }

    private bool Counted()
    {
        (string letters, long number, string tail) = ReferenceOrder.Key(First.Reference);
        return number >= 0 && tail.Length == 0
            && circle.Members.Select((m, i) => ReferenceOrder.Key(board.Parts[m].Reference) == (letters, number + i, "")).All(same => same);
    }

    private double DirectionOf(ImportedPart part)
    {
        Point2 from = part.BodyCentre - board.Outline!.Centre;
        return Angle.Of(from).Degrees;
    }

    private string Turn()
    {
        List<ImportedPart> leds = [.. circle.Members.Select(m => board.Parts[m])];
        double turned = Reduced(leds[0].Rotation - DirectionOf(leds[0]));
        if (leds.TrueForAll(l => Math.Abs(Reduced(l.Rotation - DirectionOf(l) - turned)) <= SameTurn))
        {
            return Math.Abs(turned) <= SameTurn ? "" : $", rotation: {Numeral.Text(turned, 1)}";
        }

        double same = Reduced(leds[0].Rotation);
        return leds.TrueForAll(l => Math.Abs(Reduced(l.Rotation - same)) <= SameTurn)
            ? $", turns: false{(Math.Abs(same) <= SameTurn ? "" : $", rotation: {Numeral.Text(same, 1)}")}"
            : "";
    }

    // A capacitor per LED: as many parts of one package as LEDs, each at the same place as seen from its LED.
    private string Beside()
    {
        List<ImportedPart> leds = [.. circle.Members.Select(m => board.Parts[m])];
        var groups = board.Parts.Select((p, i) => (Part: p, Index: i))
            .Where(p => p.Part.Placed && p.Part.Skip is null && p.Part.Match is { IsLed: false, Profile.Length: > 0 })
            .GroupBy(p => (p.Part.Match!.Profile, p.Part.Bottom))
            .Where(g => g.Count() == leds.Count && leds.Count <= 400);
        foreach (var group in groups)
        {
            List<(ImportedPart Part, int Index)> parts = [.. group];
            Point2? offset = null;
            var used = new HashSet<int>();
            bool fits = leds.TrueForAll(led =>
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
                double turn = Reduced(first.Rotation - DirectionOf(leds[0]));
                string rotation = Math.Abs(turn) <= SameTurn ? "" : $", rotation: {Numeral.Text(turn, 1)}";
                string side = first.Bottom ? ", side: bottom" : "";
                return $", with: {{package: {YamlText.Scalar(first.Match!.Profile)}, at: [{Numeral.Text(at.X, 2)}, "
                    + $"{Numeral.Text(at.Y, 2)}]{rotation}{side}}}";
            }
        }

        return "";
    }

    private static double Reduced(double degrees)
    {
        double turn = Math.IEEERemainder(degrees, 360);
        return turn <= -180 ? turn + 360 : turn;
    }
}
