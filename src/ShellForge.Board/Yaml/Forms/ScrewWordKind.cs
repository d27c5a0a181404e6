using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.Forms;

/// <summary>A screw by its profile, or by the shape of its head alone: its thread is then the insert's.</summary>
internal readonly record struct ParsedScrew(ScrewProfile? Profile, ScrewHead Head);

/// <summary>The value at `screw:`.</summary>
internal static class ScrewWordKind
{
    /// <summary>The words for heads.</summary>
    public static WordKind<ScrewHead> Heads { get; } = new(
        ("pan", ScrewHead.Pan), ("cap", ScrewHead.Cap), ("button", ScrewHead.Button), ("countersunk", ScrewHead.Countersunk));

    /// <summary>A head's word, or a profile's name.</summary>
    public static Kind<ParsedScrew> Kind { get; } = new ChoiceKind<ParsedScrew>(
        new MappedKind<ScrewHead, ParsedScrew>(Heads, head => new ParsedScrew(null, head)),
        new MappedKind<ScrewProfile, ParsedScrew>(
            new ProfileKind<ScrewProfile>("a screw", l => l.Screws, "pan", "cap", "button", "countersunk"),
            profile => new ParsedScrew(profile, profile.Head)));
}
