namespace ShellForge.Geometry.Booleans.Tables;

/// <summary>Items under keys 0..n-1, in the order they came: one array of items and where each key's begin.</summary>
internal sealed class Grouping
{
    private readonly int[] _start;
    private readonly int[] _items;

    private Grouping(int[] start, int[] items)
    {
        _start = start;
        _items = items;
    }

    public int ItemCount => _items.Length;

    public ReadOnlySpan<int> this[int key] => _items.AsSpan(_start[key], _start[key + 1] - _start[key]);

    /// <summary>The items of a key, to be put in another order.</summary>
    public Span<int> Items(int key) => _items.AsSpan(_start[key], _start[key + 1] - _start[key]);

    public int StartOf(int key) => _start[key];

    /// <summary>The item at a running index over all keys.</summary>
    public int At(int index) => _items[index];

    public static Grouping Of(int keys, List<(int Key, int Item)> pairs)
    {
        int[] start = new int[keys + 1];
        foreach ((int key, _) in pairs)
        {
            start[key + 1]++;
        }

        for (int k = 0; k < keys; k++)
        {
            start[k + 1] += start[k];
        }

        int[] items = new int[pairs.Count];
        foreach ((int key, int item) in pairs)
        {
            items[start[key]++] = item;
        }

        StepBack(start);
        return new Grouping(start, items);
    }

    /// <summary>For each item, numbered 0..n-1, the running indices over all keys at which it stands.</summary>
    public Grouping Inverse(int items) => Of(items, _items, 0);

    /// <summary>For each of keys 0..n-1 the places in the list at which it stands, shifted left by so many bits.</summary>
    public static Grouping Of(int keys, int[] shifted, int bits)
    {
        int[] start = new int[keys + 1];
        foreach (int value in shifted)
        {
            start[(value >> bits) + 1]++;
        }

        for (int k = 0; k < keys; k++)
        {
            start[k + 1] += start[k];
        }

        int[] places = new int[shifted.Length];
        for (int place = 0; place < places.Length; place++)
        {
            places[start[shifted[place] >> bits]++] = place;
        }

        StepBack(start);
        return new Grouping(start, places);
    }

    /// <summary>The same with every item once a key, in ascending order.</summary>
    public static Grouping Distinct(int keys, List<(int Key, int Item)> pairs)
    {
        Grouping all = Of(keys, pairs);
        int[] start = new int[keys + 1];
        int kept = 0;
        for (int key = 0; key < keys; key++)
        {
            Span<int> items = all._items.AsSpan(all._start[key], all._start[key + 1] - all._start[key]);
            items.Sort();
            int from = kept;
            foreach (int item in items)
            {
                if (kept == from || all._items[kept - 1] != item)
                {
                    all._items[kept++] = item;
                }
            }

            start[key + 1] = kept;
        }

        return new Grouping(start, kept == all._items.Length ? all._items : all._items[..kept]);
    }

    // While items are put in place the starts run on to the ends, which are the next ones' starts.
    private static void StepBack(int[] start)
    {
        Array.Copy(start, 0, start, 1, start.Length - 1);
        start[0] = 0;
    }
}
