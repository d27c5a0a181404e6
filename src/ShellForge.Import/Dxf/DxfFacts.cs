using System.Collections.Immutable;
using ShellForge.Import.Drawing;

namespace ShellForge.Import.Dxf;

/// <summary>A drawn stroke with its layer.</summary>
internal readonly record struct DxfStroke(PenStroke Stroke, string Layer);

/// <summary>What a DXF drawing holds, in drawing units.</summary>
/// <param name="File">Its name.</param>
/// <param name="Version">The version word of the header; empty without one.</param>
/// <param name="Unit">Millimetres per drawing unit; null when the header doesn't say.</param>
/// <param name="MetricHint">The old measurement flag: metric, imperial, or not there.</param>
/// <param name="Strokes">Everything drawn.</param>
/// <param name="Ignored">Entities that are no edges, by kind, with how many.</param>
internal sealed record DxfFacts(
    string File, string Version, double? Unit, bool? MetricHint, ImmutableArray<DxfStroke> Strokes,
    ImmutableSortedDictionary<string, int> Ignored);
