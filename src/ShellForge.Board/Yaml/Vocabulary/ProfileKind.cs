using ShellForge.Board.Profiles;
using ShellForge.Board.Schema;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Vocabulary;

/// <summary>The name of a profile.</summary>
internal sealed class ProfileKind<T>(string what, Func<ProfileLibrary, ProfileShelf<T>> shelf) : Kind<T>
    where T : class
{
    private const int LongestName = 80;

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
        context.Sink.Error(node.Place, "unknown-profile", fault, "expected " + Expected, known.Nearest(scalar.Text));
        value = null!;
        return false;
    }

    /// <inheritdoc />
    public override IEnumerable<string> Names(ReadingContext context) =>
        context.Profiles is null ? [] : shelf(context.Profiles).Names;

    /// <inheritdoc />
    public override void WriteSchema(SchemaWriter schema) => schema.ProfileName(LongestName, what);
}
