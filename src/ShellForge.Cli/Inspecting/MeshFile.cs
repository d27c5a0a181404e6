using ShellForge.Cli.Reading;
using ShellForge.Formats.Soup;
using ShellForge.Formats.Stl;
using ShellForge.Formats.ThreeMf;
using ShellForge.Geometry.Numerics;
using ShellForge.Output.Inspection;

namespace ShellForge.Cli.Inspecting;

/// <summary>Reads a mesh file by what it is, not by what it is called.</summary>
internal static class MeshFile
{
    private const long LongestMebibytes = 1024;

    // Source: 45 degrees is what printers of this kind manage without support; typical: check your printer.
    private static readonly Angle OverhangLimit = Angle.FromDegrees(45);

    /// <summary>Inspects a file.</summary>
    /// <exception cref="IOException">It can't be read.</exception>
    public static FileInspection Inspect(string name, Workbench bench) =>
        FileInspection.Of(name, Read(name, bench), OverhangLimit, bench.Cancel);

    private static SoupFile Read(string name, Workbench bench)
    {
        using Stream stream = TextFile.Open(bench.FullPath(name), name);
        if (stream.Length > LongestMebibytes << 20)
        {
            throw new IOException($"{name}: the file is longer than {LongestMebibytes} MiB");
        }

        // A ZIP archive begins with "PK"; an STL never does, since that is no way to begin a name.
        Span<byte> start = stackalloc byte[4];
        int read = stream.ReadAtLeast(start, start.Length, throwOnEndOfStream: false);
        stream.Position = 0;
        if (read == start.Length && start.SequenceEqual("PK\u0003\u0004"u8))
        {
            return ThreeMfReader.Read(stream, bench.Cancel);
        }

        byte[] content = new byte[stream.Length];
        stream.ReadExactly(content);
        RefuseText(name, content);
        return StlReader.Read(content);
    }

    // Text that does not begin as an STL in text does is no mesh. A mesh has zeros among its first bytes: its count of triangles is small.
    private static void RefuseText(string name, ReadOnlySpan<byte> content)
    {
        const int looked = 4096;
        ReadOnlySpan<byte> first = content[..Math.Min(looked, content.Length)];
        if (first.IsEmpty || first.Contains((byte)0) || first.TrimStart(" \t\r\n"u8).StartsWith("solid"u8))
        {
            return;
        }

        string what = first.IndexOf("format: shellforge"u8) >= 0 ? "a board file" : "a text, and no mesh";
        throw new WrongFileException($"{name}: this is {what}; inspect takes STL or 3MF");
    }
}
