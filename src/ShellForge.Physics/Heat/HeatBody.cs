namespace ShellForge.Physics.Heat;

/// <summary>A body of a housing whose temperature is told.</summary>
public enum HeatBody
{
    /// <summary>The LEDs, all as one.</summary>
    Leds,

    /// <summary>The part that gives off most.</summary>
    Controller,

    /// <summary>The board.</summary>
    Board,

    /// <summary>The air between board, floor, front and walls.</summary>
    InnerAir,

    /// <summary>Inner face of the floor.</summary>
    FloorInside,

    /// <summary>Outer face of the floor.</summary>
    FloorOutside,

    /// <summary>Inner face of the outer wall.</summary>
    SideInside,

    /// <summary>Outer face of the outer wall.</summary>
    SideOutside,

    /// <summary>Inner face of bezel and diffuser.</summary>
    FrontInside,

    /// <summary>Outer face of bezel and diffuser.</summary>
    FrontOutside,

    /// <summary>Face of an open bore's wall that looks to the board.</summary>
    BoreInside,

    /// <summary>Face of an open bore's wall that looks into the bore.</summary>
    BoreOutside,
}

/// <summary>What is known of a body by its kind.</summary>
public static class HeatBodies
{
    /// <summary>What people call it.</summary>
    public static string InWords(this HeatBody body) => body switch
    {
        HeatBody.Leds => "LEDs",
        HeatBody.Controller => "controller",
        HeatBody.Board => "board",
        HeatBody.InnerAir => "air inside",
        HeatBody.FloorInside => "floor, inside",
        HeatBody.FloorOutside => "floor, outside",
        HeatBody.SideInside => "wall, inside",
        HeatBody.SideOutside => "wall, outside",
        HeatBody.FrontInside => "front, inside",
        HeatBody.FrontOutside => "front, outside",
        HeatBody.BoreInside => "bore's wall, inside",
        _ => "bore's wall, outside",
    };

    /// <summary>Whether plastic is as warm as it: inner faces of walls, and the board, on which posts and baffle lie.</summary>
    public static bool TouchesPlastic(this HeatBody body) =>
        body is HeatBody.Board or HeatBody.FloorInside or HeatBody.SideInside or HeatBody.FrontInside or HeatBody.BoreInside;
}
