using System.Collections.Immutable;
using System.ComponentModel;
using System.Text.Json.Serialization;
using ShellForge.Board.Diagnostics;
using ShellForge.Board.Json;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Drawing;
using ShellForge.Import.Files;
using ShellForge.Import.Merging;

namespace ShellForge.Import.Writing;

/// <summary>The import as it is written. Members stand in the order of the file.</summary>
internal sealed record ImportDocument(
    string Format,
    [property: Description("What each file was taken for and what was found in it.")] ImmutableArray<FileDocument> Files,
    [property: Description("The board's edge; null where none was found.")] OutlineDocument? Outline,
    ImmutableArray<HoleDocument> Holes,
    ImmutableArray<SlotDocument> Slots,
    PartsDocument Parts,
    [property: JsonConverter(typeof(Millionths)), Description("Thickness of the board; null where no file says it.")] double? ThicknessMm,
    [property: Description("Remarks in the order in which they were found.")] ImmutableArray<Diagnostic> Diagnostics)
{
    public static ImportDocument Of(ImportedBoard board, ImmutableArray<Diagnostic> diagnostics) => new(
        ImportJson.Format,
        [.. board.Files.Select(FileDocument.Of)],
        board.Outline is { } outline ? OutlineDocument.Of(outline) : null,
        [.. board.Holes.Select(hole => new HoleDocument(hole.At, hole.Diameter, hole.Plated, hole.Kind))],
        [.. board.Slots.Select(slot => new SlotDocument(slot.Path, slot.Width, slot.Length, slot.Plated))],
        PartsDocument.Of(board.Parts),
        board.Thickness,
        diagnostics);
}

/// <summary>A file that was read.</summary>
internal sealed record FileDocument(
    string Name,
    [property: JsonConverter(typeof(KebabWords<FileKind>))] FileKind Kind,
    [property: Description("Unit of its lengths.")] string Units,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? Holes,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? Slots,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? Parts,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    [property: Description("What its role in the import is: taken, or why not.")]
    string? Role,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? ClosedLoops,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    [property: Description("Loops drawn a second time.")]
    int? RepeatedLoops,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? OpenChains,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    [property: Description("The first closed loops of a drawing.")]
    ImmutableArray<LoopDocument>? Loops)
{
    private const int MostLoops = 40;

    public static FileDocument Of(ImportedFile file) => new(
        file.Name, file.Kind, file.Unit, file.Holes, file.Slots, file.Parts,
        file.Loops is null ? null : file.Role,
        file.Loops is null ? null : file.Loops.Count + file.RepeatedLoops,
        file.Loops is null ? null : file.RepeatedLoops,
        file.Loops is null ? null : file.OpenChains,
        file.Loops is null ? null : [.. file.Loops.Take(MostLoops).Select(loop => LoopDocument.Of(loop, null))]);
}

/// <summary>A closed loop.</summary>
internal sealed record LoopDocument(
    Point2 SizeMm,
    [property: Description("Left, bottom, right, top.")] Box2 BboxMm,
    [property: Description("Centre of the circle, or middle of the box.")] Point2 At,
    [property: Description("Null for a loop that is no circle.")] double? CircleDiameterMm,
    [property: JsonConverter(typeof(Thousandths))] double AreaMm2,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    [property: Description("Of a cutout: whether a drill file has the same hole.")]
    bool? AlsoDrilled)
{
    public static LoopDocument Of(OutlineLoop loop, bool? alsoDrilled) => new(
        loop.Bounds.Size, loop.Bounds, loop.Circle?.Centre ?? loop.Bounds.Centre, loop.Circle?.Diameter, loop.Area, alsoDrilled);
}

/// <summary>The board's edge.</summary>
internal sealed record OutlineDocument(
    string File,
    [property: Description("What it was taken from.")] string From,
    Point2 SizeMm,
    [property: Description("Left, bottom, right, top.")] Box2 BboxMm,
    [property: Description("Null for an edge that is no circle.")] double? CircleDiameterMm,
    Point2 CentreMm,
    [property: Description("Null for a board without a bore.")] double? BoreMm,
    [property: JsonConverter(typeof(Thousandths))] double AreaMm2,
    int Segments,
    [property: JsonConverter(typeof(Millionths)), Description("The largest gap that was closed.")] double LargestGapMm,
    ImmutableArray<LoopDocument> Cutouts)
{
    public static OutlineDocument Of(ImportedOutline outline) => new(
        outline.File, outline.From, outline.Outer.Bounds.Size, outline.Outer.Bounds, outline.Outer.Circle?.Diameter, outline.Centre,
        outline.Bore?.Loop.Circle?.Diameter, outline.Outer.Area, outline.Outer.Segments.Count, outline.LargestGap,
        [.. outline.Cutouts.Select(cutout => LoopDocument.Of(cutout.Loop, cutout.AlsoDrilled))]);
}

/// <summary>A hole.</summary>
internal sealed record HoleDocument(
    Point2 At,
    double DiameterMm,
    [property: Description("Null where no file says it.")] bool? Plated,
    [property: JsonConverter(typeof(KebabWords<HoleKind>))] HoleKind Kind);

/// <summary>A slot.</summary>
internal sealed record SlotDocument(
    [property: Description("Points of its middle line.")] ImmutableArray<Point2> Path,
    double WidthMm,
    double LengthMm,
    [property: Description("Null where no file says it.")] bool? Plated);

/// <summary>The placed parts.</summary>
internal sealed record PartsDocument(
    [property: Description("Rows placed on the top side.")] int Top,
    [property: Description("Rows placed on the bottom side.")] int Bottom,
    [property: Description("Rows that are no parts.")] ImmutableArray<SkippedDocument> Skipped,
    ImmutableArray<RowDocument> Rows)
{
    public static PartsDocument Of(ImmutableArray<ImportedPart> parts) => new(
        parts.Count(part => part.Placed && !part.Bottom),
        parts.Count(part => part.Placed && part.Bottom),
        [.. parts.Where(part => part.Skip is not null)
            .Select(part => new SkippedDocument(part.Reference, RowDocument.SideOf(part), part.Skip!))],
        [.. parts.Where(part => part.Placed).Select(RowDocument.Of)]);
}

/// <summary>A row that is no part.</summary>
internal sealed record SkippedDocument(string Ref, [property: JsonConverter(typeof(KebabWords<BoardFace>))] BoardFace Side, string Why);

/// <summary>The side of the board.</summary>
internal enum BoardFace
{
    /// <summary>The side of the LEDs.</summary>
    Top,

    /// <summary>The back.</summary>
    Bottom,
}

/// <summary>A placed part.</summary>
internal sealed record RowDocument(
    string Ref,
    string Package,
    [property: Description("As its file has it.")] Point2 At,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    [property: Description("In board coordinates, where that is another place.")]
    Point2? BoardAt,
    [property: Description("As its file has it.")] double RotationDeg,
    [property: JsonConverter(typeof(KebabWords<BoardFace>))] BoardFace Side,
    [property: Description("Top of the body above its board face; null where no file says it.")] double? HeightMm,
    [property: JsonConverter(typeof(KebabWords<HeightSource>))] HeightSource HeightFrom,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    [property: Description("The library's height where another one is taken.")]
    double? LibraryHeightMm)
{
    public static BoardFace SideOf(ImportedPart part) => part.Bottom ? BoardFace.Bottom : BoardFace.Top;

    public static RowDocument Of(ImportedPart part) => new(
        part.Reference, part.Package, part.FileAt, part.At == part.FileAt ? null : part.At, part.FileRotation, SideOf(part), part.Height,
        part.HeightFrom, part.HeightFrom == HeightSource.Library ? null : part.LibraryHeight);
}

/// <summary>How the import is written: lengths to a tenth of a micrometre where nothing else is said.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    GenerationMode = JsonSourceGenerationMode.Metadata,
    Converters = [typeof(TenThousandths), typeof(PointPair), typeof(BoxCorners)])]
[JsonSerializable(typeof(ImportDocument))]
internal sealed partial class ImportContext : JsonSerializerContext;
