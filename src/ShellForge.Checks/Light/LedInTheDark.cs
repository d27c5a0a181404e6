using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Description;
using ShellForge.Checks.Findings;
using ShellForge.Checks.Gauges;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Checks.Light;

/// <summary>An LED that nobody will see.</summary>
public sealed class LedInTheDark() : Rule(
    "led-in-the-dark",
    "Every LED that shines to the front must lie behind the lit window, with nothing opaque over it.",
    "An LED under the bezel lights the inside of the housing; the lamp is dark there however even the rest is.",
    "the LED's middle against the window in plan; a ray straight up from its window; share of its light that reaches the diffuser "
        + "straight, rays past the real walls",
    "limit typical: behind the window an LED brings it a tenth of its light and more")
{
    // Less than this of its light is as good as none.
    private const double Least = 0.01;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        if (housing.Board.Housing.Light.Through == LightThrough.Wall)
        {
            return Dark(housing);
        }

        Pixel[] behind = [.. Front(housing).Where(pixel => !housing.Plan.Cover.Window.Contains(pixel.At))];
        return BehindBezel(housing, behind).Concat(Dark(housing, [.. behind.Select(pixel => pixel.Ref)]));
    }

    private static IEnumerable<Pixel> Front(HousingUnderCheck housing) => housing.Board.Board.PixelCircles
        .Where(circle => circle.Facing == PixelFacing.Up).SelectMany(circle => circle.Pixels);

    private IEnumerable<Finding> BehindBezel(HousingUnderCheck housing, Pixel[] behind)
    {
        if (behind.Length == 0)
        {
            yield break;
        }

        bool none = housing.Plan.Cover.Window.IsEmpty;
        Pixel worst = none ? behind[0] : behind.MaxBy(pixel => housing.Plan.Cover.Window.Distance(pixel.At))!;
        double off = none ? 0 : housing.Plan.Cover.Window.Distance(worst.At);
        string far = none ? "there is no window" : string.Create(CultureInfo.InvariantCulture, $"{worst.Ref} lies {off:0.##} mm beside it");
        yield return Found(
            Severity.Stop, Names([.. behind.Select(pixel => pixel.Ref)]), $"under the bezel, not behind the window: {far}", off, 0,
            Above(housing, worst.At),
            "a window that takes them in ('light.window'), LEDs on circles about the board's middle, or a board whose edge leaves room "
                + "for the window round them");
    }

    // LEDs behind the window, or beside a lit wall, whose light is stopped on its way.
    private IEnumerable<Finding> Dark(HousingUnderCheck housing, params ImmutableArray<string> told)
    {
        if (housing.Light is not { } light)
        {
            yield break;
        }

        string[] names = [.. housing.Board.Board.PixelCircles.SelectMany(circle => circle.Pixels).Select(pixel => pixel.Ref)];
        PixelCircle[] shining = [.. housing.Board.Board.PixelCircles.Where(circle => LightOfHousing.Shines(housing.Plan, circle))];
        var shines = shining.SelectMany(circle => circle.Pixels).Select(pixel => pixel.Ref).ToHashSet();
        int[] dark = [.. Enumerable.Range(0, names.Length).Where(i =>
            shines.Contains(names[i]) && !told.Contains(names[i])
                && (light.Map.DirectOf[i] < Least || LightOfHousing.IsCovered(light, i)))];
        if (dark.Length > 0)
        {
            int worst = dark.MinBy(i => light.Map.DirectOf[i]);
            string share = string.Create(CultureInfo.InvariantCulture,
                $"{100 * light.Map.DirectOf[worst]:0.#} % of {names[worst]}'s light");
            yield return Found(
                Severity.Stop, Names([.. dark.Select(i => names[i])]),
                LightOfHousing.IsCovered(light, worst) ? $"opaque plastic lies over them; {share} reaches the diffuser straight"
                    : $"only {share} reaches the diffuser straight",
                light.Map.DirectOf[worst], Least, light.Scene.Leds[worst].At,
                "LEDs clear of the bars and walls of the cover and of other parts, or 'look: blend', which has no walls between LEDs", "");
        }
    }

    private static Point3 Above(HousingUnderCheck housing, Point2 at) => new(at.X, at.Y, housing.Plan.Stack.LedWindow);

    /// <summary>Designators in the order of the board, runs of equal letters in short: "D1 to D8, D11".</summary>
    internal static string Names(string[] names)
    {
        var runs = new List<(string First, string Last, int Next, int Count)>();
        foreach (string name in names)
        {
            string letters = name.TrimEnd("0123456789".ToCharArray());
            int number = int.TryParse(name.AsSpan(letters.Length), NumberStyles.None, CultureInfo.InvariantCulture, out int value)
                ? value : -1;
            bool follows = runs.Count > 0 && number >= 0 && runs[^1].Next == number
                && runs[^1].First.StartsWith(letters, StringComparison.Ordinal) && char.IsAsciiDigit(runs[^1].First[letters.Length]);
            if (follows)
            {
                runs[^1] = (runs[^1].First, name, number + 1, runs[^1].Count + 1);
            }
            else
            {
                runs.Add((name, name, number + 1, 1));
            }
        }

        return string.Join(", ",
            runs.Select(run => run.Count == 1 ? run.First : run.Count == 2 ? $"{run.First}, {run.Last}" : $"{run.First} to {run.Last}"));
    }
}
