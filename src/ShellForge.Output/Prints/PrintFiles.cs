namespace ShellForge.Output.Prints;

/// <summary>The print sheet as files.</summary>
public static class PrintFiles
{
    /// <summary>Its JSON Schema.</summary>
    public static string Schema() => PrintSheet.Schema();
}
