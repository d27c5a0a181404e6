using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace ShellForge.Board.Yaml.Tree;

/// <summary>
/// The parser's events, one ahead. The scanner answers some broken texts (an unclosed mapping in braces before an indented line) with
/// exceptions of other kinds than its own: here they all become syntax faults at the place it had reached.
/// </summary>
internal sealed class EventStream
{
    private readonly Scanner _scanner;
    private readonly Parser _parser;
    private bool _ahead;

    /// <summary>Events of a text.</summary>
    public EventStream(string text)
    {
        _scanner = new Scanner(new StringReader(text));
        _parser = new Parser(_scanner);
    }

    /// <summary>The event to come, without taking it.</summary>
    /// <exception cref="YamlException">The text is not valid YAML, or it has ended.</exception>
    public ParsingEvent Peek()
    {
        if (!_ahead)
        {
            _ahead = MoveNext();
        }

        return _ahead && _parser.Current is { } current
            ? current
            : throw new YamlException(_scanner.CurrentPosition, _scanner.CurrentPosition, "The text ends too early.");
    }

    /// <summary>Takes the event to come.</summary>
    /// <exception cref="YamlException">The text is not valid YAML, or it has ended.</exception>
    public ParsingEvent Next()
    {
        ParsingEvent current = Peek();
        _ahead = false;
        return current;
    }

    /// <summary>Takes the event to come if it is of a kind.</summary>
    /// <exception cref="YamlException">The text is not valid YAML, or it has ended.</exception>
    public bool Skip<T>()
        where T : ParsingEvent
    {
        bool skip = Peek() is T;
        _ahead &= !skip;
        return skip;
    }

    private bool MoveNext()
    {
        try
        {
            return _parser.MoveNext();
        }
        catch (Exception fault) when (fault is not (YamlException or OutOfMemoryException))
        {
            throw new YamlException(
                _scanner.CurrentPosition, _scanner.CurrentPosition, "A bracket, brace, quote or indent does not end as it should.", fault);
        }
    }
}
