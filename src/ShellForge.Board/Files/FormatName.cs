namespace ShellForge.Board.Files;

/// <summary>What the <c>format</c> of our documents says: a name, a slash, a version.</summary>
public static class FormatName
{
    /// <summary>How it begins in a document of any version.</summary>
    /// <param name="format">The format as this version writes it, such as <c>shellforge-report/1</c>.</param>
    /// <returns>The name with its slash.</returns>
    public static string OfAnyVersion(string format) => format[..(format.IndexOf('/', StringComparison.Ordinal) + 1)];
}
