using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Vocabulary;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>The body of a part as it sits on the board.</summary>
/// <param name="Length">Along its x, mm.</param>
/// <param name="Width">Along its y, mm.</param>
/// <param name="Round">Whether it is a standing cylinder.</param>
/// <param name="Height">Top above the board face, mm; null: unknown.</param>
/// <param name="HeightFrom">Where the height comes from, or why it is unknown.</param>
/// <param name="Taller">How much of the height is what makers allow over the listed one, mm.</param>
internal readonly record struct BodySize(double Length, double Width, bool Round, double? Height, string HeightFrom, double Taller = 0);

/// <summary>Works out a body from its package or size, how it sits, and what was said of its height.</summary>
internal static class PartBody
{
    /// <summary>The body. A height said in the file is the top of the body; heights of packages and sizes stand on the lift.</summary>
    public static BodySize Of(
        Parsed<PackageProfile> package, Parsed<ImmutableArray<double>> size, bool round, PartMounting mounted, double lift,
        Parsed<double?> said)
    {
        PackageProfile? profile = package.Given ? package.Value : null;
        double length = profile?.Length ?? size.Value[0];
        double width = profile?.Width ?? size.Value[1];
        bool standsRound = profile?.Round ?? round;
        (double? height, string from) = profile is null ? OfSize(size.Value) : OfPackage(profile, mounted);
        if (mounted == PartMounting.Lying && height is { } tall)
        {
            // Laid on its side the body is as long as it was high, and as high as it was wide.
            (length, height, standsRound) = (tall, standsRound ? length : width, false);
            from += ", lying";
        }

        if (said.Given)
        {
            return said.Value is { } given
                ? new BodySize(length, width, standsRound, given, "said in the file")
                : new BodySize(length, width, standsRound, null, "said to be unknown");
        }

        return new BodySize(length, width, standsRound, height + lift, lift > 0 ? $"{from}, lifted by {NumberText.Written(lift)}" : from,
            profile is null ? 0 : Taller(profile, mounted));
    }

    private static double Taller(PackageProfile package, PartMounting mounted) =>
        mounted is PartMounting.OnPins or PartMounting.InSocket or PartMounting.MidBoard ? 0 : package.HeightTolerance;

    private static (double? Height, string From) OfSize(ImmutableArray<double> size) =>
        size.Length > 2 ? (size[2], "size in the file") : (null, "the size has no height");

    private static (double? Height, string From) OfPackage(PackageProfile package, PartMounting mounted)
    {
        Sourced? height = mounted switch
        {
            PartMounting.Unsaid when package.MountingRequired => null,
            PartMounting.OnPins => package.HeightOnPins,
            PartMounting.InSocket => package.HeightInSocket,
            PartMounting.MidBoard => package.HeightMidBoard,
            _ => package.Height,
        };
        if (height is { } nominal && Taller(package, mounted) is > 0 and var taller)
        {
            return (
                nominal.Value + taller,
                $"package {package.Name}: {NumberText.Written(nominal.Value)} ({nominal.Source}) and {NumberText.Written(taller)} more "
                    + $"that makers allow ({package.HeightTolerance.Source})");
        }

        return height is { } known
            ? (known.Value, $"package {package.Name}: {known.Source}")
            : (null, $"the package {package.Name} has no height "
                + $"{(mounted == PartMounting.Unsaid ? "until `mounted:` is said" : "for this mounting")}");
    }
}
