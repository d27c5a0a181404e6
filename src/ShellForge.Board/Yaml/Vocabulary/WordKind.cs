using ShellForge.Board.Schema;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Vocabulary;

/// <summary>One of a few words.</summary>
internal sealed class WordKind<T>(params (string Word, T Value)[] words) : Kind<T>
{
    /// <inheritdoc />
    public override string Expected =>
        words.Length == 1
            ? words[0].Word
            : string.Join(", ", words[..^1].Select(w => w.Word)) + " or " + words[^1].Word;

    /// <inheritdoc />
    public override bool Suits(PositionedNode node) =>
        node is ScalarNode scalar && words.Any(w => w.Word == scalar.Text);

    /// <inheritdoc />
    public override bool TryRead(PositionedNode node, ReadingContext context, out T value)
    {
        if (node is ScalarNode { IsNull: false } scalar)
        {
            foreach ((string word, T meaning) in words)
            {
                if (word == scalar.Text)
                {
                    value = meaning;
                    return true;
                }
            }

            context.Sink.Error(
                node.Place,
                "unknown-word",
                $"{scalar.KindInWords} is not one of the words for this",
                "expected " + Expected,
                NearestName.In(scalar.Text, Names(context)));
            value = default!;
            return false;
        }

        return Refuse(node, context, out value);
    }

    /// <inheritdoc />
    public override IEnumerable<string> Names(ReadingContext context) => words.Select(w => w.Word);

    /// <inheritdoc />
    public override void WriteSchema(SchemaWriter schema) => schema.Words([.. words.Select(w => w.Word)]);
}
