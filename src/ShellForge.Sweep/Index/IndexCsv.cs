using System.Buffers;
using System.Globalization;
using System.Text;
using ShellForge.Sweep.Rows;

namespace ShellForge.Sweep.Index;

/// <summary>The index as a table for spreadsheets: commas, a header, one line a variant (RFC 4180).</summary>
internal static class IndexCsv
{
    // The last four are the wide forms of the first.
    private const string FormulaSigns = "=+-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20";

    private static readonly SearchValues<char> ToBeQuoted = SearchValues.Create(",;\t\"\r\n");

    public static void Write(Stream stream, IndexSurvey survey, IEnumerable<VariantRow> rows)
    {
        using var writer = new StreamWriter(stream, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        writer.WriteLine(
            Line(["folder", "code", "board", "case", .. survey.Axes, "outcome", "verdict",
                .. IndexColumn.All.Select(column => column.Name)]));
        foreach (VariantRow row in rows)
        {
            writer.WriteLine(Line(
            [
                row.Folder, row.Code, row.Board, row.Case ?? "",
                .. survey.Axes.Select(axis => row.Values.FirstOrDefault(value => value.Name == axis)?.Text ?? ""),
                row.Outcome, row.Housing?.Verdict ?? "",
                .. IndexColumn.All.Select(column => row.Housing is { } housing && column.Of(housing) is { } figure
                    ? figure.ToString(CultureInfo.InvariantCulture) : ""),
            ]));
        }
    }

    private static string Line(IEnumerable<string> fields) => string.Join(',', fields.Select(Field));

    // A field that begins like a formula would be computed by a spreadsheet; what a plan says is text. Some split lines at semicolons and
    // tabs too, and what follows one of those would begin a field of its own.
    private static string Field(string text)
    {
        string safe = text.Length > 0 && FormulaSigns.Contains(text[0])
            && !double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out _) ? "'" + text : text;
        return safe.AsSpan().IndexOfAny(ToBeQuoted) < 0 ? safe : $"\"{safe.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }
}
