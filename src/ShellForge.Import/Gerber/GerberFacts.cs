using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Drawing;

namespace ShellForge.Import.Gerber;

/// <summary>A flash: an aperture set down once. In a drill layer it is a hole.</summary>
internal readonly record struct GerberFlash(Point2 At, double Diameter, int Line);

/// <summary>What a Gerber drawing says, in mm.</summary>
internal sealed record GerberFacts(
    string File,
    string Unit,
    string FileFunction,
    bool HasProfileAperture,
    ImmutableArray<string> Titles,
    ImmutableArray<PenStroke> Strokes,
    int StrokeCount,
    ImmutableArray<GerberFlash> Flashes,
    int FlashCount,
    bool StepAndRepeat);
