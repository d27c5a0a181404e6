using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using ShellForge.Board.Diagnostics;
using ShellForge.Board.Json;
using ShellForge.Board.Profiles;
using ShellForge.Geometry.Numerics;
using ShellForge.Import;
using ShellForge.Import.Files;
using ShellForge.Import.Writing;
using ShellForge.Output.Page;

namespace ShellForge.Bench.Documents;

/// <summary>Hand-over files that were dropped on the page: read into the text of a board file, and nothing written.</summary>
/// <param name="Files">The files.</param>
/// <param name="Unit">Millimetres of a drawing's unit where it names none; null: as the files say.</param>
/// <param name="Shift">Added to the placement's coordinates, x and y, mm; null: as the files say.</param>
internal sealed record HandedOver(ImmutableArray<HandedOverFile> Files, double? Unit, ImmutableArray<double>? Shift)
{
    /// <summary>What may be sent at most: all files as text of base 64, and their names.</summary>
    public const int LongestBody = (EcadLimits.AllBytes / 3 * 4) + (1 << 20);

    private const int LongestName = 200;
    private const double LargestLength = 10_000;

    /// <summary>Reads what the page sent.</summary>
    /// <exception cref="WrongRequestException">It is nothing that the page sends.</exception>
    public static HandedOver Of(byte[] body)
    {
        try
        {
            HandedOver? sent = JsonSerializer.Deserialize(body, HandedOverContext.Default.HandedOver);
            if (sent is { Files.IsDefault: false } && sent.Files.All(file => file is { Name.Length: > 0, Content: not null })
                && sent.Unit is null or (> 0 and < LargestLength)
                && (sent.Shift is not { } shift || (shift.Length == 2 && shift.All(each => Math.Abs(each) < LargestLength))))
            {
                return sent;
            }
        }
        catch (JsonException)
        {
            // Told like all else that is not so.
        }

        throw new WrongRequestException("not a list of files");
    }

    /// <summary>The board file that they make.</summary>
    /// <param name="name">What the housing is called.</param>
    /// <param name="profiles">The profiles.</param>
    /// <param name="cancel">Stops it.</param>
    /// <returns>The import as it is told to the page; or what is wrong with the files.</returns>
    public (ImportedDocument? Import, ImmutableArray<PageMistake> Mistakes) Read(
        string name, ProfileLibrary profiles, CancellationToken cancel)
    {
        (IReadOnlyList<EcadFile> files, IReadOnlyList<Diagnostic> loading) = EcadFileLoader.Within(
            [.. Files.Select(file => new EcadFile(NameOf(file), file.Content))]);
        ImportResult result = EcadImport.Run(files, new ImportOptions
        {
            Name = name,
            PartsShift = Shift is { } by ? new Point2(by[0], by[1]) : null,
            DrawingUnit = Unit,
            Profiles = profiles,
        }, cancel);
        ImmutableArray<Diagnostic> told = files.Count == 0 ? [.. loading] : [.. loading, .. result.Diagnostics];
        return told.Any(each => each.IsError)
            ? (null, [.. told.Where(each => each.IsError).Select(each => new PageMistake(each.ToString(), ""))])
            : (new ImportedDocument(
                BoardFileWriter.Text(result, besideSchema: false), BoardPicture.Svg(result),
                [.. told.Select(each => each.ToString())]), []);
    }

    private static string NameOf(HandedOverFile file)
    {
        string bare = Path.GetFileName(file.Name.Replace('\\', '/'));
        return bare.Length > LongestName ? bare[..LongestName] : bare;
    }
}

/// <summary>A file that was dropped.</summary>
internal sealed record HandedOverFile(string Name, byte[] Content);

/// <summary>What the page is told of an import.</summary>
/// <param name="Text">The board file.</param>
/// <param name="Picture">The board from both sides, SVG; each part's body stands in a group with its designator in <c>data-ref</c>.</param>
/// <param name="Told">Remarks, in the order in which they were found.</param>
internal sealed record ImportedDocument(string Text, string Picture, ImmutableArray<string> Told)
{
    public byte[] Bytes() => JsonText.Bytes(this, HandedOverContext.Default.ImportedDocument);
}

/// <summary>How both are written.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(HandedOver))]
[JsonSerializable(typeof(ImportedDocument))]
internal sealed partial class HandedOverContext : JsonSerializerContext;
