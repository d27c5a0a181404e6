using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml;
using ShellForge.Output.Files;
using ShellForge.Pipeline;

BoardReadResult read = BoardFileReader.Read(args[0], File.ReadAllText(args[0]), ProfileLibrary.Load([]).Library, []);
foreach (var mistake in read.Diagnostics)
{
    Console.WriteLine(mistake);
}

if (read.File is null)
{
    return 1;
}

MadeHousing made = HousingPipeline.Make(read.File);
foreach (var finding in made.Report.Findings)
{
    Console.WriteLine($"{finding.Severity} {finding.Subject}: {finding.Message}");
}

foreach (OutputFile file in DrawnFiles.OfFormats(made.Housing, [OutputFormat.Stl]).Asked)
{
    File.WriteAllBytes(file.Name, file.Content);
}

return 0;
