using System.Collections.Immutable;
using ShellForge.Formats.Svg;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Output.Paper;

/// <summary>Something to print on paper at its true size.</summary>
/// <param name="File">Name of its file, without ending.</param>
/// <param name="Title">For people.</param>
/// <param name="Hints">What to do with it, a short line each.</param>
/// <param name="Extent">What is drawn lies in this box, mm, y up.</param>
/// <param name="Draw">Draws it: on what, and where on the sheet a place of the extent lies.</param>
internal sealed record Template(
    string File, string Title, ImmutableArray<string> Hints, Box2 Extent, Action<IDrawingSheet, Func<Point2, Point2>> Draw);
