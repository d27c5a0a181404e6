using ShellForge.Board.Profiles;

namespace ShellForge.Sweep.Variants;

/// <summary>A board file that a sweep varies, with everything that is read beside it.</summary>
/// <param name="Shown">The file as messages name it.</param>
/// <param name="FileName">Its bare name.</param>
/// <param name="Text">Its text.</param>
/// <param name="Profiles">The profiles that hold for it.</param>
/// <param name="ProfileTexts">The user's own profile files, name and text.</param>
public sealed record SweepBoard(
    string Shown, string FileName, string Text, ProfileLibrary Profiles, IReadOnlyList<(string Name, string Text)> ProfileTexts)
{
    /// <summary>The name without its ending, as folders and names of variants show it.</summary>
    public string Stem => Path.GetFileNameWithoutExtension(FileName);
}
