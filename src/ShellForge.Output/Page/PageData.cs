using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace ShellForge.Output.Page;

/// <summary>What the page's script reads.</summary>
internal sealed record PageData(bool Live, ImmutableArray<PageDataBody> Bodies, ImmutableArray<PageDataFinding> Findings,
    PageDataLight? Light)
{
    public static PageData Of(PageContent content)
    {
        var bodies = new PageDataBody[content.Bodies.Length];
        Parallel.For(0, bodies.Length, i => bodies[i] = PageDataBody.Of(content.Bodies[i], i));
        return new PageData(
            content.Live is not null, [.. bodies], [.. content.Findings.Select(PageDataFinding.Of)],
            content.Light is { } light ? PageDataLight.Of(light) : null);
    }
}

/// <summary>A body of the view.</summary>
internal sealed record PageDataBody(
    string Name, string BelongsTo, string Colour, string Edge, string CutColour, double Opacity, double Level, bool Translucent,
    PackedMesh Mesh)
{
    public static PageDataBody Of(PageBody body, int index) => new(
        body.Name, body.BelongsTo, body.Colour, PageColours.Edge(body.Colour), PageColours.Cut(body.Colour, index), body.Opacity,
        body.Level,
        body.Translucent, PackedMesh.Of(body.Mesh));
}

/// <summary>A finding at its place.</summary>
internal sealed record PageDataFinding(
    int Number, string Severity, string Message,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] ImmutableArray<double>? At)
{
    private const int Decimals = 3;

    public static PageDataFinding Of(PageFinding finding) => new(
        finding.Number, finding.Severity, finding.Message,
        finding.At is { } at
            ? [Math.Round(at.X, Decimals), Math.Round(at.Y, Decimals), Math.Round(at.Z, Decimals)]
            : null);
}

/// <summary>The picture of the light and where it lies.</summary>
internal sealed record PageDataLight(string Image, ImmutableArray<double> Extent, bool Around)
{
    public static PageDataLight Of(PageLight light) => new(
        "data:image/png;base64," + Convert.ToBase64String(light.Png),
        [light.Extent.Min.X, light.Extent.Min.Y, light.Extent.Max.X, light.Extent.Max.Y], light.Around);
}

/// <summary>How the data are written.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(PageData))]
internal sealed partial class PageDataContext : JsonSerializerContext;
