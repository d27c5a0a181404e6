namespace ShellForge.Pipeline;

/// <summary>Stages of the pipeline, told as they begin.</summary>
public enum PipelineStage
{
    /// <summary>Every dimension is decided.</summary>
    Plan,

    /// <summary>The parts are computed.</summary>
    Parts,

    /// <summary>The rules run.</summary>
    Checks,
}
