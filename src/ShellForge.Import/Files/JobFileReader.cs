using System.Text.Json;

namespace ShellForge.Import.Files;

/// <summary>What a Gerber job file says that matters here.</summary>
internal sealed record JobFacts(string File, double? Thickness, double? SizeX, double? SizeY);

/// <summary>Reads a Gerber job file: JSON, lengths in mm.</summary>
internal static class JobFileReader
{
    /// <summary>Whether a text is such a file.</summary>
    public static bool LooksLike(SourceText source)
    {
        ReadOnlySpan<char> text = source.Text.AsSpan().TrimStart();
        return !text.IsEmpty && text[0] == '{'
            && (text.Contains("\"BoardThickness\"", StringComparison.Ordinal) || text.Contains("\"GeneralSpecs\"", StringComparison.Ordinal)
                || text.Contains("\"FilesAttributes\"", StringComparison.Ordinal));
    }

    public static JobFacts Read(SourceText source, EcadLog log)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(
                source.Text,
                new JsonDocumentOptions
                {
                    MaxDepth = EcadLimits.Depth,
                    AllowTrailingCommas = true,
                    CommentHandling = JsonCommentHandling.Skip
                });
            double? thickness = Find(document.RootElement, "BoardThickness") is { } t && Number(t) is { } value ? value : null;
            JsonElement? size = Find(document.RootElement, "Size");
            if (thickness is <= 0 or > 20)
            {
                log.Warn(source.File, 1, "job-thickness",
                    $"a board thickness of {Numeral.Text(thickness.Value)} mm is none; taken as unknown");
                thickness = null;
            }

            return new JobFacts(source.File, thickness, Side(size, "X"), Side(size, "Y"));
        }
        catch (JsonException e)
        {
            log.Error(source.File, (int)(e.LineNumber ?? 0) + 1, "job-json", "this job file is no valid JSON", "export it again");
            return new JobFacts(source.File, null, null, null);
        }
    }

    private static double? Side(JsonElement? size, string name) =>
        size is { ValueKind: JsonValueKind.Object } s && s.TryGetProperty(name, out JsonElement side) ? Number(side) : null;

    private static double? Number(JsonElement element) =>
        element.ValueKind == JsonValueKind.Number && element.TryGetDouble(out double value)
            && Math.Abs(value) <= EcadTolerances.LargestCoordinate ? value : null;

    // In a part of its own by one exporter, in the general part by others. The parser bounds the depth.
    private static JsonElement? Find(JsonElement element, string name)
    {
        if (element.ValueKind == JsonValueKind.Object)
        {
            if (element.TryGetProperty(name, out JsonElement found))
            {
                return found;
            }

            foreach (JsonProperty property in element.EnumerateObject())
            {
                if (property.Value.ValueKind == JsonValueKind.Object && Find(property.Value, name) is { } inner)
                {
                    return inner;
                }
            }
        }

        return null;
    }
}
