using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Formats.Png;
using ShellForge.Formats.Rendering;
using ShellForge.Formats.Soup;
using ShellForge.Formats.Stl;
using ShellForge.Geometry.Numerics;
using ShellForge.Geometry.Solids;

// For developers: a picture of STL files, to look at what was made.
//   dotnet run --project tests/ShellForge.Pictures -- OUT.png [options] PART.stl[@dz] ...
//   --view top|bottom|front|corner|below|AZIMUTH,ELEVATION   --cut x=0|y=0|z=5 (the half towards the viewer goes)
//   --size 1200x900   --frame x0,y0,z0,x1,y1,z1
// PART.stl@12.5 lifts a part by 12.5 mm, to spread an assembly.
if (args.Length < 2)
{
    Console.Error.WriteLine("OUT.png [--view V] [--cut x=0] [--size WxH] [--frame x0,y0,z0,x1,y1,z1] PART.stl[@dz] ...");
    return 2;
}

Rgb[] colours =
[
    new(96, 125, 160), new(226, 152, 66), new(122, 176, 120), new(190, 110, 110), new(150, 130, 190), new(120, 180, 190),
];
var scene = new Scene { Parts = [] };
string? cut = null;
var parts = new List<PicturedPart>();
for (int i = 1; i < args.Length; i++)
{
    switch (args[i])
    {
        case "--view":
            scene = scene with { View = ViewOf(args[++i]) };
            break;
        case "--cut":
            cut = args[++i];
            break;
        case "--size":
            int[] size = [.. args[++i].Split('x').Select(s => int.Parse(s, CultureInfo.InvariantCulture))];
            scene = scene with { Width = size[0], Height = size[1] };
            break;
        case "--frame":
            double[] f = Numbers(args[++i]);
            scene = scene with { Frame = new Box3(new(f[0], f[1], f[2]), new(f[3], f[4], f[5])) };
            break;
        default:
            string[] name = args[i].Split('@');
            double lift = name.Length > 1 ? Numbers(name[1])[0] : 0;
            parts.Add(new PicturedPart(Load(name[0]), colours[parts.Count % colours.Length]) { Placement = Transform3.Shift(0, 0, lift) });
            break;
    }
}

scene = scene with { Parts = [.. parts], Section = cut is null ? null : SectionOf(cut, scene.View) };
File.WriteAllBytes(args[0], PngWriter.ToBytes(Renderer.Render(scene)));
return 0;

static double[] Numbers(string list) => [.. list.Split(',').Select(s => double.Parse(s, CultureInfo.InvariantCulture))];

static View ViewOf(string name) => name switch
{
    "top" => View.Top,
    "bottom" => View.Bottom,
    "front" => View.Front,
    "corner" => View.Corner,
    "below" => View.CornerBelow,
    _ => new View(Angle.FromDegrees(Numbers(name)[0]), Angle.FromDegrees(Numbers(name)[1])),
};

// The half that stands before the viewer is taken away.
static SectionPlane SectionOf(string plane, View view)
{
    double at = Numbers(plane[2..])[0];
    Point3 axis = plane[0] switch { 'x' => new(1, 0, 0), 'y' => new(0, 1, 0), _ => new(0, 0, 1) };
    Point3 towards = new(view.Elevation.Cos * view.Azimuth.Cos, view.Elevation.Cos * view.Azimuth.Sin, view.Elevation.Sin);
    return new SectionPlane(at * axis, (Point3.Dot(axis, towards) < 0 ? -1 : 1) * axis);
}

static Mesh Load(string file)
{
    SoupFile soup = StlReader.Read(File.ReadAllBytes(file));
    foreach (FileFault fault in soup.Faults)
    {
        Console.Error.WriteLine($"{file}: {fault.Message}");
    }

    var vertices = ImmutableArray.CreateBuilder<LatticePoint3>();
    foreach (ImmutableArray<float> c in soup.Bodies.Select(b => b.Triangles.Coordinates))
    {
        for (int i = 0; i < c.Length; i += 3)
        {
            vertices.Add(Lattice.ToLattice(new Point3(c[i], c[i + 1], c[i + 2])));
        }
    }

    return new Mesh(vertices.ToImmutable(), [.. Enumerable.Range(0, vertices.Count)], [.. new FaceTag[vertices.Count / 3]]);
}
