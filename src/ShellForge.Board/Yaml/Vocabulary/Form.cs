using ShellForge.Board.Schema;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Vocabulary;

/// <summary>A mapping with known keys.</summary>
/// <typeparam name="T">What its values are put into.</typeparam>
internal sealed class Form<T> : Kind<T>
{
    private readonly string _what;
    private readonly bool _buildsIncomplete;
    private readonly FormKeys _keys = new();
    private readonly Func<FormValues, T> _build;

    /// <summary>Declares a mapping.</summary>
    /// <param name="what">What it describes, for messages and the schema: "a hole".</param>
    /// <param name="declare">Declares the keys and returns what puts their values together.</param>
    /// <param name="buildsIncomplete">
    /// Whether the values can be put together when keys are missing, so that what is there is still checked.
    /// </param>
    public Form(string what, Func<FormKeys, Func<FormValues, T>> declare, bool buildsIncomplete = false)
    {
        _what = what;
        _buildsIncomplete = buildsIncomplete;
        _build = declare(_keys);
    }

    /// <summary>What it describes.</summary>
    public string What => _what;

    /// <summary>The keys, in the order of their declaration.</summary>
    public FormKeys Keys => _keys;

    /// <inheritdoc />
    public override string Expected => $"{_what} with the keys {string.Join(", ", _keys.All.Select(k => k.Name))}";

    /// <inheritdoc />
    public override bool Suits(PositionedNode node) => node is MappingNode;

    /// <inheritdoc />
    public override bool TryRead(PositionedNode node, ReadingContext context, out T value)
    {
        if (node is not MappingNode mapping)
        {
            return Refuse(node, context, out value);
        }

        var values = new FormValues(mapping);
        foreach (MappingEntry entry in mapping.Entries)
        {
            if (_keys.Find(entry.Key.Text) is { } key)
            {
                key.Read(entry.Value, context, values);
                continue;
            }

            context.Sink.Error(
                entry.Key.Place,
                "unknown-key",
                $"{_what} has no key {entry.Key.KindInWords}",
                "expected one of " + string.Join(", ", _keys.All.Select(k => k.Name)),
                _keys.Nearest(entry.Key.Text));
        }

        foreach (FormKey key in _keys.All.Where(key => !values.Has(key)))
        {
            key.ReadDefault(context, values);
        }

        bool complete = _keys.Check(mapping, _what, context.Sink);
        complete &= _keys.All.All(k => !k.Required || values.Has(k));
        complete |= _buildsIncomplete;
        value = complete ? _build(values) : default!;
        return complete;
    }

    /// <inheritdoc />
    public override void WriteSchema(SchemaWriter schema) => schema.Mapping(_what, _keys);
}
