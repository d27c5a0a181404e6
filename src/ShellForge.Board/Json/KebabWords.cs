using System.Text.Json;
using System.Text.Json.Serialization;

namespace ShellForge.Board.Json;

/// <summary>Writes the members of an enumeration as words: <c>DoNotPrint</c> as <c>do-not-print</c>.</summary>
/// <typeparam name="T">The enumeration.</typeparam>
public sealed class KebabWords<T>() : JsonStringEnumConverter<T>(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false)
    where T : struct, Enum;

/// <summary>Members of enumerations as words.</summary>
public static class KebabWord
{
    /// <summary>The word of a member, as <see cref="KebabWords{T}"/> writes it.</summary>
    public static string Of<T>(T member)
        where T : struct, Enum => JsonNamingPolicy.KebabCaseLower.ConvertName(member.ToString());
}
