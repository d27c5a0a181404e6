using System.Collections.Immutable;

namespace ShellForge.Formats.Soup;

/// <summary>Collects the triangles of one body and sets aside those whose coordinates are not finite numbers.</summary>
internal sealed class SoupBuilder(string name)
{
    private const int PlacesShown = 5;
    private readonly ImmutableArray<float>.Builder _coordinates = ImmutableArray.CreateBuilder<float>();
    private readonly List<string> _badPlaces = [];
    private int _bad;

    /// <summary>Adds a triangle of nine numbers; its place is told when it has to be left out.</summary>
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

                return;
            }
        }

        _coordinates.AddRange(corners);
    }

    /// <summary>Turns bodies and the faults met so far into what the reader returns.</summary>
    public static SoupFile Finish(string kind, IReadOnlyList<SoupBuilder> bodies, ImmutableArray<FileFault>.Builder faults)
    {
        var soups = ImmutableArray.CreateBuilder<TriangleSoup>();
        foreach (SoupBuilder body in bodies)
        {
            if (body._bad > 0)
            {
                string more = body._bad > PlacesShown ? $" and {body._bad - PlacesShown} more" : "";
                string verb = body._bad == 1 ? "has a coordinate that is" : "have coordinates that are";
                faults.Add(new FileFault(
                    "not-a-number", $"{string.Join(", ", body._badPlaces)}{more} {verb} not a finite number"));
            }

            if (body._coordinates.Count > 0)
            {
                soups.Add(new TriangleSoup(body.Name, body._coordinates.ToImmutable()));
            }
        }

        if (soups.Count == 0 && faults.Count == 0)
        {
            faults.Add(new FileFault("no-triangle", "the file holds no triangle"));
        }

        return new SoupFile(kind, soups.ToImmutable(), faults.ToImmutable());
    }

    private string Name { get; } = name;
}
