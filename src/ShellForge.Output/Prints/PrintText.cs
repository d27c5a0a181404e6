using System.Text;
using ShellForge.Output.Report;
using ShellForge.Output.Words;

namespace ShellForge.Output.Prints;

/// <summary>The print sheet as text, for a terminal or to lie beside the printer.</summary>
internal static class PrintText
{
    /// <summary>Name of its file.</summary>
    public const string FileName = "print.txt";

    private const int Width = 80;
    private const int Column = 12;

    /// <summary>The sheet.</summary>
    /// <param name="sheet">What is printed how.</param>
    /// <param name="advice">Sentences that hold for all prints.</param>
    public static string Of(PrintSheet sheet, IEnumerable<string> advice)
    {
        using var text = new StringWriter { NewLine = "\n" };
        string revision = sheet.Revision is null ? "" : $", revision {sheet.Revision}";
        WrappedText.Write(text, $"How to print {sheet.Name}{revision}, on {sheet.Printer}", Width);
        foreach (PrintedPart part in sheet.Parts)
        {
            text.Write("\n");
            Line(text, part.Name, PrintWords.Files(part));
            Line(text, "  lies", PrintWords.Lies(part));
            Line(text, "  filament", $"{part.Filament}, {PrintWords.Mass(part)}");
            Line(text, "  time", PrintWords.Time(part));
            Line(text, "  size", PrintWords.Size(part));
            Line(text, "  layers", PrintWords.Layers(part));
            Line(text, "  walls", PrintWords.Walls(part));
            Line(text, "  fill", PrintWords.Fill(part));
            foreach (SolidColumn place in part.Solid)
            {
                Line(text, "  solid", PrintWords.Solid(place));
            }

            Line(text, "  pauses", PrintWords.Pauses(part));
        }

        foreach (SlicedDocument sliced in sheet.Sliced ?? [])
        {
            text.Write("\n");
            Line(text, sliced.File, $"as your slicer has it, for {SlicedWords.Parts(sliced)}");
            foreach ((string what, string words) in SlicedWords.Of(sliced))
            {
                Line(text, $"  {what}", words);
            }
        }

        text.Write("\n");
        foreach (string sentence in advice)
        {
            WrappedText.Write(text, sentence, Width, "- ", 2);
        }

        return text.ToString();
    }

    public static byte[] Bytes(PrintSheet sheet, IEnumerable<string> advice) => Encoding.UTF8.GetBytes(Of(sheet, advice));

    private static void Line(StringWriter text, string what, string words) =>
        WrappedText.Write(text, words, Width, what.Length < Column ? what.PadRight(Column) : what + " ", Column);
}
