using ShellForge.Geometry.Numerics;
using ShellForge.Planning;

namespace ShellForge.Checks.Print;

/// <summary>A wall between one and two lines.</summary>
public sealed class WallBetweenLines() : Rule(
    "wall-between-lines",
    "A wall is best one line or at least two; between, the slicer stretches a line or strews dots.",
    "Such walls are weak, and uneven when light falls through them.",
    "opening of each layer's section by the thickness of two lines, less what is already narrower than 1.2 lines; longer than 5 mm and higher than 1 mm",
    "the printer profile's line width and layer height")
{
    private const double LeastLength = 5;
    private const double LeastHeight = 1;
    private const double OneLineStretched = 1.2;

    /// <inheritdoc />
    public override IEnumerable<Finding> Check(HousingUnderCheck housing)
    {
        PrintBasis basis = PrintBasis.Of(housing.Board.Print);
        double two = basis.Wall(2);
        foreach (CheckedPart part in housing.SoundParts)
        {
            PartLayers stack = housing.LayersOf(part);
            var told = new PlacesTold(LeastLength);
            foreach (PrintedLayer layer in stack.Changes)
            {
                foreach (FineFeature fine in ThinFeatures.Narrower(layer.Outline, two - PrintTolerances.Width))
                {
                    if (fine.Length >= LeastLength && fine.Width > OneLineStretched * basis.LineWidth && told.IsNew(fine.At)
                        && stack.HeightOf(PrintTolerances.Speck(fine.At), layer.Index) >= LeastHeight)
                    {
                        yield return Found(
                            Severity.Note, part.Name, $"a wall of {fine.Width:0.00} mm is between one line and two ({two:0.00} mm)", fine.Width, two,
                            part.ToAssembled(new Point3(fine.At.X, fine.At.Y, layer.FromZ)), $"make it {two:0.00} mm, or one line of {basis.LineWidth:0.00} mm");
                    }
                }
            }
        }
    }
}
