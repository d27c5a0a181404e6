using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Profiles;

namespace ShellForge.Cli.Profiles;

/// <summary>Collects the lines of a sheet.</summary>
internal sealed class ProfileLines
{
    private readonly ImmutableArray<ProfileLine>.Builder _lines = ImmutableArray.CreateBuilder<ProfileLine>();

    /// <summary>A word.</summary>
    public ProfileLines Word(string what, string value, string source = "")
    {
        _lines.Add(new ProfileLine(what, value, source));
        return this;
    }

    /// <summary>A flag; told only when set.</summary>
    public ProfileLines Flag(string what, bool value) => value ? Word(what, "yes") : this;

    /// <summary>A length in mm.</summary>
    public ProfileLines Length(string what, Sourced? value) => Number(what, value, "mm");

    /// <summary>A number with its unit; nothing when it is not known.</summary>
    public ProfileLines Number(string what, Sourced? value, string unit)
    {
        if (value is { } known)
        {
            string text = string.Create(CultureInfo.InvariantCulture, $"{known.Value:0.#####} {unit}").TrimEnd();
            _lines.Add(new ProfileLine(what, text, known.Source));
        }

        return this;
    }

    /// <summary>A number with its range.</summary>
    public ProfileLines Range(string what, SourcedRange value, string unit) => Word(
        what, string.Create(CultureInfo.InvariantCulture, $"{value.Value:0.#####} ({value.Low:0.#####} to {value.High:0.#####}) {unit}")
            .TrimEnd(), value.Source);

    /// <summary>The sheet.</summary>
    public ProfileSheet On(string kind, string name) => new(kind, name, _lines.ToImmutable());
}
