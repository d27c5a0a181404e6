using ShellForge.Board.Files;
using ShellForge.Cli.Reading;
using ShellForge.Output.Files;

namespace ShellForge.Cli.Writing;

/// <summary>Files that lie where a run would write, and that no run of ours has written: none of them is replaced in silence.</summary>
internal static class OthersFiles
{
    private const int MostNamed = 4;

    /// <summary>Stops a run that would replace them. What has the very bytes already is no loss.</summary>
    /// <param name="folder">Full name of the folder that is written into.</param>
    /// <param name="files">What is written.</param>
    /// <param name="isOurs">Whether an earlier run wrote into it: then these names are its own.</param>
    /// <param name="inputs">Full names of what the run has read, which is never its own.</param>
    /// <exception cref="WrongFileException">There are such files.</exception>
    public static void Refuse(string folder, IReadOnlyList<OutputFile> files, bool isOurs, params IEnumerable<string> inputs)
    {
        HashSet<string> read = [.. inputs];
        string[] lost = [.. files
            .Where(file => Path.Combine(folder, file.Name) is var path && (read.Contains(path) || !isOurs) && File.Exists(path)
                && BoundedFile.Read(path, file.Content.Length)?.AsSpan().SequenceEqual(file.Content) != true)
            .Select(file => file.Name)];
        Refuse(folder, lost);
    }

    /// <summary>Stops a run that would replace files of others.</summary>
    /// <param name="folder">Full name of their folder.</param>
    /// <param name="lost">Their names; nothing happens where there are none.</param>
    /// <exception cref="WrongFileException">There are such files.</exception>
    public static void Refuse(string folder, string[] lost)
    {
        if (lost.Length > 0)
        {
            string more = lost.Length > MostNamed ? $" and {lost.Length - MostNamed} more" : "";
            throw new WrongFileException(
                $"{string.Join(", ", lost.Take(MostNamed))}{more} in {folder} would be replaced, and no earlier run wrote "
                + $"{(lost.Length == 1 ? "it" : "them")}; nothing is written. Name another folder with -o");
        }
    }

    /// <summary>What is written, and before it a copy of each file that is replaced and may hold a person's work.</summary>
    /// <param name="folder">Full name of the folder that is written into.</param>
    /// <param name="files">What is written.</param>
    /// <param name="most">How many bytes such a file has at most.</param>
    /// <param name="mayHoldWork">Whether a person may have worked in what stands under a file's name; all where it is not given.</param>
    /// <exception cref="WrongFileException">An earlier file is larger, so that it is not such a file.</exception>
    public static IReadOnlyList<OutputFile> WithKept(
        string folder, IReadOnlyList<OutputFile> files, long most, Func<OutputFile, bool>? mayHoldWork = null) =>
    [
        .. files.Where(file => mayHoldWork?.Invoke(file) != false).Select(file => Kept(folder, file, most)).OfType<OutputFile>(),
        .. files,
    ];

    /// <summary>A copy, under a name that is free, of a file that is replaced and may hold a person's work.</summary>
    /// <param name="folder">Full name of its folder.</param>
    /// <param name="file">What takes its place.</param>
    /// <param name="most">How many bytes such a file has at most.</param>
    /// <returns>The copy; null where nothing would be lost, or a copy is there.</returns>
    /// <exception cref="WrongFileException">It is larger, so that it is not such a file.</exception>
    private static OutputFile? Kept(string folder, OutputFile file, long most)
    {
        string path = Path.Combine(folder, file.Name);
        if (!File.Exists(path))
        {
            return null;
        }

        if (BoundedFile.Read(path, most) is not { } earlier)
        {
            Refuse(folder, [file.Name]);
            return null;
        }

        if (earlier.Length == 0 || earlier.AsSpan().SequenceEqual(file.Content))
        {
            return null;
        }

        for (int i = 1; ; i++)
        {
            string name = $"{file.Name}~{(i == 1 ? "" : i.ToString(System.Globalization.CultureInfo.InvariantCulture))}";
            if (!Path.Exists(Path.Combine(folder, name)))
            {
                return new OutputFile(name, earlier);
            }

            if (BoundedFile.Read(Path.Combine(folder, name), most)?.AsSpan().SequenceEqual(earlier) == true)
            {
                return null;
            }
        }
    }
}
