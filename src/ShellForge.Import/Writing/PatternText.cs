using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Import.Files;
using ShellForge.Import.Patterns;

namespace ShellForge.Import.Writing;

/// <summary>Patterns as keys of a board file.</summary>
internal static class PatternText
{
    // As exact as patterns are found.
    private const int Decimals = 6;

    /// <summary>Where its places are: "circle: 60, count: 12, from: 90".</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="centre">The board's centre, which needs not be said.</param>
    public static string Places(PlacePattern pattern, Point2 centre) => pattern switch
    {
        CirclePattern circle => Circle(circle),
        GridPattern grid => Grid(grid, centre),
        _ => throw new ArgumentOutOfRangeException(nameof(pattern)),
    };

    /// <summary>How what is in it is turned: ", turns: false, rotation: 90"; nothing where it just turns with its place.</summary>
    /// <param name="follows">Whether it turns with its place.</param>
    /// <param name="degrees">Its turn beyond that.</param>
    public static string Turned(bool follows, double degrees) => (follows ? "" : ", turns: false") + Rotation(degrees);

    /// <summary>", rotation: 90"; nothing for none.</summary>
    public static string Rotation(double degrees)
    {
        string text = N(Turns.Reduced(degrees));
        return text == "0" ? "" : $", rotation: {text}";
    }

    private static string Circle(CirclePattern circle)
    {
        string step = circle.StepDegrees is { } degrees ? $", step: {N(degrees)}" : "";
        string way = circle.Clockwise ? ", direction: cw" : "";
        return $"circle: {N(circle.Diameter)}, count: {circle.Places}, from: {N(circle.FromDegrees)}{step}{way}{Skip(circle.Skip)}";
    }

    private static string Grid(GridPattern grid, Point2 centre)
    {
        string pitch = grid.Pitch.X == grid.Pitch.Y ? N(grid.Pitch.X) : $"[{N(grid.Pitch.X)}, {N(grid.Pitch.Y)}]";
        string at = grid.Middle == centre ? "" : $", at: [{N(grid.Middle.X)}, {N(grid.Middle.Y)}]";
        string turn = grid.TurnDegrees == 0 ? "" : $", turn: {N(grid.TurnDegrees)}";
        string counted = (grid.Order.First == default ? "" : $", first: {grid.Order.First.Word}")
            + (grid.Order.ByColumns ? ", along: columns" : "") + (grid.Order.Snake ? ", snake: true" : "");
        return $"grid: {{columns: {grid.Order.Columns}, rows: {grid.Order.Rows}, pitch: {pitch}{at}{turn}{counted}{Skip(grid.Skip)}}}";
    }

    private static string Skip(ImmutableArray<int> skip) => skip.IsEmpty ? "" : $", skip: [{string.Join(", ", skip)}]";

    private static string N(double number) => Numeral.Text(number, Decimals);
}
