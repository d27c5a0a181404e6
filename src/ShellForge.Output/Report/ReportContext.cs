using System.Text.Json.Serialization;
using ShellForge.Board.Json;

namespace ShellForge.Output.Report;

/// <summary>How reports are written: names in lower case with underscores, numbers to a thousandth where nothing else is said.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    GenerationMode = JsonSourceGenerationMode.Metadata,
    Converters = [typeof(Thousandths), typeof(MicrometrePoints)])]
[JsonSerializable(typeof(ReportDocument))]
[JsonSerializable(typeof(CheckDocument))]
[JsonSerializable(typeof(MakeDocument))]
internal sealed partial class ReportContext : JsonSerializerContext;

/// <summary>How inspections are written: lengths of foreign files to a nanometre.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    GenerationMode = JsonSourceGenerationMode.Metadata,
    Converters = [typeof(Thousandths), typeof(NanometrePoints)])]
[JsonSerializable(typeof(InspectionDocument))]
internal sealed partial class InspectionContext : JsonSerializerContext;
