using ShellForge.Board.Description;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Draft;

namespace ShellForge.Planning.Holding;

/// <summary>Where a board's weight acts, in plan.</summary>
internal static class BoardMass
{
    // Glass and epoxy with its copper, g/cm3. Source: laminate makers' data sheets, 1.8 to 1.9.
    private const double Laminate = 1.85;

    // Bodies of parts taken as blocks, g/cm3. Typical: moulded bodies 1.8 to 2.0, shells of connectors half empty.
    private const double Bodies = 1.5;

    // Densities times mm3 give milligrams.
    private const double PerGram = 1000;

    /// <summary>The centre of mass: laminate, parts and LEDs.</summary>
    public static Point2 Centre(CircuitBoard board)
    {
        double mass = 0;
        Point2 moment = Point2.Origin;
        void Add(double grams, Point2 at)
        {
            mass += grams;
            moment += grams * at;
        }

        foreach (IReadOnlyList<Point2> loop in board.Outline.Region.Loops)
        {
            for (int i = 0; i < loop.Count; i++)
            {
                (Point2 from, Point2 to) = (loop[i], loop[(i + 1) % loop.Count]);
                Add(Laminate * board.Thickness * Point2.Cross(from, to) / 2, 1.0 / 3 * (from + to));
            }
        }

        foreach (BoardPart part in board.Parts)
        {
            Add(part.Grams * PerGram ?? Bodies * part.Length * part.Width * (part.Height ?? PlanRules.UnknownHeight), part.At);
        }

        foreach (PixelCircle circle in board.PixelCircles)
        {
            foreach (Pixel pixel in circle.Pixels)
            {
                Add(Bodies * circle.Led.Length * circle.Led.Width * circle.Led.Height, pixel.At);
            }
        }

        return 1 / mass * moment;
    }
}
