using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;
using ShellForge.Planning.Remembering;

namespace ShellForge.Planning.Plan;

/// <summary>A printed part without its marks.</summary>
/// <param name="Digest">Digest of what it is evaluated from.</param>
/// <param name="Outcome">Its mesh, evaluated when first asked for.</param>
public sealed record UnmarkedPart(string Digest, Lazy<SolidOutcome> Outcome);

/// <summary>A printed part as it was evaluated.</summary>
public sealed record MadePart
{
    /// <summary>Its entry in the plan.</summary>
    public required PartPlan Plan { get; init; }

    /// <summary>As written: turned for the bed, scaled for shrinkage where the plan does that.</summary>
    public required SolidOutcome InPrint { get; init; }

    /// <summary>Where what is worked out on its mesh is kept.</summary>
    public WorkMemory Memory { get; init; } = new();

    /// <summary>Name, also of its file.</summary>
    public string Name => Plan.Name;

    /// <summary>Where a place of the print lies in the assembled frame, in mm: the way back of <see cref="PartPlan.ToFile"/>.</summary>
    public Point3 ToAssembled(Point3 inPrint) => Plan.ToFile.Inverse().Apply(inPrint);

    /// <summary>Whether the evaluation gave a mesh.</summary>
    public bool IsSound => InPrint.Solid is not null;

    /// <summary>
    /// The printed mesh of a sound part where it sits in the housing, at the size it has in the hand: what is written is what is checked,
    /// to one lattice step.
    /// </summary>
    /// <exception cref="InvalidOperationException">The part is not sound.</exception>
    public Mesh AssembledMesh => Memory.OfMesh(
        PrintMesh, new AssembledKey(Plan.ToFile), () => PrintMesh.Mesh.Mapped(Plan.ToFile.Inverse()));

    /// <summary>The part without the marks inside; null where it has none.</summary>
    public UnmarkedPart? Unmarked { get; init; }

    /// <summary>Digest of <see cref="MeshInLight"/>, or of what it is evaluated from.</summary>
    public string DigestInLight => Unmarked?.Digest ?? PrintMesh.Mesh.Digest;

    /// <summary>
    /// What light falls on: <see cref="AssembledMesh"/> without the marks inside, so that a housing shines like the next one of another
    /// revision. They stand on the floor and behind the bezel, where none of its light is judged.
    /// </summary>
    public Mesh MeshInLight => Unmarked?.Outcome.Value.Solid is { } bare
        ? Memory.OfMesh(bare, new AssembledKey(Plan.ToFile), () => bare.Mesh.Mapped(Plan.ToFile.Inverse()))
        : AssembledMesh;

    /// <summary>The mesh that is printed, of a sound part.</summary>
    /// <exception cref="InvalidOperationException">The part is not sound.</exception>
    public SolidMesh PrintMesh => InPrint.Require();

    private sealed record AssembledKey(Transform3 ToFile);
}

/// <summary>Names of the printed parts, also of their files, and of the board.</summary>
public static class PartNames
{
    /// <summary>The back shell that carries the board.</summary>
    public const string Tub = "tub";

    /// <summary>The ring that holds the board's rim down.</summary>
    public const string Clamp = "clamp";

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

    /// <summary>A second board, which is not printed either.</summary>
    public const string SecondBoard = "second board";
}
