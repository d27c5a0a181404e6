namespace ShellForge.Geometry.Solids;

/// <summary>
/// Names the feature that made a face ("tub/boss/2"). A tag survives booleans, so a finding, a drawing or a light ray can say
/// what it met. Tag 0 is "no name".
/// </summary>
public readonly record struct FaceTag(int Id)
{
    /// <summary>No name.</summary>
    public static FaceTag None => default;
}
