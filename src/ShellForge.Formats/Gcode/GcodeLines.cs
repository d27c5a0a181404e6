namespace ShellForge.Formats.Gcode;

/// <summary>Cuts a stream into lines in bounded memory.</summary>
internal sealed class GcodeLines(Stream stream)
{
    // Slicers write their whole set-up in comments, custom code of a printer in one line of it.
    private const int LongestLine = 1 << 20;
    private byte[] _bytes = new byte[1 << 16];
    private int _from;
    private int _to;
    private bool _ended;

    /// <summary>Number of the line that <see cref="Next"/> gave last, from 1.</summary>
    public long Number { get; private set; }

    /// <summary>Bytes read so far.</summary>
    public long Length { get; private set; }

    /// <summary>Whether a line was longer than any of a text.</summary>
    public bool TooLong { get; private set; }

    /// <summary>The next line without its end; false at the end of the stream, or where a line is too long.</summary>
    public bool Next(out ReadOnlySpan<byte> line)
    {
        line = default;
        int looked = 0;
        while (true)
        {
            int end = _bytes.AsSpan(_from + looked, _to - _from - looked).IndexOf((byte)'\n');
            if (end >= 0 || _ended)
            {
                int length = end >= 0 ? looked + end : _to - _from;
                if (end < 0 && length == 0)
                {
                    return false;
                }

                line = _bytes.AsSpan(_from, length).TrimEnd((byte)'\r');
                _from += length + (end >= 0 ? 1 : 0);
                Number++;
                return true;
            }

            looked = _to - _from;
            if (looked > LongestLine)
            {
                Number++;
                TooLong = true;
                return false;
            }

            Fill();
        }
    }

    private void Fill()
    {
        if (_from > 0)
        {
            _bytes.AsSpan(_from, _to - _from).CopyTo(_bytes);
            (_from, _to) = (0, _to - _from);
        }

        if (_to == _bytes.Length)
        {
            Array.Resize(ref _bytes, 2 * _bytes.Length);
        }

        int read = stream.Read(_bytes, _to, _bytes.Length - _to);
        _to += read;
        Length += read;
        _ended = read == 0;
    }
}
