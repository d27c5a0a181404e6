using ShellForge.Import.Files;
using ShellForge.Import.Idf;

namespace ShellForge.Import.Merging;

/// <summary>
/// Heights from a library, as far as they can be believed. Layout programs fill in a default where nobody entered a height:
/// one number for most packages, nothing, or as many nines as fit.
/// </summary>
internal sealed class HeightMerge
{
    private const int FewestForDefault = 5;
    private const double DefaultShare = 0.6;

    // Taller parts than this are real on some boards, but not by accident on a round LED board: they are kept with a word.
    private const double Tall = 35;

    private readonly Dictionary<string, IdfPackage> _byPackageAndPart = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, IdfPackage> _byPackage = new(StringComparer.OrdinalIgnoreCase);
    private readonly double? _filler;
    private readonly EcadLog _log;

    public HeightMerge(IReadOnlyList<IdfLibraryFacts> libraries, EcadLog log)
    {
        _log = log;
        var heights = new List<double>();
        foreach (IdfLibraryFacts library in libraries)
        {
            foreach (IdfPackage p in library.Packages)
            {
                if (!_byPackageAndPart.TryAdd(Key(p.Package, p.PartNumber), p)
                    && Math.Abs(_byPackageAndPart[Key(p.Package, p.PartNumber)].Height - p.Height) > EcadTolerances.SamePoint)
                {
                    log.Warn(library.File, p.Line, "idf-library-twice",
                        $"'{p.Package}' has two heights; the first, "
                            + $"{Numeral.Text(_byPackageAndPart[Key(p.Package, p.PartNumber)].Height)} mm, is used");
                }

                _byPackage.TryAdd(p.Package, p);
                heights.Add(p.Height);
            }
        }

        _filler = CommonHeight(heights);
        if (_filler is { } f)
        {
            log.Warn(
                libraries[0].File, 0, "idf-height-default",
                $"most packages have the height {Numeral.Text(f)} mm: a default nobody replaced; taken as unknown",
                "give the heights of the tall parts in the board file");
        }
    }

    public bool HasLibrary => _byPackageAndPart.Count > 0;

    public IdfPackage? Find(string package, string partNumber) =>
        _byPackageAndPart.GetValueOrDefault(Key(package, partNumber)) ?? _byPackage.GetValueOrDefault(package);

    /// <summary>The part with its body and height.</summary>
    public ImportedPart Apply(ImportedPart part, IdfPlacement placement)
    {
        IdfPackage? package = Find(placement.Package, placement.PartNumber);
        double? height = package is null ? null : package.Height + placement.Offset;
        bool isFiller = package is not null && IsFiller(package);
        if (package is not null && !isFiller && height is null or <= 0)
        {
            isFiller = true;
        }

        ImportedPart withBody = part with { Body = package?.Outline ?? part.Body, LibraryHeight = height };
        if (height is { } h && !isFiller)
        {
            if (h > Tall && part.Skip is null)
            {
                _log.Warn(part.File, part.Line, "idf-height-tall",
                    $"{part.Reference} ({part.Package}) is {Numeral.Text(h)} mm tall by the library", "confirm it");
            }

            return withBody with { Height = h, HeightFrom = HeightSource.Library };
        }

        if (part.Match?.Height is { } known)
        {
            return withBody with { Height = known + placement.Offset, HeightFrom = HeightSource.Package };
        }

        return withBody with { HeightFrom = package is null ? HeightSource.None : HeightSource.Filler };
    }

    /// <summary>One line for each package whose height is a filler.</summary>
    public void Say(IReadOnlyList<ImportedPart> parts)
    {
        foreach (IGrouping<string, ImportedPart> group in parts
            .Where(p => p.Skip is null && p.LibraryHeight is { } h && p.HeightFrom != HeightSource.Library
                && (_filler is null || Math.Abs(h - _filler.Value) > EcadTolerances.SameOpening))
            .GroupBy(p => p.Package, StringComparer.OrdinalIgnoreCase).OrderBy(g => g.Key, StringComparer.OrdinalIgnoreCase).Take(20))
        {
            ImportedPart first = group.First();
            _log.Warn(
                first.File, first.Line, "idf-height-filler",
                $"the library's height of {group.Key}, {Numeral.Text(first.LibraryHeight!.Value)} mm, is a filler; taken as unknown "
                    + $"({string.Join(", ", group.Take(4).Select(p => p.Reference))})");
        }
    }

    private bool IsFiller(IdfPackage package)
    {
        if (!(package.Height > 0) || (_filler is { } f && Math.Abs(package.Height - f) <= EcadTolerances.SamePoint))
        {
            return true;
        }

        // 999, 1000, 99.9 and their like, in the unit they were typed in; nothing on a board is beyond 100 mm.
        double typed = package.HeightIsInThou ? package.Height / 0.0254 : package.Height;
        return package.Height > 100 || IsNines(typed) || Math.Abs(typed - 1000) <= EcadTolerances.SamePoint;
    }

    private static bool IsNines(double typed)
    {
        foreach (double nines in new[] { 99, 99.9, 99.99, 999, 999.9, 9999, 99999 })
        {
            if (Math.Abs(typed - nines) <= EcadTolerances.SamePoint)
            {
                return true;
            }
        }

        return false;
    }

    private static double? CommonHeight(List<double> heights)
    {
        if (heights.Count < FewestForDefault)
        {
            return null;
        }

        IGrouping<double, double> most = heights.GroupBy(h => Math.Round(h, 4)).OrderByDescending(g => g.Count()).ThenBy(g => g.Key)
            .First();
        return most.Count() >= DefaultShare * heights.Count && most.Key > 0 ? most.First() : null;
    }

    private static string Key(string package, string part) => package + "\n" + part;
}
