using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.ProfileForms;

/// <summary>Kinds of sourced numbers that profiles share.</summary>
internal static class ProfileNumbers
{
    /// <summary>A word that names something: a thread, a plastic family, a colour.</summary>
    public static Kind<string> Word { get; } = new TextKind("a word", 40);

    /// <summary>A length in mm.</summary>
    public static Kind<Sourced> Length(double least, double most) => new SourcedKind(new LengthKind("a length", least, most));

    /// <summary>A number in the unit that its key names.</summary>
    public static Kind<Sourced> Number(double least, double most) => new SourcedKind(new NumberKind("a number", least, most));

    /// <summary>A size that is measured of a printer with a filament.</summary>
    public static Kind<Sourced> Of(PairingSize size) =>
        size.Unit == "mm" ? Length(size.Least, size.Most) : Number(size.Least, size.Most);

    /// <summary>A count.</summary>
    public static Kind<Sourced> Whole(int least, int most) => new SourcedKind(new NumberKind("a count", least, most, whole: true));

    /// <summary>Zero, for a number that most profiles do not have.</summary>
    public static Sourced None(string why) => new(0, why);
}
