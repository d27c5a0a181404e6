using ShellForge.Checks.Gauges;
using ShellForge.Output.Light;
using ShellForge.Output.Looks;

namespace ShellForge.Output.Files;

/// <summary>The light on the diffuser as numbers; nothing for a housing that no light leaves.</summary>
internal static class LightFiles
{
    /// <summary>Name of the table's file.</summary>
    public const string Table = "light.csv";

    /// <summary>The table.</summary>
    public static IEnumerable<(string Name, Action<Stream> Write)> Csv(HousingUnderCheck housing, HousingLooks looks) =>
        housing.Light is { } light ? [(Table, stream => stream.Write(LightTable.Csv(light)))] : [];
}
