using ShellForge.Checks.Gauges;
using ShellForge.Formats.Glb;
using ShellForge.Output.Assembly;
using ShellForge.Output.Looks;
using ShellForge.Output.Plates;
using ShellForge.Output.Report;

namespace ShellForge.Output.Files;

/// <summary>Files with the meshes of the parts.</summary>
internal static class MeshFiles
{
    /// <summary>Name of the assembly's file.</summary>
    public const string Assembly = "assembly.glb";

    /// <summary>One binary STL a part, in print orientation.</summary>
    public static IEnumerable<(string Name, Action<Stream> Write)> Stl(HousingUnderCheck housing, HousingLooks looks) =>
        housing.SoundParts.Where(part => !part.PrintMesh.IsEmpty).Select(part => (
            HousingReport.FileOf(housing, part.Name),
            (Action<Stream>)(stream => stream.Write(
                new RememberedFiles(housing.Memory).Stl(part.PrintMesh, $"ShellForge {housing.Board.NameOf(part.Name)} mm")))));

    /// <summary>One 3MF a plate.</summary>
    public static IEnumerable<(string Name, Action<Stream> Write)> ThreeMf(HousingUnderCheck housing, HousingLooks looks)
    {
        byte[] thumbnail = HousingPictures.Thumbnail(looks);
        return HousingPlates.Of(housing).Select(plate => (
            plate.File,
            (Action<Stream>)(stream => stream.Write(
                new RememberedFiles(housing.Memory).ThreeMf(housing.Board.Name, plate.Plate, thumbnail)))));
    }

    /// <summary>The assembly.</summary>
    public static IEnumerable<(string Name, Action<Stream> Write)> Glb(HousingUnderCheck housing, HousingLooks looks) =>
        [(Assembly, stream => GlbWriter.Write(stream, housing.Board.Name, AssemblyScene.Of(housing, looks.Board)))];
}
