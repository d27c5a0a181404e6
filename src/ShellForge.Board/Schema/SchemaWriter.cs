using System.Text.Json;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Schema;

/// <summary>Something that can write its JSON Schema.</summary>
internal interface ISchemaSource
{
    /// <summary>Writes the keywords of its schema into the object that is open.</summary>
    void WriteSchema(SchemaWriter schema);
}

/// <summary>Writes JSON Schema keywords, draft 2020-12, into the object that is open.</summary>
internal sealed class SchemaWriter(Utf8JsonWriter json)
{
    /// <summary>A plain type.</summary>
    public void Type(string type) => json.WriteString("type", type);

    /// <summary>A number in a range.</summary>
    public void Number(string type, double least, double most)
    {
        json.WriteString("type", type);
        json.WriteNumber("minimum", least);
        json.WriteNumber("maximum", most);
    }

    /// <summary>A length: a number of mm in a range, or text with a unit.</summary>
    public void Length(double least, double most)
    {
        json.WriteStartArray("anyOf");
        json.WriteStartObject();
        Number("number", least, most);
        json.WriteEndObject();
        json.WriteStartObject();
        json.WriteString("type", "string");
        json.WriteString("pattern", NumberText.LengthPattern);
        json.WriteEndObject();
        json.WriteEndArray();
    }

    /// <summary>A line of text. Editors take an unquoted number or word as one, so those types are allowed too.</summary>
    public void Text(int shortest, int longest, string pattern)
    {
        ScalarTypes();
        json.WriteNumber("minLength", shortest);
        json.WriteNumber("maxLength", longest);
        json.WriteString("pattern", pattern);
    }

    /// <summary>A profile's name. Which ones there are depends on the user's files, so any name is allowed here.</summary>
    public void ProfileName(int longest, string what)
    {
        ScalarTypes();
        json.WriteNumber("minLength", 1);
        json.WriteNumber("maxLength", longest);
        json.WriteString("$comment", "the name of " + what);
    }

    /// <summary>One of a few words.</summary>
    public void Words(IReadOnlyList<string> words)
    {
        json.WriteStartArray("enum");
        foreach (string word in words)
        {
            json.WriteStringValue(word);
        }

        json.WriteEndArray();
    }

    /// <summary>A list of one kind.</summary>
    public void List(ISchemaSource item, int fewest, int most)
    {
        json.WriteString("type", "array");
        json.WriteStartObject("items");
        item.WriteSchema(this);
        json.WriteEndObject();
        json.WriteNumber("minItems", fewest);
        json.WriteNumber("maxItems", most);
    }

    /// <summary>A short list with a kind for each place.</summary>
    public void Tuple(IReadOnlyList<ISchemaSource> items, int fewest)
    {
        json.WriteString("type", "array");
        Array("prefixItems", items);
        json.WriteNumber("minItems", fewest);
        json.WriteNumber("maxItems", items.Count);
    }

    /// <summary>Any of several kinds.</summary>
    public void AnyOf(IReadOnlyList<ISchemaSource> options) => Array("anyOf", options);

    /// <summary>A mapping from names of the writer's own.</summary>
    public void Map(ISchemaSource item, int most)
    {
        json.WriteString("type", "object");
        json.WriteStartObject("additionalProperties");
        item.WriteSchema(this);
        json.WriteEndObject();
        json.WriteNumber("maxProperties", most);
    }

    /// <summary>A mapping with known keys.</summary>
    /// <param name="what">What it describes.</param>
    /// <param name="keys">Its keys.</param>
    /// <param name="standIn">A key that stands in for all that are required; null when there is none.</param>
    public void Mapping(string what, FormKeys keys, string? standIn = null)
    {
        json.WriteString("type", "object");
        json.WriteString("title", what);
        json.WriteStartObject("properties");
        foreach (FormKey key in keys.All)
        {
            json.WriteStartObject(key.Name);
            json.WriteString("description", key.Otherwise is null ? key.Help : $"{key.Help} Not given: {key.Otherwise}.");
            key.Schema.WriteSchema(this);
            json.WriteEndObject();
        }

        if (standIn is not null)
        {
            json.WriteStartObject(standIn);
            json.WriteString("type", "string");
            json.WriteEndObject();
        }

        json.WriteEndObject();
        json.WriteBoolean("additionalProperties", false);
        string[] required = [.. keys.All.Where(k => k.Required).Select(k => k.Name)];
        if (standIn is null)
        {
            Strings("required", required);
        }
        else
        {
            AnyRequired("anyOf", [required, [standIn]]);
        }

        Dependencies(keys);
        Groups(keys);
    }

    private void Dependencies(FormKeys keys)
    {
        if (keys.Dependencies.Count == 0)
        {
            return;
        }

        json.WriteStartObject("dependentRequired");
        foreach (IGrouping<string, string> needs in keys.Dependencies.GroupBy(d => d.Key, d => d.Needs))
        {
            Strings(needs.Key, [.. needs]);
        }

        json.WriteEndObject();
    }

    private void Groups(FormKeys keys)
    {
        if (keys.Groups.Count == 0)
        {
            return;
        }

        json.WriteStartArray("allOf");
        foreach (KeyGroup group in keys.Groups)
        {
            json.WriteStartObject();
            if (group.OneIsNeeded)
            {
                AnyRequired("oneOf", group.Keys.Select(k => new[] { k }));
            }
            else
            {
                json.WriteStartObject("not");
                AnyRequired("anyOf", Pairs(group.Keys));
                json.WriteEndObject();
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static IEnumerable<string[]> Pairs(string[] keys) =>
        from i in Enumerable.Range(0, keys.Length)
        from j in Enumerable.Range(i + 1, keys.Length - i - 1)
        select new[] { keys[i], keys[j] };

    private void AnyRequired(string keyword, IEnumerable<string[]> sets)
    {
        json.WriteStartArray(keyword);
        foreach (string[] set in sets)
        {
            json.WriteStartObject();
            Strings("required", set);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private void Array(string keyword, IReadOnlyList<ISchemaSource> options)
    {
        json.WriteStartArray(keyword);
        foreach (ISchemaSource option in options)
        {
            json.WriteStartObject();
            option.WriteSchema(this);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private void ScalarTypes() => Strings("type", ["string", "number", "boolean"]);

    private void Strings(string keyword, string[] words)
    {
        if (words.Length == 0)
        {
            return;
        }

        json.WriteStartArray(keyword);
        foreach (string word in words)
        {
            json.WriteStringValue(word);
        }

        json.WriteEndArray();
    }
}
