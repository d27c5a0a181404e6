using ShellForge.Board.Description;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Vocabulary;

/// <summary>A value as it was said in the file, or not.</summary>
/// <param name="Given">Whether it was given and could be read.</param>
/// <param name="Value">The value; the key's default when it was not given, meaningless where it has none.</param>
/// <param name="Node">Its node; the form's own node when it was not given, so that there always is a place to point at.</param>
internal readonly record struct Parsed<T>(bool Given, T Value, PositionedNode Node)
{
    /// <summary>Where it stands.</summary>
    public FilePlace Place => Node.Place;

    /// <summary>The value, or another one when it was not given.</summary>
    public T Or(T fallback) => Given ? Value : fallback;
}

/// <summary>The same for numbers and words that may be missing.</summary>
internal static class ParsedExtensions
{
    /// <summary>The value; null when it was not given.</summary>
    public static T? OrNull<T>(this Parsed<T> parsed)
        where T : struct => parsed.Given ? parsed.Value : null;
}
