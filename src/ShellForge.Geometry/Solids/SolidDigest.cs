using System.Collections.Immutable;
using System.Runtime.InteropServices;
using System.Security.Cryptography;

namespace ShellForge.Geometry.Solids;

/// <summary>
/// What a tree is known by: everything in it that an evaluation looks at, to the last bit. Trees of one digest have one result; trees that
/// are written otherwise have another digest, though they may bound the same solid.
/// </summary>
public static class SolidDigest
{
    /// <summary>SHA-256 over a tree, 64 hexadecimal digits.</summary>
    public static string Of(Solid solid)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Append(hash, solid);
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    /// <summary>SHA-256 over a mesh.</summary>
    internal static string Of(Mesh mesh)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Append(hash, 12, mesh.Vertices);
        Append(hash, 13, mesh.Triangles);
        Append(hash, 14, mesh.Tags);
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    // Every node with its kind and every list with its length, so that no two trees run into the same bytes.
    private static void Append(IncrementalHash hash, Solid solid)
    {
        switch (solid)
        {
            case SourceSolid source:
                Append(hash, 1, source.Vertices);
                Append(hash, 2, source.Triangles);
                Append(hash, 3, source.Sheets);
                break;
            case EvaluatedSolid evaluated:
                Append(hash, 4, evaluated.Result.Mesh.Vertices);
                Append(hash, 5, evaluated.Result.Mesh.Triangles);
                Append(hash, 6, evaluated.Result.Mesh.Tags);
                break;
            case MovedSolid moved:
                Append(hash, 7, [moved.Map]);
                Append(hash, moved.Operand);
                break;
            case TaggedSolid tagged:
                Append(hash, 8, [tagged.Tag]);
                Append(hash, tagged.Operand);
                break;
            case UnionSolid union:
                AppendAll(hash, 9, union.Operands);
                break;
            case IntersectionSolid common:
                AppendAll(hash, 10, common.Operands);
                break;
            case DifferenceSolid cut:
                AppendAll(hash, 11, [cut.Body, .. cut.Cutters]);
                break;
            default:
                throw new ArgumentException($"Unknown solid {solid.GetType().Name}.", nameof(solid));
        }
    }

    private static void AppendAll(IncrementalHash hash, int kind, ImmutableArray<Solid> operands)
    {
        Append<int>(hash, kind, [operands.Length]);
        foreach (Solid operand in operands)
        {
            Append(hash, operand);
        }
    }

    private static void Append<T>(IncrementalHash hash, int kind, ImmutableArray<T> values)
        where T : unmanaged
    {
        ReadOnlySpan<int> head = [kind, values.Length];
        hash.AppendData(MemoryMarshal.AsBytes(head));
        hash.AppendData(MemoryMarshal.AsBytes(values.AsSpan()));
    }
}
