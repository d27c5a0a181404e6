namespace ShellForge.Geometry.Planar;

/// <summary>Stretches of height of things in a list, known by blocks too, so that a search steps over those far above or below.</summary>
internal readonly struct HeightSpans
{
    private const int Block = 16;
    private readonly (int Min, int Max)[] _each;
    private readonly (int Min, int Max)[] _blocks;

    /// <param name="count">How many things there are.</param>
    /// <param name="span">Lowest and highest y of each.</param>
    public HeightSpans(int count, Func<int, (int Min, int Max)> span)
    {
        _each = new (int, int)[count];
        _blocks = new (int, int)[(count + Block - 1) / Block];
        Array.Fill(_blocks, (int.MaxValue, int.MinValue));
        for (int i = 0; i < count; i++)
        {
            _each[i] = span(i);
            ref (int Min, int Max) block = ref _blocks[i / Block];
            block = (Math.Min(block.Min, _each[i].Min), Math.Max(block.Max, _each[i].Max));
        }
    }

    /// <summary>
    /// The first from an index on, before an end, that reaches into a stretch, its ends included; the end where none does.
    /// </summary>
    public int Next(int from, int end, int min, int max)
    {
        for (int i = from; i < end; i++)
        {
            if (i % Block == 0 && (_blocks[i / Block].Min > max || _blocks[i / Block].Max < min))
            {
                i += Block - 1;
            }
            else if (_each[i].Min <= max && _each[i].Max >= min)
            {
                return i;
            }
        }

        return end;
    }
}
