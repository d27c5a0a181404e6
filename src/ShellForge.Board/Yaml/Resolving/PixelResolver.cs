using System.Collections.Immutable;
using ShellForge.Board.Description;
using ShellForge.Board.Profiles;
using ShellForge.Board.Yaml.Forms;
using ShellForge.Geometry.Numerics;

namespace ShellForge.Board.Yaml.Resolving;

/// <summary>Writes out LED circles with the parts beside each LED.</summary>
internal sealed class PixelResolver(
    BoardSurface? surface, Designators designators, ImmutableHashSet<string> partRefs, ResolvingContext context)
{
    private const int MostPixels = 2000;

    private readonly ImmutableArray<BoardPart>.Builder _companions = ImmutableArray.CreateBuilder<BoardPart>();
    private int _pixels;
    private int _autoNumber;

    /// <summary>Parts beside the LEDs.</summary>
    public ImmutableArray<BoardPart> Companions => _companions.ToImmutable();

    /// <summary>The circles, in file order.</summary>
    public ImmutableArray<PixelCircle> Resolve(ImmutableArray<ParsedPixels> said)
    {
        ImmutableArray<PixelCircle>.Builder circles = ImmutableArray.CreateBuilder<PixelCircle>();
        var sources = new List<ParsedPixels>();
        foreach (ParsedPixels pixels in said.Where(p => p.Package.Given))
        {
            ImmutableArray<PlaceOnBoard> places = Placing.Places(pixels.Place, context);
            _pixels += places.Length;
            if (_pixels > MostPixels)
            {
                context.Sink.Error(pixels.Node.Place, "too-many-pixels", $"more than {MostPixels} LEDs", $"expected at most {MostPixels}");
                break;
            }

            if (places.Length > 0)
            {
                // What lies in a grid lies on no circle: each LED is one by itself.
                PixelCircle all = Circle(pixels, places);
                PixelCircle[] each = pixels.Place.Grid.Given ? [.. all.Pixels.Select(pixel => Alone(all, pixel))] : [all];
                circles.AddRange(each);
                sources.AddRange(each.Select(_ => pixels));
            }
        }

        PixelOverlaps.Check(circles, sources, context.Sink);
        return circles.ToImmutable();
    }

    private PixelCircle Circle(ParsedPixels said, ImmutableArray<PlaceOnBoard> places)
    {
        LedProfile led = said.Package.Value;
        bool single = !said.Place.IsPattern;
        bool onCircle = said.Place.Circle.Given;
        PixelFacing facing = Facing(said, led);
        var pixels = new Pixel[places.Length];
        for (int i = 0; i < places.Length; i++)
        {
            bool turns = said.Turns.Value && !single;
            Angle frame = turns ? places[i].Direction : Angle.Zero;
            pixels[i] = new Pixel(Name(said, i), places[i].At,
                (turns ? places[i].Direction + ToShine(led, facing) : Angle.Zero) + said.Rotation.Value);
            designators.Take(pixels[i].Ref, said.Ref.Given ? said.Ref.Place : said.Node.Place);
            AddCompanions(said, pixels[i], places[i], frame, i);
        }

        CheckOnBoard(said, led, pixels);
        return new PixelCircle
        {
            Led = led,
            Diameter = onCircle ? said.Place.Circle.Value : 2 * (places[0].At - context.Centre).Length,
            Centre = context.Centre,
            Count = !onCircle ? 1 : said.Place.Step.Given ? PlacesRound(said.Place.Step.Value) : said.Place.Count.Value,
            Facing = facing,
            Pixels = [.. pixels],
        };
    }

    private PixelCircle Alone(PixelCircle grid, Pixel pixel) =>
        grid with { Diameter = 2 * (pixel.At - context.Centre).Length, Pixels = [pixel] };

    // An arc has the pitch of the circle that it is a part of.
    private static int PlacesRound(Angle step) => (int)Math.Round(360 / step.Degrees, MidpointRounding.AwayFromZero);

    // LEDs count on over all circles. D is the trade's letter; where a diode already has such a designator, LED keeps them apart.
    private string Name(ParsedPixels said, int index)
    {
        if (said.Ref.Given)
        {
            return Designators.Counted(said.Ref.Value, index);
        }

        bool diodes = partRefs.Any(r => r.Length > 1 && r[0] == 'D' && r.Skip(1).All(char.IsAsciiDigit));
        string name;
        do
        {
            _autoNumber++;
            name = Designators.Counted(diodes ? "LED0" : "D0", _autoNumber);
        }
        while (designators.Has(name));
        return name;
    }

    // What turns the face that shines outward or inward; a LED that shines up stays as its circle turns it.
    private static Angle ToShine(LedProfile led, PixelFacing facing) => facing == PixelFacing.Up
        ? Angle.Zero
        : Angle.FromDegrees((facing == PixelFacing.In ? 180 : 0) - led.ShiningFaceDegrees.Value);

    private PixelFacing Facing(ParsedPixels said, LedProfile led)
    {
        PixelFacing facing = said.Facing.Or(led.Emission == LedEmission.Side ? PixelFacing.Out : PixelFacing.Up);
        if ((facing == PixelFacing.Up) != (led.Emission == LedEmission.Top))
        {
            string way = led.Emission == LedEmission.Top ? "away from the board" : "along the board";
            context.Sink.Error(
                said.Facing.Place,
                "facing-does-not-fit",
                $"the package {led.Name} shines {way}",
                led.Emission == LedEmission.Top ? "expected facing: up, or a side-facing package" : "expected facing: out or in");
        }

        return facing;
    }

    private void CheckOnBoard(ParsedPixels said, LedProfile led, Pixel[] pixels)
    {
        Pixel[] off = surface is null ? [] : [.. pixels.Where(p => !surface.Holds(p.At))];
        if (off.Length > 0)
        {
            context.Sink.Error(
                said.Place.Circle.Given ? said.Place.Circle.Place : said.Node.Place,
                "pixels-off-board",
                $"{off.Length} of {pixels.Length} LEDs lie off the board, {off[0].Ref} at {surface!.Spell(off[0].At)} first",
                surface.Extent);
            return;
        }

        Pixel? over = surface is null || led.Emission == LedEmission.Side
            ? null
            : pixels.FirstOrDefault(p => BoardSurface.Corners(p.At, led.Length, led.Width, p.Rotation).Any(c => !surface.Holds(c)));
        if (over is not null)
        {
            context.Sink.Warning(
                said.Place.Circle.Given ? said.Place.Circle.Place : said.Node.Place,
                "pixel-past-edge",
                $"the body of {over.Ref} stands out past the board's edge",
                "expected LEDs with their whole body on the board");
        }
    }

    private void AddCompanions(ParsedPixels said, Pixel pixel, PlaceOnBoard place, Angle frame, int index)
    {
        ImmutableArray<ParsedCompanion> with = said.With.Given ? said.With.Value : [];
        for (int i = 0; i < with.Length; i++)
        {
            ParsedCompanion companion = with[i];
            if (!companion.At.Given || !(companion.Package.Given || companion.Size.Given))
            {
                continue;
            }

            string name = companion.Ref.Given
                ? Designators.Counted(companion.Ref.Value, index)
                : Designators.Counted($"{pixel.Ref}.C1", i);
            designators.Take(name, companion.Node.Place);
            BodySize body = PartBody.Of(companion.Package, companion.Size, round: false, PartMounting.Unsaid, 0, companion.Height);
            _companions.Add(new BoardPart
            {
                Ref = name,
                Package = companion.Package.Given ? companion.Package.Value : null,
                Side = companion.Side.Value,
                At = place.At + companion.At.Value.Turned(frame),
                Rotation = frame + companion.Rotation.Value,
                Length = body.Length,
                Width = body.Width,
                Round = body.Round,
                Height = body.Height,
                HeightFrom = body.HeightFrom,
                Passive = companion.Package.Given && companion.Package.Value.Passive,
                JointProtrusion = companion.Package.Given ? companion.Package.Value.JointProtrusion : 0,
                Path = context.Paths.Of(companion.Node),
            });
        }
    }
}
