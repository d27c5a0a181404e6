using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Import.Drill;

/// <summary>Plating as far as a file tells.</summary>
internal enum Plating
{
    /// <summary>Not said.</summary>
    Unknown,

    /// <summary>Copper in the hole.</summary>
    Plated,

    /// <summary>Bare.</summary>
    Bare,
}

/// <summary>A coordinate or size as written: its digits, how many there are, and how many stand after the point, -1 without one.</summary>
internal readonly record struct RawNumber(long Digits, byte Count, sbyte Decimals, bool Negative)
{
    public bool HasPoint => Decimals >= 0;

    /// <summary>The value of a number written with a point; without one, of its digits as a whole number.</summary>
    public double Value => Shifted(Math.Max((sbyte)0, Decimals));

    /// <summary>The value with so many of the digits after the point; negative for zeros that were left out.</summary>
    public double Shifted(int decimals)
    {
        // One division or multiplication by an exact power keeps the nearest double.
        double power = 1;
        for (int i = Math.Abs(decimals); i > 0; i--)
        {
            power *= 10;
        }

        double value = decimals >= 0 ? Digits / power : Digits * power;
        return Negative ? -value : value;
    }
}

/// <summary>A tool: its diameter as written, with what the file says of its use.</summary>
internal sealed record DrillTool(int Number, RawNumber Diameter, double? DiameterMm, Plating Plating, string Use, int Line);

/// <summary>What a move does.</summary>
internal enum DrillAction : byte
{
    /// <summary>Goes somewhere with the tool up.</summary>
    Move,

    /// <summary>Drills a hole.</summary>
    Hit,

    /// <summary>Ends a slot begun at the point before, by G85.</summary>
    SlotEnd,

    /// <summary>Routes with the tool down in a straight line.</summary>
    Route,

    /// <summary>Routes clockwise.</summary>
    RouteClockwise,

    /// <summary>Routes counter-clockwise.</summary>
    RouteCounterClockwise,

    /// <summary>Sets the zero point.</summary>
    SetZero,
}

/// <summary>One step of the program, numbers still as written.</summary>
internal readonly record struct DrillStep(
    DrillAction Action, RawNumber X, RawNumber Y, bool HasX, bool HasY, RawNumber ArcI, RawNumber ArcJ, RawNumber ArcRadius,
    bool Incremental, int Tool, int Line);

/// <summary>Which zeros are written in full.</summary>
internal enum DrillZeros
{
    /// <summary>Not said.</summary>
    Unknown,

    /// <summary>LZ: leading zeros are there, so digits count from the left.</summary>
    LeadingKept,

    /// <summary>TZ: trailing zeros are there, so digits count from the right.</summary>
    TrailingKept,
}

/// <summary>What a file says about its numbers; null and Unknown where it says nothing.</summary>
internal sealed record DrillStatedFormat(double? Unit, DrillZeros Zeros, int? IntegerDigits, int? DecimalDigits, string From);

/// <summary>A drill file before its numbers are read.</summary>
internal sealed record DrillProgram(
    string File,
    DrillStatedFormat Stated,
    Plating FilePlating,
    ImmutableArray<DrillTool> Tools,
    ImmutableArray<DrillStep> Steps,
    bool AllPoints,
    bool HasRepeats);

/// <summary>A hole in mm.</summary>
internal readonly record struct DrilledHole(Point2 At, double Diameter, Plating Plating, string Use, int Line);

/// <summary>A slot in mm: the path of the tool's axis and the tool's diameter.</summary>
internal sealed record DrilledSlot(ImmutableArray<Point2> Path, double Width, Plating Plating, int Line)
{
    /// <summary>Distance in mm between the two farthest points of the path.</summary>
    public double Length
    {
        get
        {
            double longest = 0;
            foreach (Point2 p in Path)
            {
                foreach (Point2 q in Path)
                {
                    longest = Math.Max(longest, Point2.Distance(p, q));
                }
            }

            return longest;
        }
    }
}

/// <summary>A drill file read in one way.</summary>
internal sealed record DrillFacts(string File, string Unit, string Reading, ImmutableArray<DrilledHole> Holes,
    ImmutableArray<DrilledSlot> Slots);
