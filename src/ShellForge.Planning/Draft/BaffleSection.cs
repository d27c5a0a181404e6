using ShellForge.Board.Profiles;

namespace ShellForge.Planning.Draft;

/// <summary>Section of the baffle's walls and of the seat in the cover that centres it, decided before window and diffuser.</summary>
/// <param name="Wall">Wall thickness, mm: whole lines.</param>
/// <param name="SeatGap">Gap per side between its outer rim and what centres it, mm.</param>
/// <param name="TopGap">Gap between its tops and diffuser or bezel, mm: more would leak from cell to cell.</param>
/// <param name="PressDown">How much of the crush ribs the cover flattens, mm.</param>
internal sealed record BaffleSection(double Wall, double SeatGap, double TopGap, double PressDown)
{
    // Two lines are opaque in black and as thin as a wall between bright fields should be.
    private const int Lines = 2;

    /// <summary>The section on a printer.</summary>
    public static BaffleSection Of(PrinterProfile printer)
    {
        PrintBasis basis = PrintBasis.Of(printer);
        return new(basis.Wall(Lines), printer.InlayFit, TopGap: Math.Max(0.3, basis.Layer), PressDown: 0.2);
    }
}
