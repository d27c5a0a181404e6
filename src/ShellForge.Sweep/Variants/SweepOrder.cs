using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using ShellForge.Board.Yaml.Overriding;
using ShellForge.Board.Yaml.Variation;
using ShellForge.Output.Files;

namespace ShellForge.Sweep.Variants;

/// <summary>
/// Everything that decides what a sweep makes: the same order gives the same bytes, wherever and in how many pieces it runs.
/// </summary>
public sealed record SweepOrder
{
    /// <summary>The plan.</summary>
    public required SweepPlan Plan { get; init; }

    /// <summary>The boards, in the plan's order.</summary>
    public required ImmutableArray<SweepBoard> Boards { get; init; }

    /// <summary>Values from the command line, <c>path=value</c>: they win over the plan.</summary>
    public ImmutableArray<string> Overrides { get; init; } = [];

    /// <summary>Files wanted beside drawings and pictures.</summary>
    public ImmutableArray<OutputFormat> Formats { get; init; } = OutputFormat.Usual;

    /// <summary>Whether variants are only checked, and no files of theirs are written.</summary>
    public bool FindingsOnly { get; init; }

    /// <summary>Version of the program: another one may make other bytes.</summary>
    public required string Version { get; init; }

    /// <summary>Paths that the command line holds fixed.</summary>
    public IEnumerable<string> Pinned => Overrides.Select(text => text.Split('=')[0].Trim());

    /// <summary>What a board file's reader puts into the file for a variant: the plan's values, then the command line's.</summary>
    public ImmutableArray<SetOverride> OverridesOf(Variant variant) =>
        [.. variant.Settings.Select(setting => setting.Override), .. Overrides.Select(SetOverride.Parse)];

    /// <summary>
    /// The keys of variants: 64 hexadecimal digits over everything that decides a variant's bytes. Where it is the same, nothing needs to
    /// be made again.
    /// </summary>
    public Func<Variant, string> Keys()
    {
        byte[][] boards = [.. Boards.Select(Digest)];
        string rest =
            string.Join('\n',
                ["shellforge-variant/1", Version, Path.GetFileName(Plan.File), Plan.Mark.ToString(),
                    string.Join(",", Formats.Select(format => format.Word)), FindingsOnly.ToString(), .. Overrides]);
        return variant =>
        {
            using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
            hash.AppendData(boards[variant.BoardIndex]);
            Append(hash, rest);
            Append(hash, variant.Code);
            foreach (PlanSetting setting in variant.Settings)
            {
                Append(hash, $"{setting.Path}={setting.Value.Text}");
            }

            return Convert.ToHexStringLower(hash.GetHashAndReset());
        };
    }

    private static byte[] Digest(SweepBoard board)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Append(hash, board.FileName);
        Append(hash, board.Text);
        foreach ((string name, string text) in board.ProfileTexts)
        {
            Append(hash, Path.GetFileName(name));
            Append(hash, text);
        }

        return hash.GetHashAndReset();
    }

    // With its length before it, so that two texts can't be taken for two others.
    private static void Append(IncrementalHash hash, string text)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(text);
        hash.AppendData(BitConverter.GetBytes(bytes.LongLength));
        hash.AppendData(bytes);
    }
}
