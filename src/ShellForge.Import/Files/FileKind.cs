using System.Text.Json.Serialization;

namespace ShellForge.Import.Files;

/// <summary>What a file turned out to be, by its content.</summary>
public enum FileKind
{
    /// <summary>None of the kinds below.</summary>
    Unknown,

    /// <summary>IDF board file.</summary>
    IdfBoard,

    /// <summary>IDF panel file: several boards.</summary>
    IdfPanel,

    /// <summary>IDF library file: outlines and heights of packages.</summary>
    IdfLibrary,

    /// <summary>Gerber drawing.</summary>
    Gerber,

    /// <summary>Excellon or XNC drill file.</summary>
    Drill,

    /// <summary>Pick-and-place list.</summary>
    Placement,

    /// <summary>DXF in text form.</summary>
    Dxf,

    /// <summary>DXF in binary form, which is not read.</summary>
    DxfBinary,

    /// <summary>Gerber job file.</summary>
    [JsonStringEnumMemberName("gerber-job")]
    JobFile,

    /// <summary>A text that belongs to a fabrication folder and holds nothing for a housing.</summary>
    [JsonStringEnumMemberName("other")]
    Accompanying,
}
