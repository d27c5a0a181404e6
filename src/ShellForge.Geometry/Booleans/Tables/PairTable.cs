namespace ShellForge.Geometry.Booleans.Tables;

/// <summary>
/// Values under unordered pairs of numbers. Pairs of neighbouring numbers are the rule here, and the platform's hash of a packed
/// pair folds just those onto each other; this table multiplies first.
/// </summary>
internal sealed class PairTable
{
    private long[] _keys;
    private int[] _values;

    public PairTable(int expected = 16)
    {
        int size = (int)System.Numerics.BitOperations.RoundUpToPowerOf2((uint)Math.Max(16, 2 * expected));
        _keys = new long[size];
        _values = new int[size];
    }

    public int Count { get; private set; }

    /// <summary>The value of a pair, added as 0 when new.</summary>
    public ref int At(int p, int q, out bool isNew)
    {
        if (2 * (Count + 1) > _keys.Length)
        {
            Grow();
        }

        long key = Key(p, q);
        int slot = Slot(key);
        isNew = _keys[slot] == 0;
        if (isNew)
        {
            _keys[slot] = key;
            _values[slot] = 0;
            Count++;
        }

        return ref _values[slot];
    }

    /// <summary>The value of a pair, or the given one when there is none.</summary>
    public int Find(int p, int q, int otherwise)
    {
        int slot = Slot(Key(p, q));
        return _keys[slot] == 0 ? otherwise : _values[slot];
    }

    /// <summary>Forgets all pairs; a table that few pairs were left in gives its room back.</summary>
    public void Clear()
    {
        if (_keys.Length > 64 && 16 * Count < _keys.Length)
        {
            _keys = new long[64];
            _values = new int[64];
        }
        else if (Count > 0)
        {
            Array.Clear(_keys);
        }

        Count = 0;
    }

    // 0 marks an empty slot; numbers are shifted by one.
    private static long Key(int p, int q) => ((long)(Math.Min(p, q) + 1) << 32) | (uint)(Math.Max(p, q) + 1);

    private int Slot(long key)
    {
        int mask = _keys.Length - 1;
        ulong mixed = (ulong)key * 0x9E3779B97F4A7C15UL;
        int slot = (int)((mixed ^ (mixed >> 29)) >> 17) & mask;
        while (_keys[slot] != 0 && _keys[slot] != key)
        {
            slot = (slot + 1) & mask;
        }

        return slot;
    }

    private void Grow()
    {
        (long[] keys, int[] values) = (_keys, _values);
        _keys = new long[2 * keys.Length];
        _values = new int[2 * keys.Length];
        for (int i = 0; i < keys.Length; i++)
        {
            if (keys[i] != 0)
            {
                int slot = Slot(keys[i]);
                _keys[slot] = keys[i];
                _values[slot] = values[i];
            }
        }
    }
}

/// <summary>For the platform's dictionaries: packed pairs of numbers, mixed before they are folded.</summary>
internal sealed class PairComparer : IEqualityComparer<long>
{
    public static PairComparer Instance { get; } = new();

    public bool Equals(long x, long y) => x == y;

    public int GetHashCode(long obj)
    {
        ulong mixed = (ulong)obj * 0x9E3779B97F4A7C15UL;
        return (int)((mixed ^ (mixed >> 29)) >> 16);
    }
}
