using System.Collections.Immutable;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Geometry.Solids;

/// <summary>
/// A solid as an expression that nobody has computed yet: sources, maps, tags and booleans. A part's whole tree is evaluated,
/// rounded to the lattice and audited once, so no rounding cascades from step to step.
/// </summary>
public abstract record Solid
{
    private protected Solid()
    {
    }

    /// <summary>The solid without a point.</summary>
    public static Solid Empty { get; } = new UnionSolid([]);

    /// <summary>All points that lie in any of the operands.</summary>
    public static Solid Union(params IEnumerable<Solid> operands) => new UnionSolid([.. operands]);

    /// <summary>All points that lie in every operand. No operand gives the empty solid.</summary>
    public static Solid Intersection(params IEnumerable<Solid> operands) => new IntersectionSolid([.. operands]);

    /// <summary>This solid less the cutters.</summary>
    public Solid Less(params IEnumerable<Solid> cutters) => new DifferenceSolid(this, [.. cutters]);

    /// <summary>This solid and the others.</summary>
    public Solid And(params IEnumerable<Solid> others) => new UnionSolid([this, .. others]);

    /// <summary>This solid mapped; chains compose before anything is rounded. Mirrors keep their faces outward.</summary>
    public Solid Moved(Transform3 map) => new MovedSolid(this, map);

    /// <summary>This solid with every face that has no tag yet given one.</summary>
    public Solid Tagged(FaceTag tag) => new TaggedSolid(this, tag);
}

/// <summary>A closed triangle mesh in double precision, before maps and lattice.</summary>
/// <param name="Vertices">Corners in mm.</param>
/// <param name="Triangles">Vertex numbers, three a triangle, counter-clockwise seen from outside.</param>
/// <param name="Sheets">
/// For each triangle the number of the planar face it belongs to: triangles of one sheet were made in one plane, and stay
/// together in it whatever rounding does to single corners. Empty: unknown.
/// </param>
public sealed record SourceSolid(
    ImmutableArray<Point3> Vertices, ImmutableArray<int> Triangles, ImmutableArray<int> Sheets) : Solid;

/// <summary>A solid that was evaluated before.</summary>
public sealed record EvaluatedSolid(SolidMesh Result) : Solid;

/// <summary>A solid under a map.</summary>
public sealed record MovedSolid(Solid Operand, Transform3 Map) : Solid;

/// <summary>A solid whose untagged faces take a tag.</summary>
public sealed record TaggedSolid(Solid Operand, FaceTag Tag) : Solid;

/// <summary>The union of any number of solids.</summary>
public sealed record UnionSolid(ImmutableArray<Solid> Operands) : Solid;

/// <summary>The intersection of any number of solids.</summary>
public sealed record IntersectionSolid(ImmutableArray<Solid> Operands) : Solid;

/// <summary>A solid less any number of cutters.</summary>
public sealed record DifferenceSolid(Solid Body, ImmutableArray<Solid> Cutters) : Solid;
