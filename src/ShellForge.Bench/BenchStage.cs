namespace ShellForge.Bench;

/// <summary>What is being done for an answer, told as it begins.</summary>
public enum BenchStage
{
    /// <summary>Every dimension is decided.</summary>
    Plan,

    /// <summary>The parts are computed.</summary>
    Parts,

    /// <summary>They are packed for the view in space.</summary>
    Show,

    /// <summary>The rules run, light and heat with them.</summary>
    Checks,

    /// <summary>The findings, drawings and pictures of the page.</summary>
    Page,

    /// <summary>The files.</summary>
    Files,
}
