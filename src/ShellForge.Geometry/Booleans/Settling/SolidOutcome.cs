using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

namespace ShellForge.Geometry.Booleans.Settling;

/// <summary>What the evaluation of a solid gave: a mesh that bounds it, or a defect; never both, never neither.</summary>
public sealed record SolidOutcome
{
    /// <summary>The audited mesh; without triangles when the solid is empty. Null when there is a defect.</summary>
    public SolidMesh? Solid { get; init; }

    /// <summary>Why there is no mesh, and where. Null when there is one.</summary>
    public KernelDefect? Defect { get; init; }

    /// <summary>Places where the exact result touches itself at an edge or a vertex and was opened, in order of place.</summary>
    public ImmutableArray<ContactOpening> Openings { get; init; } = [];

    /// <summary>How often the rounded result was intersected again before no two triangles met wrongly: 0 on most solids.</summary>
    public int Rounds { get; init; }

    /// <summary>
    /// Distance, in lattice steps, within which vertices were taken for one before intersecting: 0 as a rule. More says that the
    /// evaluation settled only after nearly coincident places of different operands had been joined.
    /// </summary>
    public int MergeSteps { get; init; }

    /// <summary>The mesh.</summary>
    /// <exception cref="InvalidOperationException">The evaluation ended in a defect.</exception>
    public SolidMesh Require() => Solid ?? throw new InvalidOperationException(Defect?.ToString());
}

/// <summary>An evaluation that could not end in a clean mesh. The operands are what a corpus file needs to show it again.</summary>
/// <param name="Operation">The expression over the operands, "(0 + 1) - 2".</param>
/// <param name="Operands">The operands on the lattice, in the expression's order.</param>
/// <param name="Place">Where it happened, in mm.</param>
/// <param name="Reason">What was found there.</param>
public sealed record KernelDefect(string Operation, ImmutableArray<Mesh> Operands, Point3 Place, string Reason)
{
    /// <summary>One line for people.</summary>
    public override string ToString() =>
        string.Create(
            System.Globalization.CultureInfo.InvariantCulture,
            $"{Reason} at ({Place.X:0.####;-0.####;0}, {Place.Y:0.####;-0.####;0}, {Place.Z:0.####;-0.####;0}) mm in {Operation}");
}

/// <summary>What touched.</summary>
public enum ContactKind
{
    /// <summary>More than two faces met in an edge.</summary>
    Edge,

    /// <summary>More than one fan of faces met in a vertex.</summary>
    Vertex,
}

/// <summary>A place where the exact result touches itself; its faces were drawn back into their own solid there.</summary>
/// <param name="Place">The vertex, or the middle of the edge, in mm.</param>
/// <param name="Kind">What touched.</param>
/// <param name="Distance">How far a vertex was moved at most, in mm; never above 0.002.</param>
public sealed record ContactOpening(Point3 Place, ContactKind Kind, double Distance);
