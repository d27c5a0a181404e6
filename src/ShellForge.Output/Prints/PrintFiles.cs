namespace ShellForge.Output.Prints;

/// <summary>The schema of the print sheet, for whoever lists schemas.</summary>
public static class PrintFiles
{
    /// <summary>Its JSON Schema.</summary>
    public static string Schema() => PrintSheet.Schema();
}
