namespace ShellForge.Formats.Svg;

/// <summary>Kinds of line of a technical drawing (ISO 128-2): wide for what is seen or cut, narrow for all else.</summary>
public enum Stroke
{
    /// <summary>No line.</summary>
    None,

    /// <summary>Visible edges and outlines of cuts: continuous, wide.</summary>
    Outline,

    /// <summary>Dimension, extension and leader lines: continuous, narrow.</summary>
    Thin,

    /// <summary>Hidden edges: dashed, narrow.</summary>
    Hidden,

    /// <summary>Axes and pitch circles: long dash dot, narrow.</summary>
    Centre,

    /// <summary>Bodies that are not part of the drawing, such as a board in its housing: long dash double dot, narrow.</summary>
    Phantom,

    /// <summary>Frame of the sheet and of its title: continuous, wide.</summary>
    Frame,
}

/// <summary>How an area is filled.</summary>
public enum Fill
{
    /// <summary>Not at all.</summary>
    None,

    /// <summary>White, to cover what lies behind.</summary>
    Blank,

    /// <summary>Cut plastic: hatched rising to the right.</summary>
    HatchRising,

    /// <summary>Cut plastic of a neighbouring part: hatched falling to the right.</summary>
    HatchFalling,

    /// <summary>Cut plastic of a third part: hatched rising, closer.</summary>
    HatchClose,

    /// <summary>A part that lets light through, cut: falling, closer.</summary>
    HatchCloseFalling,

    /// <summary>Plain light grey: board and components.</summary>
    Grey,

    /// <summary>Solid black: arrow heads.</summary>
    Solid,
}

/// <summary>Where text stands relative to its point.</summary>
public enum TextAnchor
{
    /// <summary>It begins there.</summary>
    Start,

    /// <summary>It is centred there.</summary>
    Middle,

    /// <summary>It ends there.</summary>
    End,
}
