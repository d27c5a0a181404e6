using ShellForge.Checks.Gauges;
using ShellForge.Formats.Step;
using ShellForge.Output.Looks;

namespace ShellForge.Output.Files;

/// <summary>
/// The parts for CAD, at the size they have in the hand and in the places where they sit: all of them opened together are the housing.
/// </summary>
internal static class StepFiles
{
    /// <summary>One file a part.</summary>
    public static IEnumerable<(string Name, Action<Stream> Write)> Of(HousingUnderCheck housing, HousingLooks looks) =>
        housing.SoundParts.Where(part => !part.PrintMesh.IsEmpty).Select(part => (
            $"{housing.Board.NameOf(part.Name)}.step",
            (Action<Stream>)(stream => StepWriter.Write(stream, housing.Board.NameOf(part.Name), part.PrintMesh.Mesh,
                1 / part.Plan.ShrinkScale, part.Plan.ToPrint.Inverse()))));
}
