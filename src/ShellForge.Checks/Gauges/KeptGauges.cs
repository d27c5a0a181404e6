using System.Collections.Concurrent;
using System.Runtime.CompilerServices;
using ShellForge.Geometry.Solids;

namespace ShellForge.Checks.Gauges;

/// <summary>
/// What was measured on meshes, each once, by whoever asks first: rules, report or pictures, of one housing or of several that have a part
/// in common. It lives as long as its mesh does.
/// </summary>
public sealed class KeptGauges
{
    private readonly ConditionalWeakTable<SolidMesh, ConcurrentDictionary<object, Lazy<object?>>> _byMesh = [];

    /// <summary>What was measured on a mesh.</summary>
    /// <param name="mesh">The mesh.</param>
    /// <param name="key">
    /// What is measured, and everything beside the mesh that decides it: a value of a type of its own, compared by its content.
    /// </param>
    /// <param name="work">Measures it.</param>
    internal T Get<T>(SolidMesh mesh, object key, Func<T> work) =>
        (T)_byMesh.GetOrCreateValue(mesh).GetOrAdd(key, _ => new Lazy<object?>(() => work())).Value!;
}
