using ShellForge.Board.Description;
using ShellForge.Checks.Gauges;
using ShellForge.Pipeline;

namespace ShellForge.Checks.Tests;

/// <summary>Whole housings as rules see them: planned, built and evaluated.</summary>
internal static class BuiltHousings
{
    public static HousingUnderCheck Of(BoardFile file) => HousingPipeline.Draw(file);
}
