using System.Collections.Immutable;

namespace ShellForge.Board.Description;

/// <summary>A corner of a grid.</summary>
/// <param name="Right">Whether it is on the right.</param>
/// <param name="Bottom">Whether it is at the bottom.</param>
public readonly record struct GridCorner(bool Right, bool Bottom)
{
    /// <summary>All of them; the first is meant where none is said.</summary>
    public static ImmutableArray<GridCorner> All { get; } = [new(false, false), new(true, false), new(false, true), new(true, true)];

    /// <summary>As the board file says it: "top-left".</summary>
    public string Word => (Bottom ? "bottom" : "top") + (Right ? "-right" : "-left");
}

/// <summary>The way in which the places of a grid are counted.</summary>
/// <param name="Columns">How many columns.</param>
/// <param name="Rows">How many rows.</param>
/// <param name="First">The corner that is counted first.</param>
/// <param name="ByColumns">Whether columns are counted through first.</param>
/// <param name="Snake">Whether every second line is counted backwards.</param>
public readonly record struct GridOrder(int Columns, int Rows, GridCorner First, bool ByColumns, bool Snake)
{
    /// <summary>All places, empty ones among them.</summary>
    public int Count => Columns * Rows;

    /// <summary>Column from the left and row from the top of a place.</summary>
    /// <param name="index">The place, from 0 in the order of counting.</param>
    public (int Column, int Row) Cell(int index)
    {
        int length = ByColumns ? Rows : Columns;
        (int line, int along) = Math.DivRem(index, length);
        along = Snake && line % 2 == 1 ? length - 1 - along : along;
        (int column, int row) = ByColumns ? (line, along) : (along, line);
        return (First.Right ? Columns - 1 - column : column, First.Bottom ? Rows - 1 - row : row);
    }
}
