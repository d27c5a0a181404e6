namespace ShellForge.Geometry.Planar;

/// <summary>On which side of its circle a polygon lies.</summary>
public enum RingSide
{
    /// <summary>Inscribed: corners on the circle, nothing outside it. For pegs, bosses and discs, which must go into something.</summary>
    Inside,

    /// <summary>Circumscribed: sides touch the circle, nothing inside it is lost. For holes that something must pass.</summary>
    Outside,
}
