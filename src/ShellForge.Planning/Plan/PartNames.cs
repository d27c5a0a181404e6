namespace ShellForge.Planning.Plan;

/// <summary>Names of the printed parts, also of their files, and of the board.</summary>
public static class PartNames
{
    /// <summary>The back shell that carries the board.</summary>
    public const string Tub = "tub";

    /// <summary>Walls between and round the LEDs.</summary>
    public const string Baffle = "baffle";

    /// <summary>The sheet that scatters the light, where it is a body of its own.</summary>
    public const string Diffuser = "diffuser";

    /// <summary>The front part.</summary>
    public const string Cover = "cover";

    /// <summary>The stand.</summary>
    public const string Stand = "stand";

    /// <summary>The populated board, which is not printed: pictures and measurements name it so.</summary>
    public const string Board = "board";
}
