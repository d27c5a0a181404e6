using System.Security.Cryptography;
using System.Text;
using ShellForge.Board.Files;
using ShellForge.Cli.Reading;
using ShellForge.Cli.Writing;
using ShellForge.Output.Files;

namespace ShellForge.Cli.Viewing;

/// <summary>The board file as the page writes it: whole or not at all, and never over what somebody else has written meanwhile.</summary>
/// <param name="path">Its full name.</param>
/// <param name="shownName">Its name as the user gave it.</param>
internal sealed class WrittenFile(string path, string shownName)
{
    private readonly Lock _turn = new();

    /// <summary>Whether it is there.</summary>
    public bool Exists => File.Exists(path);

    /// <summary>The file as it is now; without text and with an empty stamp when it is gone.</summary>
    /// <exception cref="IOException">It is there and can't be read.</exception>
    public WrittenFileDocument Read()
    {
        if (!Exists)
        {
            return new WrittenFileDocument(null, "");
        }

        string text = TextFile.Read(path, shownName);
        return new WrittenFileDocument(text, StampOf(text));
    }

    /// <summary>Writes a text in place of that with a stamp.</summary>
    /// <param name="text">The text.</param>
    /// <param name="stamp">The stamp of the text that is replaced.</param>
    /// <param name="now">The file as it is after that.</param>
    /// <returns>False, and nothing is written, when the file is another one by now.</returns>
    /// <exception cref="IOException">It can't be written.</exception>
    /// <exception cref="WrongFileException">The text is none that could be read again as a board file.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    public bool Replace(string text, string stamp, out WrittenFileDocument now)
    {
        lock (_turn)
        {
            now = Read();
            if (now.Stamp != stamp)
            {
                return false;
            }

            // What a link leads to is written, not the link.
            bool isThere = now.Text is not null;
            string real = (isThere ? File.ResolveLinkTarget(path, returnFinalTarget: true)?.FullName : null) ?? path;
            byte[]? earlier = isThere ? BoundedFile.Read(real, TextFile.LongestBytes) : null;
            if (isThere && (earlier is null || StampOf(TextFile.Of(earlier, shownName)) != stamp))
            {
                now = Read();
                return false;
            }

            bool hasMark = earlier is not null && earlier.AsSpan().StartsWith(Encoding.UTF8.Preamble);
            byte[] content = [.. hasMark ? Encoding.UTF8.Preamble : [], .. Encoding.UTF8.GetBytes(text)];
            string mine = Readable(content);
            bool written = StagedFiles.Replace(Path.GetDirectoryName(real)!, new OutputFile(Path.GetFileName(real), content), earlier);
            now = written ? new WrittenFileDocument(mine, StampOf(mine)) : Read();
            return written;
        }
    }

    private static string StampOf(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    // What could not be read again would end the page.
    private string Readable(byte[] content)
    {
        try
        {
            return TextFile.Of(content, shownName);
        }
        catch (IOException e)
        {
            throw new WrongFileException(e.Message);
        }
    }
}
