using ShellForge.Geometry.Booleans.Settling;
using ShellForge.Geometry.Solids;

namespace ShellForge.Housing;

/// <summary>
/// Evaluated parts of housings that are made one after the other or side by side: a part that is drawn alike again is the same object, and
/// nothing of it is computed twice. What has not been asked for the longest goes first.
/// </summary>
/// <param name="mostTriangles">
/// How many triangles are kept in all; with what is measured on them about 300 bytes each. A part that is larger alone is still kept
/// until the next one comes.
/// </param>
public sealed class KeptParts(int mostTriangles = KeptParts.UsualTriangles)
{
    /// <summary>Some thirty parts of a usual housing, about 150 MB.</summary>
    public const int UsualTriangles = 500_000;

    private readonly Lock _gate = new();
    private readonly Dictionary<string, LinkedListNode<Entry>> _byDigest = new(StringComparer.Ordinal);
    private readonly LinkedList<Entry> _latestFirst = new();

    /// <summary>How many parts were asked for that had been evaluated before.</summary>
    public int Found { get; private set; }

    /// <summary>Triangles that are kept.</summary>
    public long Triangles { get; private set; }

    /// <summary>
    /// The evaluation of a solid, once for all that ask. Others wait for whoever asks first; what that one throws is thrown by all who
    /// wait, and is not kept.
    /// </summary>
    /// <param name="solid">The solid.</param>
    /// <param name="cancel">Stops the evaluation.</param>
    public SolidOutcome Evaluate(Solid solid, CancellationToken cancel = default)
    {
        LinkedListNode<Entry> entry = EntryOf(SolidDigest.Of(solid), solid, cancel);
        try
        {
            SolidOutcome outcome = entry.Value.Outcome.Value;
            Weigh(entry, outcome.Solid?.TriangleCount ?? 0);
            return outcome;
        }
        catch
        {
            Forget(entry);
            throw;
        }
    }

    private LinkedListNode<Entry> EntryOf(string digest, Solid solid, CancellationToken cancel)
    {
        lock (_gate)
        {
            if (_byDigest.TryGetValue(digest, out LinkedListNode<Entry>? known))
            {
                Found++;
                _latestFirst.Remove(known);
                _latestFirst.AddFirst(known);
                return known;
            }

            var outcome = new Lazy<SolidOutcome>(() => PartMaker.Evaluate(solid, cancel));
            return _byDigest[digest] = _latestFirst.AddFirst(new Entry(digest, outcome));
        }
    }

    // A part weighs nothing until it is evaluated, and what is being evaluated never goes.
    private void Weigh(LinkedListNode<Entry> entry, int triangles)
    {
        lock (_gate)
        {
            if (entry.List is null || entry.Value.Triangles is not null)
            {
                return;
            }

            entry.Value = entry.Value with { Triangles = triangles };
            Triangles += triangles;
            for (LinkedListNode<Entry>? last = _latestFirst.Last; last is not null && last != entry && Triangles > mostTriangles;)
            {
                LinkedListNode<Entry>? earlier = last.Previous;
                if (last.Value.Triangles is not null)
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
        Triangles -= entry.Value.Triangles ?? 0;
        _latestFirst.Remove(entry);
        _byDigest.Remove(entry.Value.Digest);
    }

    private sealed record Entry(string Digest, Lazy<SolidOutcome> Outcome)
    {
        // Null until it is evaluated.
        public int? Triangles { get; init; }
    }
}
