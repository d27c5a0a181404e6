using System.Collections.Immutable;
using ShellForge.Formats.Soup;
using ShellForge.Geometry.Auditing;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Output.Inspection;

/// <summary>What can be said about a body of a mesh file, wherever it came from.</summary>
public sealed record BodyInspection
{
    /// <summary>Its name in the file; empty when it has none.</summary>
    public required string Name { get; init; }

    /// <summary>
    /// The exact audit, in the body's own coordinates: no turn or shift opens or crosses anything, but rounding after it can.
    /// </summary>
    public required AuditReport Audit { get; init; }

    /// <summary>Extent where the file puts it, mm.</summary>
    public required Point3 Size { get; init; }

    /// <summary>Surface, mm2.</summary>
    public required double Area { get; init; }

    /// <summary>Volume, mm3; null when the mesh bounds none.</summary>
    public required double? Volume { get; init; }

    /// <summary>
    /// Surface that leans outward by more than the limit and does not lie on the bed, mm2: what a printer would have to support or
    /// bridge in the orientation of the file.
    /// </summary>
    public required double OverhangArea { get; init; }

    /// <summary>Whether it bounds a solid.</summary>
    public bool IsSolid => Audit.IsClean && Volume > 0;

    /// <summary>Looks at a body.</summary>
    /// <param name="body">The body.</param>
    /// <param name="overhangLimit">Largest lean from the upright that prints without support.</param>
    /// <param name="cancel">Stops the audit.</param>
    public static BodyInspection Of(SoupBody body, Angle overhangLimit, CancellationToken cancel = default) =>
        Of(body, overhangLimit, MeshAudit.Run(body.Triangles, cancel));

    /// <summary>Looks at a body that has been audited.</summary>
    /// <param name="body">The body.</param>
    /// <param name="overhangLimit">Largest lean from the upright that prints without support.</param>
    /// <param name="audit">What the audit says of its triangles.</param>
    public static BodyInspection Of(SoupBody body, Angle overhangLimit, AuditReport audit)
    {
        var sizes = SoupSizes.Of(body, overhangLimit);
        return new BodyInspection
        {
            Name = body.Name,
            Audit = audit,
            Size = sizes.Bounds.Size,
            Area = sizes.Area,
            Volume = audit.IsClean ? sizes.Volume : null,
            OverhangArea = sizes.OverhangArea,
        };
    }
}

/// <summary>What can be said about a mesh file.</summary>
/// <param name="File">Its name as the user gave it.</param>
/// <param name="Kind">What it was taken for.</param>
/// <param name="Faults">What is wrong with the file as a file.</param>
/// <param name="Bodies">Its bodies.</param>
public sealed record FileInspection(
    string File, string Kind, ImmutableArray<FileFault> Faults, ImmutableArray<BodyInspection> Bodies)
{
    /// <summary>Looks at all bodies of a file; one that is placed several times is audited once.</summary>
    /// <param name="file">Its name as the user gave it.</param>
    /// <param name="soup">What was read from it.</param>
    /// <param name="overhangLimit">Largest lean from the upright that prints without support.</param>
    /// <param name="cancel">Stops the audits.</param>
    public static FileInspection Of(string file, SoupFile soup, Angle overhangLimit, CancellationToken cancel = default)
    {
        var audits = new Dictionary<LooseTriangles, AuditReport>();
        AuditReport Audit(LooseTriangles triangles) =>
            audits.TryGetValue(triangles, out AuditReport? known) ? known : audits[triangles] = MeshAudit.Run(triangles, cancel);
        return new FileInspection(
            file, soup.Kind, soup.Faults, [.. soup.Bodies.Select(body => BodyInspection.Of(body, overhangLimit, Audit(body.Triangles)))]);
    }

    /// <summary>Whether the file is whole and every body bounds a solid.</summary>
    public bool IsSound => Faults.IsEmpty && Bodies.All(body => body.IsSolid);
}
