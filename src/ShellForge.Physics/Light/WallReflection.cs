using ShellForge.Geometry.Numerics;

namespace ShellForge.Physics.Light;

/// <summary>
/// Light that reaches the diffuser after one matt reflection. From a place on the diffuser rays look down into the housing, spread like
/// the cosine that weighs them; where one meets a wall, the wall's direct light times its reflectance comes back:
/// E = mean over the rays of (reflectance x direct irradiance at the wall). Source: diffuse reflection gathered by cosine-weighted
/// sampling (the standard estimator). Later reflections are left out: it errs on the dark side.
/// </summary>
internal sealed class WallReflection
{
    // 8 x 12 rays: the middles of equal shares of the cosine-weighted hemisphere.
    private const int Elevations = 8;
    private const int Azimuths = 12;

    // Cells of the diffuser between two gathering places, mm: what comes back varies slowly.
    private const double Coarse = 2.5;

    // Rays start this far off the face, and end after so much, mm.
    private const double Lift = 0.02;
    private const double Longest = 500;

    private static readonly Point3[] Directions = Hemisphere();

    // Bands of gathering places that are worked on side by side, each with walls of its own in mind.
    private const int Bands = 4;

    private readonly LightScene scene;
    private readonly DirectLight direct;

    public WallReflection(LightScene scene, DirectLight direct) => (this.scene, this.direct) = (scene, direct);

    /// <summary>Adds the reflected light to fields and zones.</summary>
    public void AddTo(LightFields fields, LedZones zones, CancellationToken cancel)
    {
        ReceiverGrid face = scene.Face;
        if (scene.Solids.TriangleCount == 0 || scene.Materials.All(material => material.Reflectance <= 0))
        {
            return;
        }

        int stride = Math.Max(1, (int)Math.Round(Coarse / face.Step));
        int columns = (face.Columns + stride - 1) / stride;
        int rows = (face.Rows + stride - 1) / stride;
        var gathered = new LightFields(columns * rows);
        int[] zoneOf = new int[columns * rows];
        var fluxes = new ZoneFlux[Bands];
        Parallel.For(0, Bands, band =>
        {
            fluxes[band] = new ZoneFlux(direct.Count);
            var walls = new LitWalls(direct);
            for (int i = rows * band / Bands * columns; i < rows * (band + 1) / Bands * columns; i++)
            {
                cancel.ThrowIfCancellationRequested();
                zoneOf[i] = Gather(i, columns, stride, zones.Of, fluxes[band], walls, gathered);
            }
        });
        foreach (ZoneFlux flux in fluxes)
        {
            zones.Flux.Add(flux);
        }

        Spread(fields, gathered, zoneOf, zones, columns, rows, stride);
    }

    // One place, at an open cell as near as possible to the middle of its block; -1 where the block has none.
    private int Gather(int index, int columns, int stride, int[] cellZones, ZoneFlux flux, LitWalls walls, LightFields gathered)
    {
        ReceiverGrid face = scene.Face;
        (int cell, int open) = OpenCell(index % columns * stride, index / columns * stride, stride);
        if (cell < 0)
        {
            return -1;
        }

        Point2 middle = face.Middle(cell);
        (Point3 at, Point3 normal) = face.At(middle.X, middle.Y);

        // One axis of the fan follows the face, so that places of equal surroundings see equal fans.
        (Point3 beside, _) = face.At(middle.X + face.Step, middle.Y);
        Point3 first = face.Wraps ? (1 / Point3.Distance(beside, at)) * (beside - at) : Radial(at, normal);
        Point3 second = Point3.Cross(normal, first);
        double[] shares = walls.None();
        foreach (Point3 direction in Directions)
        {
            Point3 along = (direction.X * first) + (direction.Y * second) + (direction.Z * normal);
            if (scene.Solids.Meets(at + (Lift * normal), along, Longest, out SurfaceHit hit) && hit.FromOutside)
            {
                double reflectance = scene.Materials[hit.Material].Reflectance;
                if (reflectance > 0)
                {
                    walls.Collect(hit, reflectance / Directions.Length);
                }
            }
        }

        int zone = cellZones[cell];
        for (int led = 0; led < shares.Length; led++)
        {
            if (shares[led] > 0)
            {
                gathered.Add(index, led, scene.Alone, shares[led]);
                flux.Add(led, zone, shares[led] * open);
            }
        }

        return zone;
    }

    private (int Cell, int Open) OpenCell(int column, int row, int stride)
    {
        ReceiverGrid face = scene.Face;
        (int found, int open, double least) = (-1, 0, double.PositiveInfinity);
        for (int r = row; r < Math.Min(row + stride, face.Rows); r++)
        {
            for (int c = column; c < Math.Min(column + stride, face.Columns); c++)
            {
                int cell = (r * face.Columns) + c;
                if (face.Open[cell])
                {
                    open++;
                    double x = c - column - ((stride - 1) / 2.0);
                    double y = r - row - ((stride - 1) / 2.0);
                    if ((x * x) + (y * y) < least)
                    {
                        (found, least) = (cell, (x * x) + (y * y));
                    }
                }
            }
        }

        return (found, open);
    }

    // Between the four gathering places around a cell; with cells of their own, from those of the same cell only.
    private void Spread(LightFields fields, LightFields gathered, int[] zoneOf, LedZones zones, int columns, int rows, int stride)
    {
        ReceiverGrid face = scene.Face;
        double[] sums = new double[3];
        for (int i = 0; i < face.Count; i++)
        {
            if (!face.Open[i])
            {
                continue;
            }

            double weights = Around(i, scene.Cells, sums);
            weights = weights > 0 ? weights : Around(i, false, sums);
            for (int f = 0; f < 3 && weights > 0; f++)
            {
                fields.Arrays[f][i] += (float)(sums[f] / weights);
            }
        }

        double Around(int i, bool sameCell, double[] sums)
        {
            double x = (((i % face.Columns) + 0.5) / stride) - 0.5;
            double y = (((i / face.Columns) + 0.5) / stride) - 0.5;
            int column = (int)Math.Floor(x);
            int row = (int)Math.Floor(y);
            double weights = 0;
            Array.Clear(sums);
            for (int k = 0; k < 4; k++)
            {
                int c = column + (k & 1);
                int r = row + (k >> 1);
                c = face.Wraps ? ((c % columns) + columns) % columns : c;
                if (c < 0 || r < 0 || c >= columns || r >= rows || zoneOf[(r * columns) + c] < 0
                    || (sameCell && zoneOf[(r * columns) + c] != zones.Of[i]))
                {
                    continue;
                }

                double weight = ((k & 1) == 0 ? 1 - (x - column) : x - column) * ((k >> 1) == 0 ? 1 - (y - row) : y - row);
                weights += weight;
                for (int f = 0; f < 3; f++)
                {
                    sums[f] += weight * gathered.Arrays[f][(r * columns) + c];
                }
            }

            return weights;
        }
    }

    // Away from the z axis within the face; any direction on the axis itself.
    private static Point3 Radial(Point3 at, Point3 normal)
    {
        double radius = at.XY.Length;
        return radius > Lift ? new Point3(at.X / radius, at.Y / radius, 0) : LedSource.Perpendicular(normal);
    }

    private static Point3[] Hemisphere()
    {
        var directions = new Point3[Elevations * Azimuths];
        for (int i = 0; i < directions.Length; i++)
        {
            double share = ((i / Azimuths) + 0.5) / Elevations;
            double turn = ((i % Azimuths) + ((i / Azimuths % 2) * 0.5) + 0.25) / Azimuths;
            Angle at = Angle.FromDegrees(360 * turn);
            directions[i] = new Point3(Math.Sqrt(share) * at.Cos, Math.Sqrt(share) * at.Sin, Math.Sqrt(1 - share));
        }

        return directions;
    }
}
