using ShellForge.Board.Description;
using ShellForge.Board.Schema;
using ShellForge.Board.Yaml.Tree;

namespace ShellForge.Board.Yaml.Vocabulary;

/// <summary>A key of a form.</summary>
internal abstract class FormKey(string name, string help, bool required, string? otherwise)
{
    /// <summary>As written in the file.</summary>
    public string Name => name;

    /// <summary>What it is, for people.</summary>
    public string Help => help;

    /// <summary>Whether it must be given.</summary>
    public bool Required => required;

    /// <summary>What holds when it is not given, in words.</summary>
    public string? Otherwise => otherwise;

    /// <summary>What is expected there.</summary>
    public abstract string Expected { get; }

    /// <summary>What is read at its place when it is not given or can't be read; null where the reader of the file decides.</summary>
    public Func<FilePlace, PositionedNode>? Default { get; init; }

    /// <summary>Schema of its value.</summary>
    public abstract ISchemaSource Schema { get; }

    /// <summary>Reads its value into the form's values.</summary>
    public abstract void Read(PositionedNode node, ReadingContext context, FormValues values);

    /// <summary>Reads its default into the form's values, as if it stood there.</summary>
    public abstract void ReadDefault(ReadingContext context, FormValues values);
}

/// <summary>A key of a form and the type of its value.</summary>
internal sealed class FormKey<T>(string name, Kind<T> kind, string help, bool required, string? otherwise)
    : FormKey(name, help, required, otherwise)
{
    /// <inheritdoc />
    public override string Expected => kind.Expected;

    /// <inheritdoc />
    public override ISchemaSource Schema => kind;

    /// <inheritdoc />
    public override void Read(PositionedNode node, ReadingContext context, FormValues values)
    {
        if (kind.TryRead(node, context, out T value))
        {
            values.Set(this, new Parsed<T>(true, value, node));
        }
    }

    /// <inheritdoc />
    public override void ReadDefault(ReadingContext context, FormValues values)
    {
        PositionedNode at = values.Node.Find(Name) ?? values.Node;
        if (Default is { } node && kind.TryRead(node(at.Place), context, out T value))
        {
            values.Set(this, new Parsed<T>(false, value, at));
        }
    }
}

/// <summary>What was read of a form.</summary>
internal sealed class FormValues(MappingNode node)
{
    private readonly Dictionary<FormKey, object> _values = [];
    private readonly HashSet<FormKey> _given = [];

    /// <summary>The mapping.</summary>
    public MappingNode Node => node;

    /// <summary>Whether a key was given and could be read.</summary>
    public bool Has(FormKey key) => _given.Contains(key);

    /// <summary>What was said at a key.</summary>
    public Parsed<T> Get<T>(FormKey<T> key) =>
        _values.TryGetValue(key, out object? value)
            ? (Parsed<T>)value
            : new Parsed<T>(false, default!, node.Find(key.Name) ?? node);

    /// <summary>Keeps what was read.</summary>
    public void Set<T>(FormKey<T> key, Parsed<T> value)
    {
        _values[key] = value;
        if (value.Given)
        {
            _given.Add(key);
        }
    }
}
