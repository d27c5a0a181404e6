using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Planar;
using ShellForge.Planning.Plan;
using ShellForge.Planning.Remembering;

namespace ShellForge.Checks.Gauges;

/// <summary>
/// Everything that the light of a housing is worked out from: the LEDs, what stands in their light, and the sheet. What the housing is run
/// at, what it is called and what holds it shut are not among it. <see cref="LightOfHousing"/> reads nothing else.
/// </summary>
internal sealed record LightKey
{
    /// <summary>Side of the grid's cells, mm.</summary>
    public required double Step { get; init; }

    /// <summary>Heights.</summary>
    public required StackPlan Stack { get; init; }

    /// <summary>Walls in plan, where they are round.</summary>
    public required RoundShell? Round { get; init; }

    /// <summary>The lit window.</summary>
    public required Region Window { get; init; }

    /// <summary>Holes of the maker's own through it.</summary>
    public required Listed<Region> Holes { get; init; }

    /// <summary>The diffuser with its field of LEDs.</summary>
    public required DiffuserPlan Diffuser { get; init; }

    /// <summary>Plastic round the window.</summary>
    public required FilamentProfile Shell { get; init; }

    /// <summary>Whether the baffle has cells, of which wall and which plastic; null without a baffle.</summary>
    public required (bool Cells, double Wall, FilamentProfile Filament)? Baffle { get; init; }

    /// <summary>The LEDs.</summary>
    public required Listed<CircleContent> Circles { get; init; }

    /// <summary>The board in plan.</summary>
    public required Region Board { get; init; }

    /// <summary>The printed parts, where they sit.</summary>
    public required Listed<(string Name, string Mesh, Transform3 ToFile, FilamentProfile Filament)> Parts { get; init; }

    /// <summary>What stands on the LEDs' side of the board: parts, then heads of screws.</summary>
    public required Listed<BoardBody> Bodies { get; init; }

    /// <summary>The key of a housing's light.</summary>
    public static LightKey Of(HousingUnderCheck housing, double step)
    {
        HousingPlan plan = housing.Plan;
        return new LightKey
        {
            Step = step,
            Stack = plan.Stack,
            Round = plan.Shell.Round,
            Window = plan.Cover.Window,
            Holes = new(LightOfHousing.HolesIn(plan)),
            Diffuser = plan.Diffuser,
            Shell = plan.Source.Print.Shell,
            Baffle = plan.Baffle is { } baffle ? (baffle.Cells, baffle.Wall, baffle.Filament) : null,
            Circles = new(plan.Source.Board.PixelCircles.Select(CircleContent.Of)),
            Board = housing.Board.Board.Outline.Region,
            Parts = new(housing.SoundParts.Select(part => (part.Name, part.DigestInLight, part.Plan.ToFile, part.Plan.Filament))),
            Bodies = new(LightOfHousing.BodiesOnTop(housing).Concat(LightOfHousing.HeadsOnTop(housing))),
        };
    }
}
