using ShellForge.Board.Description;
using ShellForge.Physics.Light;
using ShellForge.Planning.Draft;
using ShellForge.Planning.Remembering;

namespace ShellForge.Planning.Front;

/// <summary>What decides the light over LEDs that shine to the front, beside the window: they themselves, plastics and walls.</summary>
/// <param name="Circles">The circles of LEDs that shine to the front.</param>
/// <param name="Cells">Whether every LED has a cell.</param>
/// <param name="BaffleReflectance">What the baffle throws back, 0 to 1.</param>
/// <param name="Sheet">The diffuser's plastic.</param>
/// <param name="Thickness">Of the diffuser, mm.</param>
/// <param name="Section">The baffle's walls.</param>
internal sealed record LitSurroundings(
    Listed<CircleContent> Circles, bool Cells, double BaffleReflectance, SurfaceOptics Sheet, double Thickness, BaffleSection Section)
{
    /// <summary>Those of a board.</summary>
    /// <param name="file">The board.</param>
    /// <param name="section">The baffle's walls.</param>
    /// <param name="thickness">Of the diffuser, mm.</param>
    public static LitSurroundings Of(BoardFile file, BaffleSection section, double thickness)
    {
        bool cells = file.Housing.Light.Look == LightLook.Pixels;
        return new(
            new(LitBand.Circles(file.Board).Where(circle => circle.Facing == PixelFacing.Up).Select(CircleContent.Of)), cells,
            BaffleDecision.FilamentOf(file, cells).Filament.Reflectance, FilamentOptics.Of(file.Print.Diffuser), thickness, section);
    }
}
