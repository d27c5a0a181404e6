using System.Collections.Immutable;
using ShellForge.Import.Files;

namespace ShellForge.Import.Dxf;

/// <summary>Reads a DXF text file: header units, blocks, and the entities of model space.</summary>
internal static class DxfReader
{
    private const string BinaryMark = "AutoCAD Binary DXF";

    public static bool IsBinary(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length < BinaryMark.Length)
        {
            return false;
        }

        for (int i = 0; i < BinaryMark.Length; i++)
        {
            if (bytes[i] != BinaryMark[i])
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Whether the text begins with groups that open a section, comments aside.</summary>
    public static bool LooksLike(SourceText source)
    {
        int n = 1;
        while (n < Math.Min(source.LineCount, 200))
        {
            ReadOnlySpan<char> code = source.Line(n).Trim();
            ReadOnlySpan<char> value = source.Line(n + 1).Trim();
            if (code is "0")
            {
                return value is "SECTION";
            }

            if (code is not "999" && !code.IsEmpty)
            {
                return false;
            }

            n += code.IsEmpty ? 1 : 2;
        }

        return false;
    }

    public static DxfFacts Read(SourceText source, EcadLog log, CancellationToken ct)
    {
        var groups = new DxfGroups(source, log);
        var header = new DxfHeader();
        var blocks = new Dictionary<string, DxfBlock>(StringComparer.OrdinalIgnoreCase);
        var entities = new List<DxfEntity>();
        string section = "";
        bool sectionNamed = false;
        DxfBlock? block = null;
        DxfEntity? entity = null;
        DxfEntity? polyline = null;
        int count = 0;
        int entityCount = 0;
        bool ended = false;
        while (!ended && groups.Next(out DxfGroup group))
        {
            if (++count % 4096 == 0)
            {
                ct.ThrowIfCancellationRequested();
            }

            ReadOnlySpan<char> value = groups.Value(group);
            if (group.Code != 0)
            {
                if (section.Length == 0 && group.Code == 2 && !sectionNamed)
                {
                    section = value.ToString().ToUpperInvariant();
                    sectionNamed = true;
                }
                else if (section == "HEADER")
                {
                    header.Take(group.Code, value);
                }
                else
                {
                    entity?.Take(group.Code, value);
                }

                continue;
            }

            entity = null;
            switch (value)
            {
                case "SECTION":
                    (section, sectionNamed, block, polyline) = ("", false, null, null);
                    break;
                case "ENDSEC":
                    (section, sectionNamed, block, polyline) = ("", true, null, null);
                    break;
                case "EOF":
                    ended = true;
                    break;
                case "BLOCK" when section == "BLOCKS":
                    block = new DxfBlock(entity = new DxfEntity("BLOCK", group.Line));
                    polyline = null;
                    break;
                case "ENDBLK":
                    if (block is not null && block.Head.Name.Length > 0)
                    {
                        blocks[block.Head.Name] = block;
                    }

                    (block, polyline) = (null, null);
                    break;
                case "SEQEND":
                    polyline = null;
                    break;
                default:
                    if (section is not ("ENTITIES" or "BLOCKS") || (section == "BLOCKS" && block is null))
                    {
                        break;
                    }

                    if (++entityCount > EcadLimits.Sections)
                    {
                        log.Error(source.File, group.Line, "ecad-too-many", $"more than {EcadLimits.Sections} entities",
                            "export the board edge alone");
                        return new DxfFacts(source.File, header.Version, header.Unit, header.Metric, [],
                            ImmutableSortedDictionary<string, int>.Empty);
                    }

                    entity = new DxfEntity(value.ToString().ToUpperInvariant(), group.Line);
                    if (entity.Kind == "VERTEX" && polyline is not null)
                    {
                        polyline.Vertices.Add(entity);
                        break;
                    }

                    polyline = entity.Kind == "POLYLINE" ? entity : null;
                    (block?.Entities ?? entities).Add(entity);
                    break;
            }
        }

        if (!ended)
        {
            log.Warn(source.File, source.LineCount, "dxf-end", "the file ends without EOF: it may be cut off");
        }

        var drawing = new DxfDrawing(source.File, blocks, log, ct);
        drawing.Draw(entities);
        return new DxfFacts(source.File, header.Version, header.Unit, header.Metric, drawing.Strokes, drawing.Ignored);
    }
}

/// <summary>A block: its head, which holds name and base point, and its entities.</summary>
internal sealed record DxfBlock(DxfEntity Head)
{
    public List<DxfEntity> Entities { get; } = [];
}
