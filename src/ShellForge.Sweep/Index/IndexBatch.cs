using System.Collections.Immutable;
using System.Globalization;

namespace ShellForge.Sweep.Index;

/// <summary>The batch on the page: what to have at hand for one of each variant, and the plates on which they are printed.</summary>
internal static class IndexBatch
{
    private const double Percent = 100;

    public static void Write(StreamWriter html, IndexContent content)
    {
        html.Write(
            "<section><h2>For one of each that can be printed</h2>\n<div class=\"columns\"><div><h3>To have at hand</h3>\n<table>"
                + "<thead><tr><th>item</th><th class=\"number\">used</th><th class=\"number\">with spares</th></tr></thead><tbody>\n");
        foreach (BatchItem item in content.Batch.Shopping)
        {
            WriteItem(html, item.Item, item, "");
        }

        foreach (BatchItem item in content.Batch.Filament)
        {
            WriteItem(html, $"filament {item.Item}", item, " g");
        }

        html.Write("</tbody></table></div>\n");
        WritePlates(html, content);
        html.Write("</div></section>\n");
    }

    private static void WriteItem(StreamWriter html, string name, BatchItem item, string unit) => html.Write(string.Create(
        CultureInfo.InvariantCulture,
        $"<tr><td>{Html.Text(name)}</td><td class=\"number\">{item.Needed}{unit}</td><td class=\"number\">{item.ToBuy}{unit}</td></tr>\n"));

    private static void WritePlates(StreamWriter html, IndexContent content)
    {
        Batch batch = content.Batch;
        ImmutableArray<BatchPlate> plates = content.Plates;
        html.Write("<div><h3>Plates that fill the bed</h3>\n");
        string some = batch.Variants <= Batch.MostPlated ? "" : string.Create(
            CultureInfo.InvariantCulture, $" Only the first {Batch.MostPlated} of {batch.Variants} variants are laid out.");
        string files = plates.IsEmpty ? "" : plates.All(plate => plate.File is not null) ? "Each is a 3MF file."
            : "<code>shellforge sweep --merge</code> with this folder and <code>--plates</code> writes each as a 3MF file.";
        html.Write(string.Create(
            CultureInfo.InvariantCulture,
            $"<p class=\"soft\">{plates.Length} plate{(plates.Length == 1 ? "" : "s")}: parts of one printer and filament together. "
                + $"{files}{some}</p>\n"));
        html.Write(
            "<table class=\"plates\"><thead><tr><th>plate</th><th>printer, filament</th><th>parts</th>"
                + "<th class=\"number\">of the bed</th></tr></thead><tbody>\n");
        for (int i = 0; i < plates.Length; i++)
        {
            BatchPlate plate = plates[i];
            string number = string.Create(CultureInfo.InvariantCulture, $"{i + 1}");
            html.Write(string.Create(
                CultureInfo.InvariantCulture,
                $"<tr><td>{(plate.File is null ? number : $"<a href=\"{Html.Text(plate.File)}\">{number}</a>")}</td>"
                    + $"<td>{Html.Text(plate.Printer)}, {Html.Text(string.Join(", ", plate.Filaments))}</td>"
                    + $"<td>{Html.Text(string.Join(", ", plate.Parts))}</td>"
                    + $"<td class=\"number\">{Percent * plate.BedShare:0} %</td></tr>\n"));
        }

        html.Write("</tbody></table></div>\n");
    }
}
