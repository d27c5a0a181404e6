
namespace ShellForge.Import.Drawing;

/// <summary>One drawn line or arc with its place in the file.</summary>
/// <param name="Segment">The centre line of the stroke.</param>
/// <param name="Line">Line of the file, from 1.</param>
/// <param name="Width">Pen width in mm; nothing is ever added to the outline for it.</param>
/// <param name="Group">Strokes of one group may join; 0 is the common group. Filled contours and closed polylines have their own.</param>
internal readonly record struct PenStroke(EdgeSegment Segment, int Line, double Width = 0, int Group = 0);
