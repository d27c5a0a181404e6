using System.Globalization;
using ShellForge.Formats.Soup;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Formats.ThreeMf;

/// <summary>An object of a model as it is read: a mesh, or other objects.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Property">Property of the triangles that say none: group and place in it.</param>
internal sealed record ThreeMfObject(string Name, (string Group, int Index) Property)
{
    // Bodies printed into one another are a few; as many colours as this paint a picture.
    private const int MostApart = 256;

    /// <summary>Triangles with those of all components; null until counted.</summary>
    public long? Total { get; set; }

    /// <summary>Its bodies, once they are placed.</summary>
    public List<SoupBuilder>? Built { get; set; }

    public List<Point3> Vertices { get; } = [];

    public List<(int A, int B, int C, (string Group, int Index) Property)> Triangles { get; } = [];

    public List<(string Id, Transform3 Map)> Components { get; } = [];

    /// <summary>
    /// The bodies of the mesh, in its own coordinates. Triangles of one property are a body where they close by themselves, as those of
    /// bodies do that are printed into one another; elsewhere properties only paint one body.
    /// </summary>
    /// <param name="unit">Size of a unit, mm.</param>
    /// <param name="colours">Colours by property.</param>
    /// <param name="outside">How many triangles name vertices that are not there; they are left out.</param>
    public List<SoupBuilder> Bodies(double unit, Dictionary<(string Group, int Index), string> colours, out int outside)
    {
        outside = 0;
        List<(string Group, int Index)> properties = [.. Triangles.Select(t => t.Property).Distinct()];
        bool apart = properties.Count is > 1 and <= MostApart && properties.All(Closes);
        var bodies = new List<SoupBuilder>();
        foreach ((string Group, int Index) property in apart ? properties : [default])
        {
            var body =
                new SoupBuilder(!apart ? Name
                    : $"{Name}, {(colours.TryGetValue(property, out string? colour) ? colour : $"property {property.Index}")}");
            outside += Fill(body, apart ? property : null, unit);
            bodies.Add(body);
        }

        return bodies;
    }

    private int Fill(SoupBuilder body, (string Group, int Index)? only, double unit)
    {
        int outside = 0;
        Span<float> corners = stackalloc float[SoupBuilder.NumbersPerTriangle];
        for (int t = 0; t < Triangles.Count; t++)
        {
            (int a, int b, int c, (string, int) property) = Triangles[t];
            if (only is not null && property != only)
            {
                continue;
            }

            if ((uint)a >= Vertices.Count || (uint)b >= Vertices.Count || (uint)c >= Vertices.Count)
            {
                outside++;
                continue;
            }

            Put(corners, unit * Vertices[a]);
            Put(corners[3..], unit * Vertices[b]);
            Put(corners[6..], unit * Vertices[c]);
            body.Add(corners, string.Create(CultureInfo.InvariantCulture, $"triangle {t + 1} of '{Name}'"));
        }

        return outside;
    }

    private bool Closes((string Group, int Index) property)
    {
        var open = new HashSet<(int, int)>();
        foreach ((int a, int b, int c, (string, int) own) in Triangles)
        {
            if (own == property)
            {
                Pass(a, b);
                Pass(b, c);
                Pass(c, a);
            }
        }

        return open.Count == 0;

        void Pass(int from, int to)
        {
            if (!open.Remove((to, from)))
            {
                open.Add((from, to));
            }
        }
    }

    private static void Put(Span<float> target, Point3 point)
    {
        target[0] = (float)point.X;
        target[1] = (float)point.Y;
        target[2] = (float)point.Z;
    }
}
