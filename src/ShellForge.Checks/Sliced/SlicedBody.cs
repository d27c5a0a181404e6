using System.Collections.Immutable;
using System.Globalization;
using ShellForge.Board.Profiles;
using ShellForge.Formats.Gcode;
using ShellForge.Geometry.Numerics;
using ShellForge.Planning.Plan;
using Region = ShellForge.Geometry.Planar.Region;

namespace ShellForge.Checks.Sliced;

/// <summary>An object in a slicer's file beside the part that it should be.</summary>
/// <param name="Laid">The object.</param>
/// <param name="Part">The part; what is printed into it belongs to it.</param>
/// <param name="Size">Size of the part's file, mm.</param>
/// <param name="LaidSize">Size of what the lines cover, mm.</param>
/// <param name="Wider">By how much that is wider than the part, as a mean over all directions, mm; negative: narrower.</param>
/// <param name="Width">Mean width of the part, mm.</param>
internal sealed record SlicedBody(GcodeObject Laid, MadePart Part, Point3 Size, Point3 LaidSize, double Wider, double Width)
{
    /// <summary>Farther off than this, as a share of its width, it is another part: no filament shrinks so much.</summary>
    private const double OtherShare = 0.01;

    /// <summary>
    /// Nearer than this it is the part as its file has it, mm: outermost lines differ in width by less.
    /// </summary>
    public const double SizeSlack = 0.2;

    /// <summary>Whether it is the part, if not quite at its size.</summary>
    public bool IsOfPart => Math.Abs(Wider) <= Math.Max(SizeSlack, OtherShare * Width) && Math.Abs(LaidSize.Z - Size.Z) <= HeightSlack;

    private double HeightSlack { get; init; }

    /// <summary>The objects that can be held against a part: all where the file tells them apart or has but one, else none.</summary>
    /// <param name="code">The file.</param>
    /// <param name="objects">The parts that it prints, by the objects that they are printed as.</param>
    /// <param name="printer">The planned printer.</param>
    public static ImmutableArray<SlicedBody> Of(
        GcodeFile code, ImmutableArray<ImmutableArray<MadePart>> objects, PrinterProfile printer)
    {
        if (objects.Length == 1 && code.Objects.Length == 1)
        {
            return [Of(code, code.Objects[0], objects[0], printer)];
        }

        return
        [
            .. from parts in objects
               let named = code.Objects.Where(each => each.Name.StartsWith(parts[0].Name, StringComparison.OrdinalIgnoreCase)).ToArray()
               where named.Length == 1
               select Of(code, named[0], parts, printer),
        ];
    }

    /// <summary>A size in words: "96.8 x 96.8 mm".</summary>
    public static string Across(Point3 size) => string.Create(CultureInfo.InvariantCulture, $"{size.X:0.0} x {size.Y:0.0} mm");

    private static SlicedBody Of(GcodeFile code, GcodeObject laid, ImmutableArray<MadePart> parts, PrinterProfile printer)
    {
        Box3 box = parts.Select(part => part.PrintMesh.Bounds()).Aggregate((all, next) => all.Including(next.Min).Including(next.Max));
        var hull = Region.HullOf(parts.SelectMany(part => part.PrintMesh.Mesh.Vertices).Select(vertex => vertex.ToMillimetres().XY));
        double width = hull.Perimeter / Math.PI;
        Point2 across = laid.Bounds.Grown(printer.LineWidth / 2).Size;

        // What lies on a raft begins above it.
        bool onBed = laid.Bottom < 2 * Math.Max(printer.FirstLayerHeight, code.LayerHeight);
        double height = onBed ? laid.Top : laid.Top - laid.Bottom + code.LayerHeight;
        return new SlicedBody(
            laid, parts[0], box.Size with { Z = box.Max.Z }, new Point3(across.X, across.Y, height),
            laid.MeanWidth(printer.LineWidth) - width, width)
        {
            HeightSlack = Math.Max(printer.LayerHeight, code.LayerHeight),
        };
    }
}
