using ShellForge.Board.Profiles;
using ShellForge.Board.Schema;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Vocabulary;

/// <summary>The name of a profile.</summary>
/// <param name="what">What it is of, with its article.</param>
/// <param name="shelf">Where they stand.</param>
/// <param name="beside">Words that do as well here, for messages; they are read by another kind.</param>
internal sealed class ProfileKind<T>(string what, Func<ProfileLibrary, ProfileShelf<T>> shelf, params string[] beside) : Kind<T>
    where T : class
{
    private const int LongestName = 80;

    // As many names that begin with what was written are listed as one reads at a glance.
    private const int MostListed = 8;

    /// <inheritdoc />
    public override string Expected => $"the name of {what} (`profiles` lists them)";

    /// <inheritdoc />
    public override bool Suits(PositionedNode node) => node is ScalarNode { IsNull: false };

    /// <inheritdoc />
    public override bool TryRead(PositionedNode node, ReadingContext context, out T value)
    {
        if (node is not ScalarNode { IsNull: false } scalar || context.Profiles is null)
        {
            return Refuse(node, context, out value);
        }

        ProfileShelf<T> known = shelf(context.Profiles);
        if (known.Find(scalar.Text) is { } found)
        {
            value = found;
            return true;
        }

        string fault = context.Profiles.KindOf(scalar.Text) is { } other
            ? $"{scalar.KindInWords} is {other}"
            : $"there is no profile {scalar.KindInWords}";
        string[] begin = [.. known.Names.Where(name => name.StartsWith(scalar.Text, StringComparison.OrdinalIgnoreCase))];
        string words = beside.Length == 0 ? "" : string.Join(", ", beside) + ", or ";
        context.Sink.Error(
            node.Place, "unknown-profile", fault,
            begin.Length is > 1 and <= MostListed ? $"expected {words}one of {string.Join(", ", begin)}" : $"expected {words}{Expected}",
            NearestName.In(scalar.Text, [.. beside, .. known.Names]));
        value = null!;
        return false;
    }

    /// <inheritdoc />
    public override IEnumerable<string> Names(ReadingContext context) =>
        context.Profiles is null ? [] : shelf(context.Profiles).Names;

    /// <inheritdoc />
    public override void WriteSchema(SchemaWriter schema) => schema.ProfileName(LongestName, what);
}
