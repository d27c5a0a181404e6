using System.Collections.Immutable;
using ShellForge.Geometry.Auditing;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.Soup;

/// <summary>Collects the triangles of one body and tells those whose coordinates are not finite numbers.</summary>
internal sealed class SoupBuilder(string name)
{
    /// <summary>Numbers a triangle takes.</summary>
    public const int NumbersPerTriangle = 9;

    private const int PlacesShown = 5;
    private const int LongestName = 80;
    private readonly ImmutableArray<float>.Builder _coordinates = ImmutableArray.CreateBuilder<float>();
    private readonly List<string> _badPlaces = [];
    private int _bad;
    private LooseTriangles? _loose;
    private SoupBuilder? _first;

    private string Name { get; } = ForeignText.Printable(name, LongestName);

    /// <summary>Where the file puts the body.</summary>
    public Transform3 Place { get; set; } = Transform3.Identity;

    private LooseTriangles? Loose =>
        _loose ??= _coordinates.Count == 0 ? null : new LooseTriangles(_coordinates.DrainToImmutable());

    /// <summary>The same body once more, for another place; its triangles are kept once.</summary>
    public SoupBuilder Again() => new(Name) { _first = this };

    /// <summary>Adds a triangle of nine numbers; its place is told when one of them is no finite number.</summary>
    public void Add(ReadOnlySpan<float> corners, string place)
    {
        foreach (float value in corners)
        {
            if (!float.IsFinite(value))
            {
                _bad++;
                if (_badPlaces.Count < PlacesShown)
                {
                    _badPlaces.Add(place);
                }

                break;
            }
        }

        _coordinates.AddRange(corners);
    }

    /// <summary>Turns bodies and the faults met so far into what the reader returns.</summary>
    public static SoupFile Finish(string kind, IReadOnlyList<SoupBuilder> bodies, ImmutableArray<FileFault>.Builder faults)
    {
        var soups = ImmutableArray.CreateBuilder<SoupBody>();
        foreach (SoupBuilder body in bodies)
        {
            if (body._bad > 0)
            {
                string more = body._bad > PlacesShown ? $" and {body._bad - PlacesShown} more" : "";
                string verb = body._bad == 1 ? "has a coordinate that is" : "have coordinates that are";
                faults.Add(new FileFault(
                    "not-a-number", $"{string.Join(", ", body._badPlaces)}{more} {verb} not a finite number"));
            }

            if ((body._first ?? body).Loose is { } triangles)
            {
                soups.Add(new SoupBody(body.Name, triangles, body.Place));
            }
        }

        if (soups.Count == 0 && faults.Count == 0)
        {
            faults.Add(new FileFault("no-triangle", "the file holds no triangle"));
        }

        return new SoupFile(kind, soups.ToImmutable(), faults.ToImmutable());
    }
}
