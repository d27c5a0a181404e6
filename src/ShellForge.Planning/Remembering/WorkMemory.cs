using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using ShellForge.Geometry.Solids;

namespace ShellForge.Planning.Remembering;

/// <summary>
/// What was worked out, known by its content: whoever asks for the same again gets the same object, and nothing is computed twice.
/// It is handed to the plan, to parts, gauges and files; housings that are made one after the other or side by side may share one, and
/// each is the same to the byte as one that is made alone. What has not been asked for the longest goes first.
/// </summary>
/// <param name="mostBytes">
/// About how much is kept, bytes. A result that is larger alone is still kept until the next one comes.
/// </param>
/// <remarks>
/// A key is a value of a type of its own that is equal to another only when everything is that the work reads: a record of values,
/// regions, lists as <see cref="Listed{T}"/>, and digests in place of meshes, so that a key holds no mesh in memory.
/// </remarks>
public sealed class WorkMemory(long mostBytes = WorkMemory.UsualBytes)
{
    /// <summary>Some thirty parts of a usual housing with what is drawn and lit of them.</summary>
    public const long UsualBytes = 150_000_000;

    // What a key and its entry take beside the result, about.
    private const long EntryBytes = 1000;

    private readonly Lock _gate = new();
    private long _bytes;
    private readonly Dictionary<object, LinkedListNode<Entry>> _byKey = [];
    private readonly LinkedList<Entry> _latestFirst = new();
    private readonly SortedDictionary<string, WorkCount> _counts = new(StringComparer.Ordinal);
    private readonly ConditionalWeakTable<SolidMesh, ConcurrentDictionary<object, Lazy<object?>>> _ofMesh = [];

    /// <summary>About how much is kept, bytes, without what is known of meshes that are kept.</summary>
    public long Bytes
    {
        get
        {
            lock (_gate)
            {
                return _bytes;
            }
        }
    }

    /// <summary>For each kind of key how often its work was done and how often it was found done.</summary>
    public ImmutableSortedDictionary<string, WorkCount> Counts
    {
        get
        {
            lock (_gate)
            {
                return _counts.ToImmutableSortedDictionary(StringComparer.Ordinal);
            }
        }
    }

    /// <summary>
    /// The result of some work, once for all that ask. Others wait for whoever asks first; what that one throws is thrown by all who
    /// wait, and is not kept.
    /// </summary>
    /// <param name="key">What is worked out, and everything that decides it.</param>
    /// <param name="work">Works it out.</param>
    /// <param name="bytes">About how much memory a result takes.</param>
    public T Of<T>(object key, Func<T> work, Func<T, long> bytes)
    {
        LinkedListNode<Entry> entry = EntryOf(key, () => work());
        try
        {
            var result = (T)entry.Value.Result.Value!;
            Weigh(entry, EntryBytes + bytes(result));
            return result;
        }
        catch
        {
            Forget(entry);
            throw;
        }
    }

    /// <summary>What was measured on a mesh, or written of it. It lives as long as its mesh does.</summary>
    /// <param name="mesh">The mesh.</param>
    /// <param name="key">What is worked out, and everything beside the mesh that decides it.</param>
    /// <param name="work">Works it out.</param>
    public T OfMesh<T>(SolidMesh mesh, object key, Func<T> work)
    {
        bool done = false;
        var result = (T)_ofMesh.GetOrCreateValue(mesh).GetOrAdd(key, _ => new Lazy<object?>(() =>
        {
            done = true;
            return work();
        })).Value!;
        lock (_gate)
        {
            Count(key, found: !done);
        }

        return result;
    }

    private LinkedListNode<Entry> EntryOf(object key, Func<object?> work)
    {
        lock (_gate)
        {
            bool found = _byKey.TryGetValue(key, out LinkedListNode<Entry>? known);
            Count(key, found);
            if (found)
            {
                _latestFirst.Remove(known!);
                _latestFirst.AddFirst(known!);
                return known!;
            }

            return _byKey[key] = _latestFirst.AddFirst(new Entry(key, new Lazy<object?>(work)));
        }
    }

    private void Count(object key, bool found)
    {
        string kind = key.GetType().Name;
        WorkCount count = _counts.GetValueOrDefault(kind);
        _counts[kind] = found ? count with { Found = count.Found + 1 } : count with { Done = count.Done + 1 };
    }

    // A result weighs nothing until it is there, and what is being worked out never goes.
    private void Weigh(LinkedListNode<Entry> entry, long bytes)
    {
        lock (_gate)
        {
            if (entry.List is null || entry.Value.Bytes is not null)
            {
                return;
            }

            entry.Value = entry.Value with { Bytes = bytes };
            _bytes += bytes;
            for (LinkedListNode<Entry>? last = _latestFirst.Last; last is not null && last != entry && _bytes > mostBytes;)
            {
                LinkedListNode<Entry>? earlier = last.Previous;
                if (last.Value.Bytes is not null)
                {
                    Remove(last);
                }

                last = earlier;
            }
        }
    }

    private void Forget(LinkedListNode<Entry> entry)
    {
        lock (_gate)
        {
            if (entry.List is not null)
            {
                Remove(entry);
            }
        }
    }

    private void Remove(LinkedListNode<Entry> entry)
    {
        _bytes -= entry.Value.Bytes ?? 0;
        _latestFirst.Remove(entry);
        _byKey.Remove(entry.Value.Key);
    }

    private sealed record Entry(object Key, Lazy<object?> Result)
    {
        // Null until it is there.
        public long? Bytes { get; init; }
    }
}
