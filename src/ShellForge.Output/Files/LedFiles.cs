using ShellForge.Checks.Gauges;
using ShellForge.Output.Leds;
using ShellForge.Output.Looks;

namespace ShellForge.Output.Files;

/// <summary>The LEDs for firmware: a header for C and the same as JSON.</summary>
internal static class LedFiles
{
    /// <summary>Name of the header's file.</summary>
    public const string Header = "leds.h";

    /// <summary>Name of the document's file.</summary>
    public const string Document = "leds.json";

    /// <summary>Both files.</summary>
    public static IEnumerable<(string Name, Action<Stream> Write)> Of(HousingUnderCheck housing, HousingLooks looks)
    {
        LedDocument leds = LedDocument.Of(housing);
        return
        [
            (Header, stream => stream.Write(LedHeader.Text(leds))),
            (Document, stream => stream.Write(LedDocument.Bytes(leds))),
        ];
    }
}
